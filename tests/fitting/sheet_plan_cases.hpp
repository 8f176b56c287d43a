// Openings that the tests of the sheet plan share.
#pragma once

#include <algorithm>
#include <string_view>

#include "dewgap/fitting/sheet_plan.hpp"

namespace dewgap::test {

/// A square opening of the given sides with a face wide enough for clips and deep timber.
inline SheetPlanInput opening_of(double width_m, double height_m) {
  SheetPlanInput input;
  input.opening.widths_m = {width_m, width_m, width_m};
  input.opening.heights_m = {height_m, height_m, height_m};
  input.screw_depth_m = 0.060;
  return input;
}

/// The same with a face too narrow for clips, so that screws are used.
inline SheetPlanInput narrow_faced_opening_of(double width_m, double height_m) {
  auto input = opening_of(width_m, height_m);
  input.fixing_face_m = 0.030;
  return input;
}

inline bool gives_reason(const SheetPlan& plan, std::string_view part) {
  const auto holds = [part](const std::string& text) { return text.find(part) != std::string::npos; };
  return std::any_of(plan.reasons.begin(), plan.reasons.end(), holds) ||
         std::any_of(plan.notes.begin(), plan.notes.end(), holds);
}

}  // namespace dewgap::test
