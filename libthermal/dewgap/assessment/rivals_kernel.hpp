// One rival in one sample of the unknowns. Internal to assessment/.
#pragma once

#include <vector>

#include "dewgap/assessment/rivals.hpp"
#include "dewgap/assessment/summary_kernel.hpp"

namespace dewgap {

/// What a rival does in one case.
struct RivalFigures {
  double heat_saved_kWh = 0.0;
  double frost_room_face_C = 0.0;
  double frost_pane_C = 0.0;
  double draught_m3_h = 0.0;
  double month_margin_K = 0.0;
  double frost_margin_K = 0.0;
};

/// How the sheet is vented, and what the year of hours has it cost over the nearest steady option.
struct SheetAsFitted {
  VentOption vent = VentOption::sealed;
  double costs_kWh = 0.0;
  double off_costs_kWh = 0.0;  ///< of the sealed sheet, taken off in summer
};

/// Rivals that a window can have beside the sheet as it is fitted, in the order of RivalKind.
std::vector<RivalKind> offered_rivals(const Survey& survey, VentOption vent);

/// Every rival in one case, in the order given. `place` of the sample in its draw: the leakage of stripped
/// joints is drawn for it. Throws CalculationFailed when a balance does not settle.
std::vector<RivalFigures> rivals_of_sample(const Setting& setting, const UnknownValues& sample,
                                           const SampleFigures& figures, const SheetAsFitted& sheet,
                                           const std::vector<RivalKind>& kinds, std::size_t place,
                                           std::uint64_t seed);

/// The sample with the leakage of its joints once stripped: drawn from the prior of weather-stripped joints,
/// never above what it was.
UnknownValues with_stripped_joints(const UnknownValues& sample, std::size_t place, std::uint64_t seed);

}  // namespace dewgap
