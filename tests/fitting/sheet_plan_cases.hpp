// Openings that the tests of the sheet plan share.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <string_view>

#include "dewgap/fitting/sheet_plan.hpp"

namespace dewgap::test {

/// A square opening of the given sides with a face wide enough for clips and deep timber. Movement by heat
/// alone, so that it can be followed by hand.
inline SheetPlanInput opening_of(double width_m, double height_m) {
  SheetPlanInput input;
  input.opening.widths_m = {width_m, width_m, width_m};
  input.opening.heights_m = {height_m, height_m, height_m};
  input.fixing_face_m = 0.040;
  input.screw_depth_m = 0.060;
  input.relative_humidity_range = 0.0;
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

/// Nothing that anybody could mark, drill or screw.
inline void expect_no_fixings(const SheetPlan& plan) {
  EXPECT_NE(plan.fixing, FixingKind::turn_clips);
  EXPECT_NE(plan.fixing, FixingKind::screws);
  EXPECT_EQ(plan.fixing_count, 0);
  EXPECT_TRUE(plan.width_marks_mm.empty());
  EXPECT_TRUE(plan.height_marks_mm.empty());
  EXPECT_EQ(plan.hole_diameter_mm, 0.0);
  EXPECT_EQ(plan.pilot_diameter_mm, 0.0);
  EXPECT_EQ(plan.pilot_depth_mm, 0.0);
  EXPECT_EQ(plan.screw_length_mm, 0.0);
}

}  // namespace dewgap::test
