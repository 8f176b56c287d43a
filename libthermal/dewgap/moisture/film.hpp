// Water and frost on a vertical impermeable face, and the water that has run down to the sill.
//
// Everything is per m2 of face, also the sill's pool. Same input, same result: the state is handed in and
// handed back. NaN and values outside a stated range throw InvalidInput.
#pragma once

#include "dewgap/moisture/criteria.hpp"

namespace dewgap {

/// Masses held, each 0 to 1000 kg/m2 of face.
struct FilmState {
  double water_kg_m2 = 0.0;  ///< on the face
  double frost_kg_m2 = 0.0;  ///< on the face
  double sill_kg_m2 = 0.0;   ///< pooled on the sill; ice while the sill is below 0 C
};

/// Whether the sill drains to outdoors.
enum class SillWeep { none, open };

/// How much stays where. Sources disagree on when a film runs: BS 5250:2002 has droplets that begin to run at
/// 30 and run above 50 g/m2, ISO 13788:2012 6.5 allows 200 g/m2 in a hidden layer (both from memory), and
/// Kansal (thesis, Waterloo 2006, abstract) saw a front that climbs over hours. So what lies above the
/// retention limit runs off with a time constant; sample both.
struct FilmSurface {
  double retention_kg_m2 = 0.050;  ///< 0.001 to 1; sources 0.030 to 0.200
  double run_off_time_s = 3600.0;  ///< 0 (at once) or 1 to 1e6; 0 to 12 hours (our convention)
  double sill_area_ratio = 0.02;   ///< wetted sill over face, 0 to 1: depth of the gap over its height
  double sill_hold_m = 0.0005;     ///< water left standing below an open weep, 0 to 0.02 (our convention)
  SillWeep weep = SillWeep::none;
};

/// Steady over the step.
struct FilmConditions {
  double duration_s = 3600.0;           ///< 1 to 86400
  double air_vapour_Pa = 0.0;           ///< of the air before the face, 0 to 20000
  double face_temperature_C = 0.0;      ///< -60 to 80
  double face_transfer_kg_m2sPa = 0.0;  ///< on vapour pressure, 0 to 2e-5
  double sill_temperature_C = 0.0;      ///< -60 to 80
  double sill_transfer_kg_m2sPa = 0.0;  ///< per m2 of sill, 0 to 2e-5
};

/// What happened in a step, kg/m2 of face, each >= 0.
struct FilmStep {
  FilmState state;                 ///< at the end
  double condensed_kg_m2 = 0.0;    ///< from vapour to water on the face
  double deposited_kg_m2 = 0.0;    ///< from vapour to frost on the face
  double evaporated_kg_m2 = 0.0;   ///< from water on the face to vapour
  double sublimated_kg_m2 = 0.0;   ///< from frost on the face to vapour
  double melted_kg_m2 = 0.0;       ///< at the start of the step, on the face
  double frozen_kg_m2 = 0.0;       ///< the same
  double run_off_kg_m2 = 0.0;      ///< from the face to the sill
  double sill_gained_kg_m2 = 0.0;  ///< from vapour to the sill
  double sill_lost_kg_m2 = 0.0;    ///< from the sill to vapour
  double drained_kg_m2 = 0.0;      ///< through the weep
  /// d(vapour taken / duration)/d(air_vapour_Pa), kg/(s Pa) per m2 of face: the transfer coefficient of each
  /// surface, or 0 for one that dried out. Leaves out that drier air lessens the run-off.
  double response_kg_m2sPa = 0.0;
};

/// One step of the film.
///
/// Vapour passes at transfer coefficient x (air vapour pressure - saturation at the surface), over ice below
/// 0 C (Murphy and Koop); evaporation and sublimation end when the surface is dry. Phase follows the
/// surface's temperature at once, at the start of the step: frost melts at 0 C and above, water freezes
/// below. (Melting 50 g/m2 takes 17 kJ/m2, minutes; the heat itself, `melted` and `frozen` times 333 kJ/kg,
/// is for the caller's heat balance.) Frost never runs off. A pool wets the sill's whole area; an open weep
/// drains at once what stands higher than sill_hold_m, unless the sill is below 0 C.
///
/// Accuracy: exact for steady conditions but for one thing: run-off reaches the sill evenly over the step.
/// Splitting a step under steady conditions changes the face's masses by rounding only (1e-12 of the water
/// concerned), the sill's pool and loss by at most what a wet sill can lose in the step (sill_area_ratio x
/// sill transfer x vapour difference x duration), and what drains by at most twice that.
///
/// Ledger: held after - held before = vapour_in - vapour_out - drained, within 1e-12 of the water concerned.
/// No mass is ever negative. Vapour taken never falls when air_vapour_Pa rises. No allocation.
FilmStep step_film(const FilmState& before, const FilmSurface& surface, const FilmConditions& conditions);

/// All that is held: water, frost and pool, kg/m2.
double held_kg_m2(const FilmState& state);
/// Vapour that became water or ice, and water or ice that became vapour, kg/m2, each >= 0.
double vapour_in_kg_m2(const FilmStep& step);
double vapour_out_kg_m2(const FilmStep& step);

/// Band of the water on the face (criteria.hpp). Frost does not run and does not count until it has melted.
FilmBand band_of(const FilmState& state);

/// Transfer coefficient on vapour pressure, kg/(m2 s Pa), from one on vapour density: h_m / (R_v T).
/// mass_transfer_m_s 0 to 1; temperature, the mean of air and face, -60 to 80 C.
double vapour_transfer_kg_m2sPa(double mass_transfer_m_s, double mean_temperature_C);

}  // namespace dewgap
