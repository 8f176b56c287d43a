#include "dewgap/fitting/opening_shape.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr PermittedRange side_range_m{0.01, 5.0};
constexpr PermittedRange diagonal_range_m{0.01, 8.0};

struct Sides {
  double bottom_m;
  double right_m;
  double top_m;
  double left_m;
};

/// Angle between two sides of a triangle, from the third (law of cosines); none when it does not close.
std::optional<double> angle_between(double first_m, double second_m, double opposite_m) {
  const double cosine =
      (first_m * first_m + second_m * second_m - opposite_m * opposite_m) / (2.0 * first_m * second_m);
  if (!(std::abs(cosine) <= 1.0)) {
    return std::nullopt;
  }
  return std::acos(cosine);
}

/// Second diagonal beside a first one from bottom left to top right.
std::optional<double> closing_diagonal_m(const Sides& sides, double first_m) {
  const auto below = angle_between(sides.bottom_m, first_m, sides.right_m);
  const auto above = angle_between(sides.left_m, first_m, sides.top_m);
  if (!below || !above) {
    return std::nullopt;
  }
  // law of cosines, from bottom right to top left
  const double squared = sides.bottom_m * sides.bottom_m + sides.left_m * sides.left_m -
                         2.0 * sides.bottom_m * sides.left_m * std::cos(*below + *above);
  return std::sqrt(std::max(squared, 0.0));
}

void widen(std::optional<DiagonalBounds>& bounds, std::optional<double> length_m) {
  if (!length_m) {
    return;
  }
  const DiagonalBounds so_far = bounds.value_or(DiagonalBounds{*length_m, *length_m});
  bounds = {std::min(so_far.shortest_m, *length_m), std::max(so_far.longest_m, *length_m)};
}

bool within(const std::optional<DiagonalBounds>& bounds, double length_m, double reading_m) {
  return bounds && length_m >= bounds->shortest_m - reading_m && length_m <= bounds->longest_m + reading_m;
}

double bow_m(const std::array<double, 3>& measured_m) {
  return std::abs(measured_m[1] - 0.5 * (measured_m[0] + measured_m[2]));
}

}  // namespace

MeasuredOpening visible_glass(double width_m, double height_m) {
  return {.widths_m = {width_m, width_m, width_m},
          .heights_m = {height_m, height_m, height_m},
          .diagonals_m = {}};
}

std::optional<DiagonalBounds> second_diagonal(const MeasuredOpening& opening, double first_m,
                                              double reading_m) {
  require_in_range(reading_m, {0.0, 0.05}, "reading_m", "m");
  require_in_range(first_m, diagonal_range_m, "diagonals_m", "m");
  std::optional<DiagonalBounds> bounds;
  // In a convex quadrilateral a diagonal grows with every side and shrinks as the other one grows, so the
  // ends of the readings bound it. Which of the two diagonals came first is not known: both ways round.
  constexpr int ends = 1 << 5;
  for (int end = 0; end < ends; ++end) {
    const auto read = [&](double length_m, int bit) {
      return std::max(length_m + ((end >> bit) % 2 == 0 ? -reading_m : reading_m), 1e-3);
    };
    const Sides sides{read(opening.widths_m[2], 0), read(opening.heights_m[2], 1),
                      read(opening.widths_m[0], 2), read(opening.heights_m[0], 3)};
    const double diagonal_m = read(first_m, 4);
    widen(bounds, closing_diagonal_m(sides, diagonal_m));
    widen(bounds, closing_diagonal_m({sides.bottom_m, sides.left_m, sides.top_m, sides.right_m}, diagonal_m));
  }
  return bounds;
}

OpeningShape opening_shape(const MeasuredOpening& opening) {
  for (std::size_t i = 0; i < 3; ++i) {
    require_in_range(opening.widths_m[i], side_range_m, "widths_m", "m");
    require_in_range(opening.heights_m[i], side_range_m, "heights_m", "m");
  }
  OpeningShape shape{.wider_at_top_m = opening.widths_m[0] - opening.widths_m[2],
                     .taller_at_left_m = opening.heights_m[0] - opening.heights_m[2],
                     .width_bow_m = bow_m(opening.widths_m),
                     .height_bow_m = bow_m(opening.heights_m),
                     .shift_m = {}};
  if (!opening.diagonals_m) {
    return shape;
  }
  const auto [first_m, second_m] = *opening.diagonals_m;
  require_in_range(second_m, diagonal_range_m, "diagonals_m", "m");
  shape.diagonals_possible =
      within(second_diagonal(opening, first_m, tape_reading_m), second_m, tape_reading_m) ||
      within(second_diagonal(opening, second_m, tape_reading_m), first_m, tape_reading_m);
  // trapezium: d1^2 - d2^2 = 2 s (w1 + w2)
  shape.shift_m =
      std::abs(first_m * first_m - second_m * second_m) / (2.0 * (opening.widths_m[0] + opening.widths_m[2]));
  return shape;
}

double out_of_square_m(const OpeningShape& shape) {
  const double across_m = shape.shift_m.value_or(0.0) + 0.5 * std::abs(shape.wider_at_top_m);
  return std::max(across_m, std::abs(shape.taller_at_left_m));
}

}  // namespace dewgap
