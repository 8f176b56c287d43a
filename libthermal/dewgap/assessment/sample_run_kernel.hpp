// One sample of the unknowns run through the physics: every figure of the answer for it. Internal to
// assessment/.
#pragma once

#include <array>

#include "dewgap/assessment/scenario_kernel.hpp"
#include "dewgap/energy/heat_saved.hpp"

namespace dewgap {

inline constexpr std::array<VentOption, 3> vent_options{VentOption::sealed, VentOption::breaks_bottom,
                                                        VentOption::breaks_bottom_and_top};

/// The gap under one design condition.
struct GapFigures {
  double margin_K = 0.0;
  double condensation_g_m2h = 0.0;
  AirWay way = AirWay::still;
  double air_m3_h = 0.0;
  double highest_dry_room_vapour_Pa = 0.0;  ///< room vapour at which the coldest face is at its dew point
};

struct OptionFigures {
  GapFigures month;
  GapFigures frost;
  double draught_after_m3_h = 0.0;
  double air_loss_W_K = 0.0;  ///< heat that air in the gap costs, winter mean, over a closed gap
  double frost_room_face_C = 0.0;
  double month_room_face_factor = 0.0;
  double month_room_face_humidity = 0.0;  ///< half the day behind a drawn curtain, if there is one
  /// The same at the coldest place towards the room: the edge's, where its section is solved, or the face.
  double month_room_side_humidity = 0.0;
  double excess_factor = 1.0;  ///< room vapour excess after sealing over before
};

struct SampleFigures {
  SolveStatus status = SolveStatus::converged;
  ValidityFlags flags;
  std::array<OptionFigures, vent_options.size()> options{};
  OptionFigures lifted;  ///< sealed, with a 200 mm length of tape lifted
  double glass_u_before = 0.0;
  double glass_u_after = 0.0;
  double window_u_before = 0.0;
  double window_u_after = 0.0;
  double frost_face_before_C = 0.0;
  double month_face_factor_before = 0.0;
  double month_face_humidity_before = 0.0;  ///< the same
  double draught_before_m3_h = 0.0;
  double month_room_humidity = 0.0;
  double degree_hours_factor_kKh = 0.0;  ///< kWh saved a year per W/K cut
  double draught_factor_kWh_m3_h = 0.0;  ///< kWh saved a year per m3/h of draught stopped
  HeatSaved saved;                       ///< with the sealed option's draught
};

SampleFigures run_sample(const Setting& setting, const UnknownValues& sample);

/// The heating season's mean and the old window's draught in it: the same for every option of a sample.
struct OldWinter {
  Moment moment;
  double draught_m3_h = 0.0;
};
OldWinter old_winter(const Setting& setting, const UnknownValues& sample);

/// Room vapour excess after the window's draught has changed over before: what draught is stopped carried
/// moisture away.
double sealing_factor(const UnknownValues& sample, double before_m3_h, double after_m3_h);

/// The design-condition check of one option alone, with the room's excess scaled: for remedies. Throws
/// CalculationFailed when a balance does not settle.
OptionFigures run_option(const Setting& setting, const UnknownValues& sample, VentOption vent,
                         TapeFault fault, double excess_scale, const OldWinter& winter);

/// No film at the coldest place in the month's means.
bool is_dry(const OptionFigures& figures);
/// Nothing at the centre in the month's means (edges may mist) and at most mist after a frost night.
bool is_acceptable(const OptionFigures& figures, double frost_night_hours);

}  // namespace dewgap
