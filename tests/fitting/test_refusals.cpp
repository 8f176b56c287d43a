// Jobs that cannot be done as they stand, and what a plan says of bending and swelling.
#include <gtest/gtest.h>

#include <algorithm>

#include "dewgap/errors.hpp"
#include "sheet_plan_cases.hpp"

namespace dewgap {
namespace {

using test::gives_reason;
using test::narrow_faced_opening_of;
using test::opening_of;

bool refuses(const SheetPlan& plan, RefusalKind kind) {
  return std::any_of(plan.refused.begin(), plan.refused.end(),
                     [kind](const Refusal& refusal) { return refusal.kind == kind; });
}

TEST(Refusals, AreNoneForAnOrdinaryWindow) {
  EXPECT_TRUE(plan_sheet(opening_of(0.9, 1.2)).refused.empty());
}

TEST(Refusals, AreGivenAllAtOnce) {
  auto input = opening_of(2.2, 3.2);
  input.fixing_face_m = 0.012;
  input.screw_depth_m = 0.010;
  input.catch_stands_out_m = 0.025;
  input.sheet_thickness_m = 0.003;
  input.breaks = {{Member::bottom, 20, 0.5}};
  input.opening.diagonals_m = {3.97, 3.90};
  const auto plan = plan_sheet(input);
  for (const auto kind :
       {RefusalKind::face_too_narrow, RefusalKind::timber_too_thin, RefusalKind::catch_in_the_way,
        RefusalKind::larger_than_stock, RefusalKind::too_thin_for_span, RefusalKind::break_has_no_place,
        RefusalKind::diagonals_wrong}) {
    EXPECT_TRUE(refuses(plan, kind)) << static_cast<int>(kind);
  }
  EXPECT_TRUE(plan.batten_first);
  for (const auto& refusal : plan.refused) {
    EXPECT_LE(refusal.sentence.size(), 110u) << refusal.sentence;
    EXPECT_EQ(refusal.sentence.back(), '.');
  }
}

TEST(Refusals, KnowStockEitherWayRound) {
  EXPECT_FALSE(refuses(plan_sheet(opening_of(1.9, 2.9)), RefusalKind::larger_than_stock));
  EXPECT_FALSE(refuses(plan_sheet(opening_of(2.9, 1.9)), RefusalKind::larger_than_stock));
  EXPECT_TRUE(refuses(plan_sheet(opening_of(2.2, 2.2)), RefusalKind::larger_than_stock));
  auto input = opening_of(0.9, 1.2);
  input.stock = StockSize{1.0, 1.0};
  EXPECT_TRUE(refuses(plan_sheet(input), RefusalKind::larger_than_stock));
  input.stock = StockSize{0.0, 1.0};
  EXPECT_THROW(plan_sheet(input), InvalidInput);
}

TEST(Refusals, ACatchIsClearedByABatten) {
  auto input = opening_of(0.9, 1.2);
  input.catch_stands_out_m = 0.020;
  EXPECT_TRUE(refuses(plan_sheet(input), RefusalKind::catch_in_the_way));
  input.batten_depth_m = 0.018;
  EXPECT_FALSE(refuses(plan_sheet(input), RefusalKind::catch_in_the_way));
}

TEST(Refusals, TapeMustNotCarryGlass) {
  auto input = opening_of(0.9, 1.2);
  input.sheet = SheetKind::glass;
  input.frame = FrameKind::steel;
  EXPECT_TRUE(refuses(plan_sheet(input), RefusalKind::wrong_material));
}

TEST(Bending, OverridesTheTradesThicknessWithTheReason) {
  const auto plan = plan_sheet(opening_of(1.16, 1.86));
  EXPECT_GT(plan.thickness_mm, 4.0);
  EXPECT_TRUE(gives_reason(plan, "4 mm bends"));
  EXPECT_LE(plan.deflection_mm.value(), plan.deflection_limit_mm.value());
  auto input = opening_of(1.16, 1.86);
  input.sheet_thickness_m = 0.004;  // the user's wins, with the figures told
  EXPECT_NEAR(plan_sheet(input).thickness_mm, 4.0, 1e-12);
  EXPECT_TRUE(gives_reason(plan_sheet(input), "allowed: take"));
  EXPECT_TRUE(plan_sheet(input).deflection_is_upper_bound);
  input.sheet = SheetKind::pet_film;
  input.sheet_thickness_m.reset();
  EXPECT_FALSE(plan_sheet(input).deflection_mm);
}

TEST(Swelling, TakesRoomInARevealAndRoundAHole) {
  auto dry = opening_of(0.9, 1.3);
  dry.seat = SheetSeat::inside_reveal;
  auto damp = dry;
  damp.relative_humidity_range = 0.3;
  // 0.0035 x 0.3 x 1300 = 1.37 more
  EXPECT_NEAR(plan_sheet(damp).moisture_movement_mm, 0.0035 * 0.3 * plan_sheet(damp).height_mm, 1e-9);
  EXPECT_LT(plan_sheet(damp).height_mm, plan_sheet(dry).height_mm);
  auto screws = narrow_faced_opening_of(0.8, 1.24);
  const double dry_hole_mm = plan_sheet(screws).hole_diameter_mm;
  screws.relative_humidity_range = 0.3;
  EXPECT_GT(plan_sheet(screws).hole_diameter_mm + plan_sheet(screws).slot_length_mm, dry_hole_mm);
}

}  // namespace
}  // namespace dewgap
