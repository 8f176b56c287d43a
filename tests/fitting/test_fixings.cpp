#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "dewgap/fitting/movement.hpp"
#include "sheet_plan_cases.hpp"

namespace dewgap {
namespace {

using test::gives_reason;
using test::narrow_faced_opening_of;
using test::opening_of;

void expect_well_spaced(const std::vector<int>& marks_mm, int length_mm) {
  ASSERT_FALSE(marks_mm.empty());
  if (marks_mm.size() == 1) {
    EXPECT_EQ(marks_mm.front(), length_mm / 2);
    EXPECT_LT(length_mm, 150);
    return;
  }
  EXPECT_EQ(marks_mm.front(), 50);
  EXPECT_EQ(marks_mm.back(), length_mm - 50);
  for (std::size_t i = 1; i < marks_mm.size(); ++i) {
    const int spacing_mm = marks_mm[i] - marks_mm[i - 1];
    EXPECT_GT(spacing_mm, 0);
    EXPECT_LE(spacing_mm, 400);
    if (length_mm - 100 > 800) {
      EXPECT_GE(spacing_mm, 265);  // three intervals and up: the fewest that keep 400
    }
    EXPECT_NEAR(marks_mm[i - 1] + marks_mm[marks_mm.size() - i], length_mm, 1);  // symmetric
  }
}

TEST(Fixings, AreFiftyFromTheCornersAndAtMostFourHundredApart) {
  for (double side_m = 0.1; side_m <= 3.9; side_m += 0.0371) {
    const auto plan = plan_sheet(opening_of(side_m, 4.0 - side_m));
    expect_well_spaced(plan.width_marks_mm, plan.width_mm);
    expect_well_spaced(plan.height_marks_mm, plan.height_mm);
    EXPECT_EQ(static_cast<std::size_t>(plan.fixings_per_width), plan.width_marks_mm.size());
    EXPECT_EQ(static_cast<std::size_t>(plan.fixings_per_height), plan.height_marks_mm.size());
    EXPECT_EQ(plan.fixing_count, 2 * (plan.fixings_per_width + plan.fixings_per_height));
  }
}

TEST(Fixings, OfAnOrdinarySheet) {
  const auto plan = plan_sheet(opening_of(0.860, 1.160));  // a sheet of 900 x 1200
  EXPECT_EQ(plan.width_marks_mm, (std::vector<int>{50, 450, 850}));
  EXPECT_EQ(plan.height_marks_mm, (std::vector<int>{50, 417, 783, 1150}));
  EXPECT_EQ(plan.fixing_count, 14);
  EXPECT_EQ(plan.fixing, FixingKind::turn_clips);
  EXPECT_NEAR(plan.fixing_offset_mm, 6.0, 1e-9);
  EXPECT_EQ(plan.hole_diameter_mm, 0.0);
  EXPECT_EQ(plan.screw_length_mm, 0.0);
}

TEST(Fixings, ClipsNeedThirtyFiveMillimetresOfFrame) {
  auto input = opening_of(0.5, 0.6);
  input.fixing_face_m = 0.035;
  EXPECT_EQ(plan_sheet(input).fixing, FixingKind::turn_clips);
  input.fixing_face_m = 0.0349;
  const auto plan = plan_sheet(input);
  EXPECT_EQ(plan.fixing, FixingKind::screws);
  EXPECT_TRUE(gives_reason(plan, "turn clips need 35 mm: screws instead."));
}

TEST(Fixings, WiderOverlapNeedsAWiderFrameForClips) {
  auto input = opening_of(0.5, 0.6);
  input.overlap_m = 0.030;
  EXPECT_EQ(plan_sheet(input).fixing, FixingKind::screws);
  input.fixing_face_m = 0.045;
  EXPECT_EQ(plan_sheet(input).fixing, FixingKind::turn_clips);
}

TEST(Fixings, ClipsStandClearOfALongSheet) {
  auto input = opening_of(1.0, 2.4);  // grows 5.1 mm, and half a shank
  const auto plan = plan_sheet(input);
  EXPECT_EQ(plan.fixing, FixingKind::turn_clips);
  EXPECT_NEAR(plan.fixing_offset_mm, 8.0, 1e-9);
  EXPECT_TRUE(gives_reason(plan, "set clip screws 8 mm off its edge"));
  for (double height_m = 0.3; height_m < 3.9; height_m += 0.13) {
    const auto each = plan_sheet(opening_of(0.3, height_m));
    if (each.fixing == FixingKind::turn_clips) {
      EXPECT_GE(each.fixing_offset_mm + 1e-9, std::max(6.0, each.movement_mm + 2.1));
    }
  }
}

double distance_mm(double x1_mm, double y1_mm, double x2_mm, double y2_mm) {
  return std::hypot(x1_mm - x2_mm, y1_mm - y2_mm);
}

/// The farthest hole from the tight screw, by going round all of them.
double farthest_mm(const SheetPlan& plan) {
  double farthest = 0.0;
  for (const double y_mm : {12.0, plan.height_mm - 12.0}) {
    for (const int x_mm : plan.width_marks_mm) {
      farthest = std::max(farthest, distance_mm(x_mm, y_mm, plan.fixed_mark_mm, 12.0));
    }
  }
  for (const double x_mm : {12.0, plan.width_mm - 12.0}) {
    for (const int y_mm : plan.height_marks_mm) {
      farthest = std::max(farthest, distance_mm(x_mm, y_mm, plan.fixed_mark_mm, 12.0));
    }
  }
  return farthest;
}

TEST(Fixings, EveryHoleAllowsTheMovementOrIsASlot) {
  int slotted = 0;
  int grown = 0;
  int usual = 0;
  for (double height_m = 0.15; height_m < 3.9; height_m += 0.11) {
    const auto plan = plan_sheet(narrow_faced_opening_of(0.3, height_m));
    ASSERT_EQ(plan.fixing, FixingKind::screws);
    EXPECT_NE(std::find(plan.width_marks_mm.begin(), plan.width_marks_mm.end(), plan.fixed_mark_mm),
              plan.width_marks_mm.end());
    const double movement_mm = thermal_movement_m(SheetKind::acrylic, farthest_mm(plan) * 1e-3, 30.0) * 1e3;
    const double play_mm = plan.hole_diameter_mm - 4.2;
    EXPECT_GE(plan.hole_diameter_mm + 1e-9, 5.0);
    EXPECT_LE(plan.hole_diameter_mm, 8.0 + 1e-9);
    EXPECT_EQ(plan.slots_needed, movement_mm > 3.8);
    EXPECT_TRUE(plan.slots_needed || play_mm + 1e-9 >= movement_mm);
    slotted += plan.slots_needed ? 1 : 0;
    grown += !plan.slots_needed && plan.hole_diameter_mm > 5.0 ? 1 : 0;
    usual += !plan.slots_needed && plan.hole_diameter_mm == 5.0 ? 1 : 0;
  }
  EXPECT_GT(slotted, 0);
  EXPECT_GT(grown, 0);
  EXPECT_GT(usual, 0);
}

TEST(Fixings, PrintTheReasonWhereMovementOverridesTheUsualHole) {
  const auto plan = plan_sheet(narrow_faced_opening_of(0.8, 1.24));
  EXPECT_NEAR(plan.movement_mm, 2.7, 0.05);
  EXPECT_FALSE(plan.slots_needed);
  EXPECT_NEAR(plan.hole_diameter_mm, 7.0, 1e-9);
  EXPECT_TRUE(gives_reason(plan, "a 5 mm hole allows 0.8: drill 7.0 mm, with washers."));
  EXPECT_TRUE(gives_reason(plan, "Tight screw only at"));
  const auto long_plan = plan_sheet(narrow_faced_opening_of(0.8, 2.4));
  EXPECT_TRUE(long_plan.slots_needed);
  EXPECT_NEAR(long_plan.hole_diameter_mm, 5.0, 1e-9);
  EXPECT_TRUE(gives_reason(long_plan, "slots 5 x 11 mm, pointing at the fixed screw."));
}

TEST(Fixings, PilotIsLimitedByTheTimber) {
  auto input = narrow_faced_opening_of(0.5, 0.6);
  const auto deep = plan_sheet(input);
  EXPECT_NEAR(deep.pilot_depth_mm, 40.0, 1e-9);
  EXPECT_NEAR(deep.pilot_diameter_mm, 3.0, 1e-9);
  EXPECT_NEAR(deep.screw_length_mm, 50.0, 1e-9);  // 4 mm sheet, 6 mm tape, 40 mm pilot
  input.screw_depth_m = 0.022;
  const auto shallow = plan_sheet(input);
  EXPECT_NEAR(shallow.pilot_depth_mm, 19.0, 1e-9);
  EXPECT_NEAR(shallow.screw_length_mm, 29.0, 1e-9);
  EXPECT_TRUE(gives_reason(shallow, "Pilot holes no deeper than 19 mm: the timber ends 3 mm further on."));
  EXPECT_FALSE(gives_reason(shallow, "won't hold a screw"));
}

TEST(Fixings, GlassIsNeverDrilled) {
  auto input = opening_of(0.8, 1.2);
  input.sheet = SheetKind::glass;
  const auto plan = plan_sheet(input);
  EXPECT_EQ(plan.fixing, FixingKind::turn_clips);
  EXPECT_EQ(plan.hole_diameter_mm, 0.0);
  EXPECT_TRUE(gives_reason(plan, "Glass can't be drilled"));
}

TEST(Fixings, FilmHasTapeOnly) {
  auto input = opening_of(0.8, 1.2);
  input.sheet = SheetKind::pet_film;
  const auto plan = plan_sheet(input);
  EXPECT_EQ(plan.fixing, FixingKind::tape_only);
  EXPECT_EQ(plan.fixing_count, 0);
  EXPECT_TRUE(plan.width_marks_mm.empty());
  EXPECT_TRUE(plan.height_marks_mm.empty());
  EXPECT_EQ(plan.pilot_depth_mm, 0.0);
  EXPECT_NEAR(plan.thickness_mm, 1000.0 * sheet_properties(SheetKind::pet_film).usual_thickness_m, 1e-12);
  EXPECT_GT(plan.tape_length_m, 3.9);
  EXPECT_TRUE(gives_reason(plan, "tape alone"));
}

}  // namespace
}  // namespace dewgap
