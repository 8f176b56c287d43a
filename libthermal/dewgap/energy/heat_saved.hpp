// Annual heat that a sheet saves, split into glass and frame, air leakage, and sun lost.
#pragma once

#include <array>

#include "dewgap/climate/degree_days.hpp"

namespace dewgap {

struct HeatSavedInput {
  std::array<double, 12> degree_days_Kd{};  ///< below the base
  std::array<double, 12> heating_days{};    ///< days below the base
  double room_C = 20.0;
  double base_C = 15.5;
  /// Of the room's time and space at room_C, 0 to 1. Not applied to the sun.
  double heated_share_of_day = 1.0;
  double glass_conductance_cut_W_K = 0.0;    ///< before minus after; negative when it grows
  double frame_conductance_cut_W_K = 0.0;    ///< sash, frame and edge
  double draught_cut_m3_h = 0.0;             ///< window's leakage before minus after, already counted once
  double draught_needed_share = 0.0;         ///< of that cut which ventilation still has to supply, 0 to 1
  std::array<double, 12> sun_cut_kWh_day{};  ///< transmitted sun before minus after, per day
  double sun_used_share = 0.7;               ///< of the sun in heating days that replaces heat, 0 to 1
};

struct HeatSaved {
  double glass_kWh = 0.0;
  double frame_kWh = 0.0;
  double air_kWh = 0.0;
  double sun_lost_kWh = 0.0;  ///< >= 0, subtracted in total
  double total_kWh() const { return glass_kWh + frame_kWh + air_kWh - sun_lost_kWh; }
};

/// Marginal saving: the rest of the house keeps its base, so a cut dH saves dH [DD(tb) + (Ti - tb) N_heat],
/// with heating days those below tb, over the heated share. dH DD(tb) alone understates it by a quarter to
/// two fifths: by 0.30 (Stockholm) to 0.38 (Dublin) with a base of 15.5 C under a room at 20 C, measured with
/// Schoenau-Kehrig at seven places; beyond that in the warm middle of London (0.40) or for a lower base.
///
/// Air counts as rho cp times the draught cut less the share that ventilation still needs. The sun lost is
/// the sun cut on heating days times the used share, and enters nowhere else.
/// room 0 to 35 C, base no higher than the room, cuts within 1000 W/K and 5000 m3/h, sun 0 to 1000 kWh/day.
///
/// Error: first order in dH / H against the exact counterpart; the marginal rule is its limit for a small cut
/// when degree days and heating days come from one distribution of daily means (Schoenau-Kehrig).
HeatSaved heat_saved(const HeatSavedInput& input);

/// The exact counterpart: whole-dwelling heat H DD(tb) with tb = Ti - gains / H found anew before and after,
/// kWh. gains 0 to 1e6 W, losses 1 to 1e6 W/K, room 0 to 35 C; the base must lie in the range of
/// annual_degree_days_Kd.
double heat_saved_by_new_base_kWh(const Place& place, double room_C, double gains_W, double loss_before_W_K,
                                  double loss_after_W_K, DegreeDayMethod method);

/// rho cp of infiltrating air, Wh/(m3 K), at room conditions (1.2 kg/m3, 1006 J/(kg K)).
inline constexpr double air_heat_Wh_m3K = 1.2 * 1006.0 / 3600.0;

}  // namespace dewgap
