#include <gtest/gtest.h>

#include <cmath>

#include "dewgap/errors.hpp"
#include "sheet_plan_cases.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

using test::gives_reason;
using test::opening_of;

/// Diagonals of a parallelogram with the given sides whose head is shifted sideways over the sill.
std::array<double, 2> diagonals_of(double width_m, double height_m, double shift_m) {
  const double rise_m = std::sqrt(height_m * height_m - shift_m * shift_m);
  return {std::hypot(width_m + shift_m, rise_m), std::hypot(width_m - shift_m, rise_m)};
}

TEST(SheetSize, OverlapsTheLargestOpening) {
  auto input = opening_of(0.9, 1.2);
  input.opening.widths_m = {0.898, 0.903, 0.900};
  input.opening.heights_m = {1.198, 1.200, 1.206};
  const auto plan = plan_sheet(input);
  EXPECT_EQ(plan.width_mm, 943);
  EXPECT_EQ(plan.height_mm, 1246);
  EXPECT_TRUE(gives_reason(plan, "Width: largest of three, 903 mm, plus 20 mm a side."));
  EXPECT_TRUE(gives_reason(plan, "Height: largest of three, 1206 mm"));
}

TEST(SheetSize, InsideRevealTakesTheSmallestLessMovementRoundedDown) {
  auto input = opening_of(0.9, 1.2);
  input.seat = SheetSeat::inside_reveal;
  input.opening.widths_m = {0.898, 0.903, 0.900};
  input.opening.heights_m = {1.198, 1.200, 1.206};
  const auto plan = plan_sheet(input);
  // 898 - 7e-5 x 898 x 30 = 896.11; 1198 - 2.52 = 1195.48
  EXPECT_EQ(plan.width_mm, 896);
  EXPECT_EQ(plan.height_mm, 1195);
  EXPECT_TRUE(gives_reason(plan, "smallest of three, 898 mm, less 1.9 mm to move"));
}

TEST(SheetSize, InsideRevealAlwaysLeavesRoomToMove) {
  for (const auto sheet : {SheetKind::acrylic, SheetKind::polycarbonate, SheetKind::petg, SheetKind::glass}) {
    for (double width_m = 0.3; width_m < 2.5; width_m += 0.0937) {
      auto input = opening_of(width_m, 1.1);
      input.seat = SheetSeat::inside_reveal;
      input.sheet = sheet;
      const auto plan = plan_sheet(input);
      const double grown_mm =
          plan.width_mm * (1.0 + sheet_properties(sheet).expansion_per_K.best * input.temperature_range_K);
      EXPECT_LE(grown_mm, width_m * 1e3 + 1e-6);
      EXPECT_GT(grown_mm, width_m * 1e3 - 1.1);  // and no more than a whole millimetre is given away
    }
  }
}

TEST(SheetSize, RecessLimitsTheOverlap) {
  auto input = opening_of(1.0, 1.2);
  input.largest_width_m = 1.030;
  const auto plan = plan_sheet(input);
  // 1030 less 7e-5 x 1040 x 30 = 2.18
  EXPECT_EQ(plan.width_mm, 1027);
  EXPECT_EQ(plan.height_mm, 1240);
  EXPECT_TRUE(gives_reason(plan, "Width: recess 1030 mm less 2.2 mm to move; overlap 13.5 mm a side."));
  input.largest_width_m = 1.100;
  EXPECT_EQ(plan_sheet(input).width_mm, 1040);
}

TEST(SheetSize, FixingFaceLimitsTheOverlap) {
  auto input = opening_of(1.0, 1.2);
  input.fixing_face_m = 0.014;
  const auto plan = plan_sheet(input);
  EXPECT_EQ(plan.width_mm, 1028);
  EXPECT_TRUE(gives_reason(plan, "Overlap cut to 14 mm"));
}

TEST(SheetSize, NarrowOverlapAsksForNarrowerTape) {
  auto input = opening_of(1.0, 1.2);
  EXPECT_FALSE(gives_reason(plan_sheet(input), "narrower tape"));
  input.overlap_m = 0.010;
  EXPECT_TRUE(gives_reason(plan_sheet(input), "narrower tape"));
}

TEST(SheetSize, FindsTheShiftFromTheDiagonals) {
  for (const double shift_m : {0.0, 0.004, 0.012, 0.030}) {
    auto input = opening_of(0.9, 1.3);
    input.opening.diagonals_m = diagonals_of(0.9, 1.3, shift_m);
    EXPECT_NEAR(plan_sheet(input).out_of_square_mm, shift_m * 1e3, 1e-6);
    input.opening.diagonals_m = diagonals_of(0.9, 1.3, -shift_m);
    EXPECT_NEAR(plan_sheet(input).out_of_square_mm, shift_m * 1e3, 1e-6);
  }
}

TEST(SheetSize, ARightAngledTriangleIsSquare) {
  auto input = opening_of(0.9, 1.2);
  input.opening.diagonals_m = {1.5, 1.5};
  EXPECT_NEAR(plan_sheet(input).out_of_square_mm, 0.0, 1e-9);
  EXPECT_EQ(plan_sheet(opening_of(0.9, 1.2)).out_of_square_mm, 0.0);
}

TEST(SheetSize, SkewTakesWidthInsideARevealAndOverlapElsewhere) {
  auto input = opening_of(0.9, 1.3);
  input.opening.diagonals_m = diagonals_of(0.9, 1.3, 0.012);
  const auto over = plan_sheet(input);
  EXPECT_EQ(over.width_mm, 940);
  EXPECT_TRUE(gives_reason(over, "12.0 mm out of square: overlap 14.0 mm at two corners"));
  input.seat = SheetSeat::inside_reveal;
  // 900 - 1.89 - 12 = 886.11
  EXPECT_EQ(plan_sheet(input).width_mm, 886);
}

TEST(SheetSize, RejectsDiagonalsThatNoSuchOpeningHas) {
  auto input = opening_of(0.9, 1.2);
  for (const auto& bad : {std::array{1.5, 1.9}, std::array{1.2, 1.2}, std::array{2.1, 0.2}}) {
    input.opening.diagonals_m = bad;
    EXPECT_THROW(plan_sheet(input), InvalidInput) << bad[0] << ' ' << bad[1];
  }
  input.opening.diagonals_m = {1.52, 1.53};  // 1.7 % long: a tape read carelessly, still accepted
  EXPECT_NO_THROW(plan_sheet(input));
}

TEST(SheetSize, RejectsARecessThatLeavesNothing) {
  auto input = opening_of(1.0, 1.2);
  for (const double bad_m : {0.99, 1.001, 5.1, test::not_a_number}) {
    input.largest_width_m = bad_m;
    EXPECT_THROW(plan_sheet(input), InvalidInput) << bad_m;
  }
  input.largest_width_m.reset();
  input.largest_height_m = 1.1;
  EXPECT_THROW(plan_sheet(input), InvalidInput);
}

TEST(SheetSize, RejectsOpeningsOutsideTheirRange) {
  for (const double bad_m : {0.09, 4.01, -1.0, test::not_a_number}) {
    for (std::size_t i = 0; i < 3; ++i) {
      auto input = opening_of(1.0, 1.2);
      input.opening.widths_m[i] = bad_m;
      EXPECT_THROW(plan_sheet(input), InvalidInput) << bad_m;
      input = opening_of(1.0, 1.2);
      input.opening.heights_m[i] = bad_m;
      EXPECT_THROW(plan_sheet(input), InvalidInput) << bad_m;
    }
    auto input = opening_of(1.0, 1.2);
    input.opening.diagonals_m = {1.56, bad_m == 4.01 ? 6.1 : bad_m};
    EXPECT_THROW(plan_sheet(input), InvalidInput) << bad_m;
  }
}

TEST(SheetSize, RejectsARevealWithNoSheetLeft) {
  auto input = opening_of(0.1, 1.0);
  input.seat = SheetSeat::inside_reveal;
  input.opening.diagonals_m = diagonals_of(0.1, 1.0, 0.06);
  EXPECT_THROW(plan_sheet(input), InvalidInput);
}

}  // namespace
}  // namespace dewgap
