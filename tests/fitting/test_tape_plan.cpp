#include "dewgap/fitting/tape_plan.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

TapePlanInput usual() {
  return {.width_mm = 900,
          .height_mm = 1200,
          .tape_width_mm = 12.0,
          .width_marks_mm = {50, 450, 850},
          .breaks = {}};
}

TEST(TapePlan, TopAndBottomRunThroughAndTheSidesStandBetween) {
  const auto plan = plan_tape(usual());
  ASSERT_EQ(plan.pieces.size(), 4u);
  EXPECT_NEAR(plan.pieces[0].length_mm, 1176.0, 1e-9);
  EXPECT_NEAR(plan.pieces[1].length_mm, 900.0, 1e-9);
  EXPECT_NEAR(plan.length_m, 4.152, 1e-9);  // 2 (0.9 + 1.2) less 4 x 0.012
}

TEST(TapePlan, TwoBreaksStandNearTheEndsClearOfTheFixings) {
  auto input = usual();
  input.breaks = {{Member::bottom, 2, 0.020}};
  const auto plan = plan_tape(input);
  ASSERT_EQ(plan.breaks.size(), 2u);
  EXPECT_NEAR(plan.breaks[0].from_mm, 65.0, 1e-9);
  EXPECT_NEAR(plan.breaks[0].to_mm, 85.0, 1e-9);
  EXPECT_NEAR(plan.breaks[1].from_mm, 815.0, 1e-9);
  EXPECT_NEAR(plan.breaks[1].to_mm, 835.0, 1e-9);
  EXPECT_EQ(plan.pieces.size(), 6u);
  EXPECT_NEAR(plan.length_m, 4.112, 1e-9);
  input.width_marks_mm.clear();
  EXPECT_NEAR(plan_tape(input).breaks[0].from_mm, 50.0, 1e-9);
}

TEST(TapePlan, BreaksOfAnySizeKeepTheirDistances) {
  std::mt19937 draw(3);
  std::uniform_int_distribution<int> width(60, 3000);
  std::uniform_int_distribution<int> count(1, 5);
  std::uniform_real_distribution<double> length(0.005, 0.15);
  int placed = 0;
  for (int i = 0; i < 10000; ++i) {
    TapePlanInput input = usual();
    input.width_mm = width(draw);
    input.width_marks_mm = i % 4 == 0 ? std::vector<int>{} : edge_marks_mm(input.width_mm);
    const Member member = i % 2 == 0 ? Member::bottom : Member::top;
    input.breaks = {{member, count(draw), length(draw)}};
    const auto plan = plan_tape(input);
    ASSERT_TRUE(plan.breaks.empty() || plan.breaks.size() == static_cast<std::size_t>(input.breaks[0].count));
    ASSERT_EQ(plan.breaks.empty(), !plan.refused.empty());
    placed += plan.breaks.empty() ? 0 : 1;
    double broken_mm = 0.0;
    for (const auto& one : plan.breaks) {
      ASSERT_NEAR(one.to_mm - one.from_mm, 1e3 * input.breaks[0].length_m, 1e-9);
      ASSERT_GE(one.from_mm, 22.0 - 1e-9);
      ASSERT_LE(one.to_mm, input.width_mm - 22.0 + 1e-9);
      for (const int mark : input.width_marks_mm) {
        ASSERT_TRUE(mark <= one.from_mm - 15.0 + 1e-9 || mark >= one.to_mm + 15.0 - 1e-9);
      }
      broken_mm += one.to_mm - one.from_mm;
    }
    for (const auto& piece : plan.pieces) ASSERT_GT(piece.length_mm, 0.0);
    ASSERT_NEAR(plan.length_m * 1e3, 2.0 * (input.width_mm + 1200) - 48.0 - broken_mm, 1e-6);
  }
  EXPECT_GT(placed, 5000);
}

TEST(TapePlan, RefusesBreaksThatFindNoPlace) {
  auto input = usual();
  input.breaks = {{Member::bottom, 2, 0.5}, {Member::top, 1, 0.02}};
  const auto plan = plan_tape(input);
  ASSERT_EQ(plan.refused.size(), 1u);
  EXPECT_EQ(plan.refused[0],
            "No room for 2 breaks of 500 mm between the fixings along the bottom: fewer or shorter ones.");
  EXPECT_EQ(plan.breaks.size(), 1u);
}

TEST(TapePlan, RejectsBadInput) {
  auto input = usual();
  input.breaks = {{Member::left, 1, 0.02}};
  EXPECT_THROW(plan_tape(input), InvalidInput);
  input.breaks = {{Member::top, 0, 0.02}};
  EXPECT_THROW(plan_tape(input), InvalidInput);
  input.breaks = {{Member::top, 1, std::nan("")}};
  EXPECT_THROW(plan_tape(input), InvalidInput);
  input = usual();
  input.tape_width_mm = 600.0;
  EXPECT_THROW(plan_tape(input), InvalidInput);
}

}  // namespace
}  // namespace dewgap
