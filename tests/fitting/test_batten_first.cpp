// Where nothing at the window holds a fixing, and where none may be drilled.
#include <gtest/gtest.h>

#include <algorithm>

#include "sheet_plan_cases.hpp"

namespace dewgap {
namespace {

using test::expect_no_fixings;
using test::gives_reason;
using test::narrow_faced_opening_of;
using test::opening_of;

constexpr const char* narrow_face = "The face is too narrow to hold a screw: fix a batten first.";

TEST(BattenFirst, WhereAScrewWouldLandAtTheTimbersEdge) {
  for (const double face_m : {0.005, 0.012, 0.0199}) {
    auto input = opening_of(0.5, 0.6);
    input.fixing_face_m = face_m;
    const auto plan = plan_sheet(input);
    EXPECT_TRUE(plan.batten_first) << face_m;
    EXPECT_EQ(plan.batten_reason, narrow_face);
    EXPECT_EQ(std::count(plan.reasons.begin(), plan.reasons.end(), narrow_face), 1);
    expect_no_fixings(plan);
  }
  auto input = opening_of(0.5, 0.6);
  input.fixing_face_m = 0.020;  // 20 mm overlap less 12 mm: just 8 mm inside
  const auto plan = plan_sheet(input);
  EXPECT_FALSE(plan.batten_first);
  EXPECT_EQ(plan.fixing, FixingKind::screws);
  EXPECT_TRUE(plan.batten_reason.empty());
}

TEST(BattenFirst, WhereTheOverlapIsTooSmallForAScrew) {
  auto input = narrow_faced_opening_of(0.5, 0.6);
  input.overlap_m = 0.019;
  EXPECT_EQ(plan_sheet(input).batten_reason,
            "Overlap of 19.0 mm is too small to hold a screw: fix a batten first.");
  expect_no_fixings(plan_sheet(input));
  input.fixing_face_m = 0.040;  // clips stand outside the sheet's edge
  EXPECT_EQ(plan_sheet(input).fixing, FixingKind::turn_clips);
}

TEST(BattenFirst, WhereAnOpeningOutOfSquareTakesTheOverlapAtACorner) {
  auto input = narrow_faced_opening_of(0.5, 0.6);
  input.opening.diagonals_m = {0.786, 0.776};  // 7.8 mm out of square
  EXPECT_TRUE(plan_sheet(input).batten_first);
  input.overlap_m = 0.024;
  EXPECT_EQ(plan_sheet(input).fixing, FixingKind::screws);
}

TEST(BattenFirst, OnShallowTimberUnderClipsAndScrews) {
  for (const double face_m : {0.030, 0.060}) {
    for (const double depth_m : {0.0, 0.010, 0.0149}) {
      auto input = opening_of(0.5, 0.6);
      input.fixing_face_m = face_m;
      input.screw_depth_m = depth_m;
      const auto plan = plan_sheet(input);
      EXPECT_TRUE(plan.batten_first);
      EXPECT_EQ(plan.batten_reason, "Under 15 mm of timber won't hold a screw: fix a batten first.");
      expect_no_fixings(plan);
      input.screw_depth_m = 0.015;
      EXPECT_FALSE(plan_sheet(input).batten_first);
      EXPECT_NEAR(plan_sheet(input).pilot_depth_mm, 12.0, 1e-9);  // 3 mm of timber stay
    }
  }
}

TEST(BattenFirst, ForGlassOnAFaceTooNarrowForClips) {
  auto input = narrow_faced_opening_of(0.8, 1.2);
  input.sheet = SheetKind::glass;
  const auto plan = plan_sheet(input);
  EXPECT_TRUE(plan.batten_first);
  EXPECT_TRUE(gives_reason(plan, "Glass can't be drilled and clips need 35 mm of face"));
  expect_no_fixings(plan);
}

TEST(NoTimber, IsNotDrilled) {
  for (const auto frame : {FrameKind::steel, FrameKind::aluminium, FrameKind::pvc_u}) {
    for (const double face_m : {0.010, 0.030, 0.060}) {
      auto input = opening_of(0.8, 1.2);
      input.frame = frame;
      input.fixing_face_m = face_m;
      const auto plan = plan_sheet(input);
      EXPECT_EQ(plan.fixing, FixingKind::tape_only);
      expect_no_fixings(plan);
      EXPECT_FALSE(plan.batten_first);
      EXPECT_TRUE(gives_reason(
          plan, "No timber here: tape or magnetic strip only; ask before drilling metal or PVC-U."));
    }
  }
  auto input = opening_of(0.8, 1.2);
  input.frame = FrameKind::hardwood;
  EXPECT_EQ(plan_sheet(input).fixing, FixingKind::turn_clips);
}

TEST(NotMeasured, TimberGivesNoDepthToDrill) {
  for (const double face_m : {0.030, 0.060}) {
    auto input = opening_of(0.5, 0.6);
    input.fixing_face_m = face_m;
    input.screw_depth_m.reset();
    const auto plan = plan_sheet(input);
    EXPECT_FALSE(plan.batten_first);
    EXPECT_GT(plan.fixing_count, 0);
    EXPECT_EQ(plan.pilot_depth_mm, 0.0);
    EXPECT_EQ(plan.screw_length_mm, 0.0);
    EXPECT_TRUE(gives_reason(plan, "Measure the timber before drilling: depth not given."));
  }
}

TEST(NotMeasured, FaceIsToldOfAndClipsAssumed) {
  auto input = opening_of(0.5, 0.6);
  input.fixing_face_m.reset();
  const auto plan = plan_sheet(input);
  EXPECT_EQ(plan.fixing, FixingKind::turn_clips);
  EXPECT_EQ(plan.width_mm, 540);
  EXPECT_TRUE(gives_reason(plan, "Face not measured: clips need 35 mm of flat timber."));
  EXPECT_FALSE(gives_reason(plan_sheet(opening_of(0.5, 0.6)), "Face not measured"));
}

}  // namespace
}  // namespace dewgap
