// The shape of a measured opening: how far it is from a rectangle, and whether its diagonals can be true.
#pragma once

#include <array>
#include <optional>

namespace dewgap {

/// The opening as measured: three widths (top, middle, bottom), three heights (left, middle, right), two
/// diagonals. For a sheet on a sash or a pane it is the visible glass: see visible_glass.
struct MeasuredOpening {
  std::array<double, 3> widths_m{};
  std::array<double, 3> heights_m{};
  std::optional<std::array<double, 2>> diagonals_m;  ///< in either order
};

/// The visible glass of one sash or pane, measured once.
MeasuredOpening visible_glass(double width_m, double height_m);

/// Shortest and longest second diagonal that the sides leave beside a first one.
struct DiagonalBounds {
  double shortest_m = 0.0;
  double longest_m = 0.0;
};

/// The second diagonal of every convex quadrilateral whose four sides are the outer widths and heights and
/// whose first diagonal is first_m, each within reading_m (0 to 0.05) of what was measured. With exact
/// readings it is one length: the first diagonal cuts the quadrilateral into two triangles whose sides are
/// known. None where no such quadrilateral closes (triangle inequality).
std::optional<DiagonalBounds> second_diagonal(const MeasuredOpening& opening, double first_m,
                                              double reading_m);

/// How far each reading of a tape measure may be wrong before it is called a mistake. Our convention.
inline constexpr double tape_reading_m = 0.005;

/// Differences from a rectangle, each at least zero but the two signed ones.
struct OpeningShape {
  double wider_at_top_m = 0.0;    ///< top less bottom width; negative: wider at the bottom
  double taller_at_left_m = 0.0;  ///< left less right height
  double width_bow_m = 0.0;       ///< of the middle width from the mean of the outer two, either way
  double height_bow_m = 0.0;
  std::optional<double> shift_m;   ///< sideways, of the head over the sill; none without diagonals
  bool diagonals_possible = true;  ///< false: no quadrilateral with these sides has them
};

/// Shape of the opening. The shift is that of the head's middle over the sill's: for diagonals d1, d2 of a
/// trapezium with widths w1, w2 it is |d1^2 - d2^2| / (2 (w1 + w2)), for a parallelogram the known
/// |d1^2 - d2^2| / (4 w). Diagonals are possible when the second lies within second_diagonal's bounds, and
/// tape_reading_m, of the first, or the other way round. Ranges are those of plan_sheet, which checks them;
/// here sides 0.01 to 5 m and diagonals 0.01 to 8 m.
OpeningShape opening_shape(const MeasuredOpening& opening);

/// Largest difference of a corner from a rectangle, m: shift, half the difference of the widths on top of
/// it, the difference of the heights. What has to be told, and lost in a reveal.
double out_of_square_m(const OpeningShape& shape);

}  // namespace dewgap
