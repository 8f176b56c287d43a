// Sheets on a pane, on a sash and in a reveal: their size and what holds them.
#include <gtest/gtest.h>

#include "dewgap/errors.hpp"
#include "sheet_plan_cases.hpp"

namespace dewgap {
namespace {

using test::expect_no_fixings;
using test::gives_reason;
using test::opening_of;

SheetPlanInput glass_of(SheetSeat seat, double width_m, double height_m) {
  auto input = opening_of(1.0, 1.0);
  input.opening = visible_glass(width_m, height_m);
  input.seat = seat;
  return input;
}

TEST(SheetOnPanes, OverlapsTheVisibleGlassByHalfAGlazingBar) {
  auto input = glass_of(SheetSeat::on_panes, 0.250, 0.400);
  input.sheet_count = 6;
  const auto plan = plan_sheet(input);
  EXPECT_EQ(plan.width_mm, 266);
  EXPECT_EQ(plan.height_mm, 416);
  EXPECT_EQ(plan.sheet_count, 6);
  EXPECT_TRUE(gives_reason(plan, "Width: visible glass 250 mm, plus 8 mm a side."));
  EXPECT_TRUE(gives_reason(plan, "bars from 18 mm, our convention"));
  EXPECT_TRUE(gives_reason(plan, "use narrower tape"));
  input.overlap_m = 0.005;
  EXPECT_EQ(plan_sheet(input).width_mm, 260);
}

TEST(SheetOnPanes, DrillsNoGlazingBar) {
  for (const auto sheet : {SheetKind::acrylic, SheetKind::polycarbonate, SheetKind::petg, SheetKind::glass,
                           SheetKind::pet_film}) {
    auto input = glass_of(SheetSeat::on_panes, 0.5, 0.9);
    input.sheet = sheet;
    const auto plan = plan_sheet(input);
    EXPECT_EQ(plan.fixing, FixingKind::tape_only);
    expect_no_fixings(plan);
    EXPECT_EQ(gives_reason(plan, "must not carry glass"), sheet == SheetKind::glass);
  }
}

TEST(SheetOnPanes, TapeGoesRoundThePaneHoweverSmall) {
  auto input = glass_of(SheetSeat::on_panes, 0.02, 0.05);
  input.tape_width_m = 0.06;
  // middle of an 8 mm rim: 2 (20 + 50) + 4 x 8
  EXPECT_NEAR(plan_sheet(input).tape_length_m, 0.172, 1e-9);
  EXPECT_THROW(plan_sheet(glass_of(SheetSeat::on_panes, 0.019, 0.05)), InvalidInput);
}

TEST(SheetOnASash, OverlapsItsGlassAsFarAsTheFaceAllows) {
  auto input = glass_of(SheetSeat::on_sash, 0.700, 0.600);
  input.sheet_count = 2;
  const auto plan = plan_sheet(input);
  EXPECT_EQ(plan.width_mm, 740);
  EXPECT_EQ(plan.height_mm, 640);
  EXPECT_EQ(plan.sheet_count, 2);
  EXPECT_EQ(plan.fixing, FixingKind::turn_clips);
  input.fixing_face_m = 0.015;
  EXPECT_EQ(plan_sheet(input).width_mm, 730);
  EXPECT_TRUE(plan_sheet(input).batten_first);
}

TEST(SheetInAReveal, IsHeldByBeads) {
  for (const double face_m : {0.008, 0.030, 0.060}) {
    auto input = opening_of(0.8, 1.2);
    input.seat = SheetSeat::inside_reveal;
    input.fixing_face_m = face_m;
    input.screw_depth_m = 0.005;
    const auto plan = plan_sheet(input);
    EXPECT_EQ(plan.fixing, FixingKind::beads);
    expect_no_fixings(plan);
    EXPECT_FALSE(plan.batten_first);
    EXPECT_TRUE(gives_reason(plan, "no hole in the sheet (common practice, no source)"));
  }
}

TEST(SheetCount, IsWithinReason) {
  auto input = opening_of(0.8, 1.2);
  EXPECT_EQ(plan_sheet(input).sheet_count, 1);
  for (const int bad : {0, -1, 201}) {
    input.sheet_count = bad;
    EXPECT_THROW(plan_sheet(input), InvalidInput);
  }
}

}  // namespace
}  // namespace dewgap
