#include "dewgap/fitting/opening_shape.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

struct Point {
  double x;
  double y;
};
double distance(Point a, Point b) {
  return std::hypot(a.x - b.x, a.y - b.y);
}

/// As a tape measure reads a quadrilateral: bottom left, bottom right, top right, top left.
MeasuredOpening measured(Point bl, Point br, Point tr, Point tl) {
  const double bottom = distance(bl, br);
  const double top = distance(tl, tr);
  const double left = distance(bl, tl);
  const double right = distance(br, tr);
  return {.widths_m = {top, 0.5 * (top + bottom), bottom},
          .heights_m = {left, 0.5 * (left + right), right},
          .diagonals_m = std::array{distance(bl, tr), distance(br, tl)}};
}

TEST(OpeningShape, EveryRealQuadrilateralHasItsDiagonals) {
  std::mt19937 draw(7);
  std::uniform_real_distribution<double> off(-0.04, 0.04);
  for (int i = 0; i < 2000; ++i) {
    const auto opening = measured({off(draw), off(draw)}, {0.9 + off(draw), off(draw)},
                                  {0.9 + off(draw), 1.3 + off(draw)}, {off(draw), 1.3 + off(draw)});
    EXPECT_TRUE(opening_shape(opening).diagonals_possible);
    const auto [first_m, second_m] = *opening.diagonals_m;
    const auto exact = second_diagonal(opening, first_m, 0.0);
    ASSERT_TRUE(exact);
    // exact readings leave one length each way round
    EXPECT_LT(std::min(std::abs(exact->shortest_m - second_m), std::abs(exact->longest_m - second_m)), 1e-9);
  }
}

TEST(OpeningShape, AMisreadDiagonalIsFound) {
  for (const double wrong_m : {-0.10, -0.04, 0.04, 0.10}) {
    auto opening = measured({0.0, 0.0}, {0.9, 0.0}, {0.91, 1.2}, {0.01, 1.2});
    (*opening.diagonals_m)[0] += wrong_m;
    EXPECT_FALSE(opening_shape(opening).diagonals_possible) << wrong_m;
    (*opening.diagonals_m)[0] -= 0.95 * wrong_m;
    EXPECT_TRUE(opening_shape(opening).diagonals_possible) << wrong_m;
  }
}

TEST(OpeningShape, NothingClosesBeyondTheTriangleInequality) {
  EXPECT_FALSE(second_diagonal(visible_glass(0.9, 1.2), 2.2, 0.0));
  EXPECT_FALSE(second_diagonal(visible_glass(0.9, 1.2), 0.2, 0.0));
  const auto square = second_diagonal(visible_glass(0.9, 1.2), 1.5, 0.0);
  ASSERT_TRUE(square);
  EXPECT_NEAR(square->shortest_m, 1.5, 1e-12);
  EXPECT_NEAR(square->longest_m, 1.5, 1e-12);
  const auto read = second_diagonal(visible_glass(0.9, 1.2), 1.5, 0.002);
  EXPECT_LT(read->shortest_m, 1.495);
  EXPECT_GT(read->longest_m, 1.505);
}

TEST(OpeningShape, FindsTheShiftOfATrapezium) {
  // head 40 mm narrower, its middle 15 mm to one side; level sill and head
  const auto shape = opening_shape(measured({0.0, 0.0}, {0.9, 0.0}, {0.895, 1.2}, {0.035, 1.2}));
  ASSERT_TRUE(shape.shift_m);
  EXPECT_NEAR(*shape.shift_m, 0.015, 1e-9);
  EXPECT_NEAR(shape.wider_at_top_m, -0.040, 1e-9);
  EXPECT_NEAR(out_of_square_m(shape), 0.035, 1e-9);
  const auto straight = opening_shape(measured({0.0, 0.0}, {0.9, 0.0}, {0.88, 1.2}, {0.02, 1.2}));
  EXPECT_NEAR(*straight.shift_m, 0.0, 1e-9);
}

TEST(OpeningShape, TellsTaperAndBowWithoutDiagonals) {
  MeasuredOpening opening = visible_glass(0.9, 1.2);
  opening.widths_m = {0.9, 0.912, 0.904};
  opening.heights_m = {1.21, 1.2, 1.2};
  const auto shape = opening_shape(opening);
  EXPECT_FALSE(shape.shift_m);
  EXPECT_TRUE(shape.diagonals_possible);
  EXPECT_NEAR(shape.wider_at_top_m, -0.004, 1e-12);
  EXPECT_NEAR(shape.taller_at_left_m, 0.010, 1e-12);
  EXPECT_NEAR(shape.width_bow_m, 0.010, 1e-12);
  EXPECT_NEAR(shape.height_bow_m, 0.005, 1e-12);
}

TEST(OpeningShape, RejectsBadInput) {
  EXPECT_THROW(opening_shape(visible_glass(0.0, 1.0)), InvalidInput);
  EXPECT_THROW(opening_shape(visible_glass(1.0, std::nan(""))), InvalidInput);
  EXPECT_THROW(second_diagonal(visible_glass(1.0, 1.0), std::nan(""), 0.0), InvalidInput);
  EXPECT_THROW(second_diagonal(visible_glass(1.0, 1.0), 1.4, 0.1), InvalidInput);
}

}  // namespace
}  // namespace dewgap
