// Marks and holes, over many sizes.
#include "dewgap/fitting/holes.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "dewgap/errors.hpp"
#include "dewgap/fitting/movement.hpp"
#include "sheet_plan_cases.hpp"

namespace dewgap {
namespace {

using test::narrow_faced_opening_of;
using test::opening_of;

TEST(EdgeMarks, AreSymmetricAndNeverTooFarApartAtAnyLength) {
  for (int length_mm = 40; length_mm <= 5000; ++length_mm) {
    const auto marks = edge_marks_mm(length_mm);
    ASSERT_FALSE(marks.empty());
    for (std::size_t i = 0; i < marks.size(); ++i) {
      const int sum_mm = marks[i] + marks[marks.size() - 1 - i];
      const bool middle = 2 * i + 1 == marks.size();
      ASSERT_TRUE(sum_mm == length_mm || (middle && sum_mm == length_mm - 1)) << length_mm;
      ASSERT_TRUE(i == 0 || (marks[i] > marks[i - 1] && marks[i] - marks[i - 1] <= 400)) << length_mm;
    }
    ASSERT_TRUE(marks.size() == 1 || marks.front() == 50) << length_mm;
  }
  EXPECT_THROW(edge_marks_mm(0), InvalidInput);
}

/// Distance from a hole's or slot's rim to the nearest edge of the sheet.
double rim_mm(const Hole& hole, const SheetPlan& plan) {
  const double half_mm = 0.5 * std::max(hole.diameter_mm, hole.slot_length_mm);
  return std::min({hole.x_mm, hole.y_mm, plan.width_mm - hole.x_mm, plan.height_mm - hole.y_mm}) - half_mm;
}

void expect_play_enough(const SheetPlan& plan, const SheetPlanInput& input) {
  const auto tight =
      std::find_if(plan.holes.begin(), plan.holes.end(), [](const Hole& hole) { return hole.tight; });
  ASSERT_NE(tight, plan.holes.end());
  for (const auto& hole : plan.holes) {
    if (hole.tight) continue;
    const double reach_m = 1e-3 * std::hypot(hole.x_mm - tight->x_mm, hole.y_mm - tight->y_mm);
    const double moves_mm =
        1e3 * sheet_movement(input.sheet, reach_m, {input.temperature_range_K, input.relative_humidity_range})
                  .total_m;
    const double play_mm =
        hole.slot_length_mm > 0.0 ? hole.slot_length_mm - hole.diameter_mm : hole.diameter_mm - 4.2;
    ASSERT_GE(play_mm + 1e-9, moves_mm);
    ASSERT_GE(rim_mm(hole, plan) + 1e-9, 5.0);
  }
}

TEST(Holes, OfTenThousandSizesCanBeDrilled) {
  std::mt19937 draw(20);
  std::uniform_real_distribution<double> side_m(0.10, 3.9);
  std::uniform_real_distribution<double> depth_m(0.015, 0.08);
  int screwed = 0;
  int slotted = 0;
  for (int i = 0; i < 10000; ++i) {
    auto input = i % 2 == 0 ? opening_of(side_m(draw), side_m(draw))
                            : narrow_faced_opening_of(side_m(draw), side_m(draw));
    input.screw_depth_m = depth_m(draw);
    input.relative_humidity_range = i % 3 == 0 ? 0.3 : 0.0;
    input.overlap_m = i % 5 == 0 ? 0.027 : 0.020;
    input.sheet = i % 7 == 0 ? SheetKind::polycarbonate : SheetKind::acrylic;
    const auto plan = plan_sheet(input);
    ASSERT_EQ(static_cast<int>(plan.holes.size()), plan.fixing_count);
    for (std::size_t at = 0; at < plan.holes.size(); ++at) {
      const auto& hole = plan.holes[at];
      ASSERT_EQ(hole.number, static_cast<int>(at) + 1);
      ASSERT_LE(hole.pilot_depth_mm, *input.screw_depth_m * 1e3 - 3.0 + 1e-9);
      ASSERT_GE(hole.pilot_depth_mm, 12.0 - 1e-9);
    }
    if (plan.fixing == FixingKind::screws) {
      expect_play_enough(plan, input);
      ++screwed;
      slotted += plan.slots_needed ? 1 : 0;
    }
  }
  EXPECT_GT(screwed, 2000);
  EXPECT_GT(slotted, 500);
}

TEST(Holes, AreNumberedClockwiseFromTheBottomLeft) {
  const auto plan = plan_sheet(opening_of(0.860, 1.160));  // 900 x 1200: 3 and 4 marks
  ASSERT_EQ(plan.holes.size(), 14u);
  EXPECT_EQ(plan.holes.front().member, Member::left);
  EXPECT_EQ(plan.holes.front().along_mm, 50);
  EXPECT_EQ(plan.holes[3].along_mm, 1150);
  EXPECT_EQ(plan.holes[4].member, Member::top);
  EXPECT_EQ(plan.holes[4].along_mm, 50);
  EXPECT_EQ(plan.holes[7].member, Member::right);
  EXPECT_EQ(plan.holes[7].along_mm, 1150);
  EXPECT_EQ(plan.holes[11].member, Member::bottom);
  EXPECT_EQ(plan.holes[11].along_mm, 850);
  EXPECT_NEAR(plan.holes.front().x_mm, -6.0, 1e-9);  // clips stand outside the sheet
  EXPECT_NEAR(plan.holes[4].y_mm, 1206.0, 1e-9);
  EXPECT_EQ(plan.holes.front().diameter_mm, 0.0);
}

TEST(Holes, OneIsTightAndSlotsPointAtIt) {
  const auto plan = plan_sheet(narrow_faced_opening_of(0.8, 2.4));
  ASSERT_TRUE(plan.slots_needed);
  EXPECT_NEAR(plan.slot_length_mm, 11.0, 1e-9);
  int tight = 0;
  for (const auto& hole : plan.holes) {
    tight += hole.tight ? 1 : 0;
    if (hole.tight) {
      EXPECT_EQ(hole.slot_length_mm, 0.0);
      EXPECT_EQ(hole.along_mm, plan.fixed_mark_mm);
      continue;
    }
    EXPECT_GE(hole.slot_angle_deg, 0.0);
    EXPECT_LE(hole.slot_angle_deg, 180.0);
    const double pi = std::acos(-1.0);
    const double dx = hole.x_mm - plan.fixed_mark_mm;
    const double dy = hole.y_mm - plan.fixing_offset_mm;
    EXPECT_NEAR(
        dx * std::sin(hole.slot_angle_deg * pi / 180.0) - dy * std::cos(hole.slot_angle_deg * pi / 180.0),
        0.0, 1e-6);
  }
  EXPECT_EQ(tight, 1);
}

}  // namespace
}  // namespace dewgap
