// The gap hour by hour: heat, air, vapour, film, pool and timber carried from one step to the next.
//
// One step of steady weather (an hour, or a part of it) from one state of the gap to the next. Within the
// step
//   - heat: every face's balance as in stack.hpp, with the heat that the panes store (backward Euler, half of
//   a
//     pane at each face) and the latent heat of what condenses, freezes, melts and evaporates on the faces.
//     Latent heat is blended over half a kelvin about 0 C; the film's phase, and with it run-off, turns at 0
//     C;
//   - vapour: the gap's air (its own store, that of air at 10 C), what passes with air, through sheet and
//   tape, to
//     and from two faces, the sill and the timber, balanced at the step's end together with the heat (film
//     and pool give no more than they hold; the sill takes vapour as the faces do, per its area);
//   - air: the network of gap_network.hpp; what the sheet pumps as it flexes under gusts, as far as the
//   openings let
//     the gap follow them; what the gap's air breathes as it cools (as it did in the step before);
//   - flows and timber are worked out with the step's own end, predicted and put right until it is met within
//   0.05 K
//     (timber 0.1 K and 10 Pa);
//   - timber: two layers, the bottom rail halfway between sill and gap (our convention), which a pool soaks
//     while it is no ice, and the rest at the gap's temperature; both backward Euler, neither above 1.2
//     kg/kg.
// Lagged, that is taken from the state before the step: convection in mass transfer, heat capacity and
// temperature of the air that passes. The first step stores no heat and takes convection of usual size. Under
// steady weather the lags are gone, and the state is the one that solve_gap finds. Left out: what steady.hpp
// leaves out; the heat that sill and timber exchange with the glass; a pool's latent heat; water that climbs
// into joints; the height profile of the film (centre of the pane; the edge by its dew point only).
//
// Hourly steps against half-hourly ones on the same weather: time-integrated film of usual windows within 1 %
// but for one in twenty, worst 1.3 %; wet hours within 1 % or 10 h. Windows from the whole permitted range
// (gaps over 60 mm excepted) within 1 % in five of six (tests/gap/test_hours_steps.cpp).
#pragma once

#include <array>
#include <cstddef>
#include <functional>
#include <optional>
#include <span>

#include "dewgap/airflow/gap_network.hpp"
#include "dewgap/glazing/stack.hpp"
#include "dewgap/moisture/film.hpp"
#include "dewgap/moisture/timber.hpp"
#include "dewgap/validity.hpp"

namespace dewgap {

/// Panes that bound the gap: the old pane alone has none.
enum class PaneCount : std::size_t { old_pane = 1, with_sheet = 2 };

/// A window through a year: all that does not change from hour to hour.
struct GapDesign {
  PaneCount panes = PaneCount::with_sheet;
  Stack stack;  ///< its layers are the panes; suns, face heats and air streams in it are ignored
  std::array<double, 2> pane_heat_capacity_J_m2K{9000.0, 7000.0};  ///< 0 to 1e6
  /// The same with a curtain drawn: one room-side layer more, in a gap that the room's air passes.
  std::optional<Stack> drawn_stack;
  double area_m2 = 1.0;  ///< glass behind the sheet, 0.01 to 50
  GapNetwork network;
  double diffusion_to_room_kg_sPa = 0.0;      ///< 0 to 1e-6
  double diffusion_to_outdoors_kg_sPa = 0.0;  ///< 0 to 1e-6
  double edge_temperature_factor = 1.0;       ///< as in GapCase, 0.3 to 1.2; also that of the sill
  FilmSurface film;                           ///< of the gap's faces; its sill is the one inside the gap
  /// Wood that faces the gap; area 0: none. The bottom rail lies halfway between sill and gap, the rest is as
  /// warm as the gap.
  DampLayer timber;
  double sill_timber_share = 0.25;  ///< of its area, the bottom rail's, 0.01 to 0.99
  double timber_transfer_kg_m2sPa = 2.1e-8;
  double soak_time_s = 0.0;                ///< in which a pool soaks into the timber; 0: it does not, to 1e8
  double pumped_volume_m3_Pa = 0.0;        ///< that the flexing sheet sweeps per Pa across it, 0 to 0.1
  double gusts_per_s = 0.1;                ///< 0 to 10
  double room_face_transfer_factor = 1.0;  ///< on the Lewis relation at the room-side face, 0 to 3
};

/// Weather, room and sun of one step, steady over it.
struct HourConditions {
  double duration_s = 3600.0;  ///< 60 to 3600
  OutdoorClimate outdoors;
  double room_C = 20.0;  ///< air and radiant, -30 to 50
  double room_film_factor = 1.0;
  double outdoor_vapour_Pa = 500.0;  ///< 0 to 20000
  double room_vapour_Pa = 1000.0;
  PressureWithinHour pressure;
  std::array<double, 2> absorbed_sun_W_m2{};  ///< of each pane, 0 to 1500
  bool curtain_drawn = false;
};

/// What a step takes from the one before, besides water.
struct GapPast {
  std::array<double, 4> face_C{};
  double gap_C = 0.0;
  double gap_before_C = 0.0;           ///< a step earlier: what the gap's air breathes
  double gap_convection_W_m2K = 2.0;   ///< 0 to 1000
  double room_convection_W_m2K = 3.0;  ///< 0 to 1000
};

/// What the gap holds between two steps.
struct GapStore {
  FilmState pane;   ///< gap face of the old pane; its sill is the gap's pool
  FilmState sheet;  ///< gap face of the sheet; its run-off joins the pool
  FilmState room_face;
  double vapour_Pa = 800.0;                 ///< of the gap's air
  double timber_kg_kg = 0.15;               ///< bottom rail, 0 to 2.5
  std::optional<double> side_timber_kg_kg;  ///< the rest of the timber; none: as the bottom rail
  std::optional<GapPast> past;              ///< none: the panes start as the first step's weather has them
};

/// Water that came and went in one step, kg (whole gap), each >= 0 but the timber's.
struct GapLedger {
  double with_air_in_kg = 0.0;  ///< vapour carried into the gap
  double with_air_out_kg = 0.0;
  double diffused_in_kg = 0.0;  ///< net of each side
  double diffused_out_kg = 0.0;
  double drained_kg = 0.0;      ///< through the weep
  double held_before_kg = 0.0;  ///< air, films, pool and timber
  double held_after_kg = 0.0;
};

/// The gap at the end of a step, and the step's means.
struct HourState {
  SolveStatus status = SolveStatus::converged;
  int newton_steps = 0;
  std::array<double, 4> face_C{};  ///< of the panes, outdoors first; those that do not exist are 0
  double gap_C = 0.0;
  double vapour_Pa = 0.0;
  double sill_C = 0.0;           ///< of the gap's sill and edge: outdoors + edge factor x (pane - outdoors)
  double pane_film_kg_m2 = 0.0;  ///< water and frost on the gap face of the old pane
  double sheet_film_kg_m2 = 0.0;
  double room_face_film_kg_m2 = 0.0;
  /// Part of the step after which a film that dries out is gone (1: it is not gone): films fall to nothing in
  /// that part.
  double pane_drying_part = 1.0;
  double sheet_drying_part = 1.0;
  double frost_kg_m2 = 0.0;    ///< on the gap's faces
  double pool_kg_m2 = 0.0;     ///< per m2 of glass
  double run_off_kg_m2 = 0.0;  ///< in the gap, this step
  double drained_kg_m2 = 0.0;
  double timber_kg_kg = 0.0;       ///< bottom rail
  double side_timber_kg_kg = 0.0;  ///< the rest of it
  double from_room_m3_s = 0.0;     ///< air into the gap, breathing and pumping included
  double from_outdoors_m3_s = 0.0;
  double net_outwards_m3_s = 0.0;
  double room_flux_W_m2 = 0.0;     ///< from the room into the glazing
  double outdoor_flux_W_m2 = 0.0;  ///< from the glazing to outdoors, sun not counted
  double air_heat_W_m2 = 0.0;      ///< carried away by the air that passes
  double latent_heat_W_m2 = 0.0;   ///< set free on the faces
  double closure_W_m2 = 0.0;       ///< largest imbalance left
  double heat_W = 0.0;            ///< heat the room loses through this gap: glass and air that returns colder
  double through_air_m3_s = 0.0;  ///< outdoor air into the room through the gap, half of in and out
  GapLedger ledger;
  ValidityFlags flags;
};

struct HourOptions {
  double closure_W_m2 = 1e-6;  ///< 1e-10 to 1e-2
  int max_iterations = 40;
  int gust_points = 7;
};

/// Runs the steps in turn from `start` and hands each to `each_step`. Returns the state after the last.
/// O(steps), about a microsecond a step; no memory that grows with them. Throws InvalidInput; a step that
/// does not settle says so in its status, keeps the stores as they were, and the run goes on.
GapStore run_gap_hours(const GapDesign& design, const GapStore& start, std::span<const HourConditions> steps,
                       const std::function<void(std::size_t, const HourState&)>& each_step,
                       const HourOptions& options = {});

}  // namespace dewgap
