// Tracing the outline: section_outline_kernel.hpp.
#include <array>
#include <cmath>

#include "dewgap/window/section_outline_kernel.hpp"

namespace dewgap::section_kernel {
namespace {

/// Directions in the order of left turns: east, north, west, south.
constexpr std::array<int, 4> step_x{1, 0, -1, 0};
constexpr std::array<int, 4> step_y{0, 1, 0, -1};
/// The block on the left of a step from crossing (0, 0), as column and row; that on the right belongs to the
/// direction before, walked the other way round the crossing.
constexpr std::array<int, 4> left_column{0, -1, -1, 0};
constexpr std::array<int, 4> left_row{0, 0, -1, -1};

class Tracer {
 public:
  explicit Tracer(const Plan& plan) : plan_(plan), walked_(4 * plan.x_m.size() * plan.y_m.size(), false) {}

  std::vector<OutlineEdge> trace() {
    for (int row = 0; row < static_cast<int>(plan_.y_m.size()); ++row) {
      for (int column = 0; column < static_cast<int>(plan_.x_m.size()); ++column) {
        for (int direction = 0; direction < 4; ++direction) {
          if (is_edge(column, row, direction) && !walked(column, row, direction)) {
            walk_loop(column, row, direction);
          }
        }
      }
    }
    return edges_;
  }

 private:
  bool solid(int column, int row) const {
    return column >= 0 && row >= 0 && column < static_cast<int>(plan_.columns()) &&
           row < static_cast<int>(plan_.rows()) &&
           plan_.solid(static_cast<std::size_t>(column), static_cast<std::size_t>(row));
  }
  bool is_edge(int column, int row, int direction) const {
    const auto left = static_cast<std::size_t>(direction);
    const auto right = static_cast<std::size_t>((direction + 3) % 4);
    return solid(column + left_column[left], row + left_row[left]) &&
           !solid(column + left_column[right], row + left_row[right]);
  }
  std::vector<bool>::reference walked(int column, int row, int direction) {
    const auto crossing = static_cast<std::size_t>(row) * plan_.x_m.size() + static_cast<std::size_t>(column);
    return walked_[4 * crossing + static_cast<std::size_t>(direction)];
  }
  SectionPoint point(int column, int row) const {
    return {plan_.x_m[static_cast<std::size_t>(column)], plan_.y_m[static_cast<std::size_t>(row)]};
  }

  /// Walks until the start comes again; notes the corners, and joins them to edges.
  void walk_loop(int column, int row, int direction) {
    std::vector<SectionPoint> corners;
    while (!walked(column, row, direction)) {
      walked(column, row, direction) = true;
      column += step_x[static_cast<std::size_t>(direction)];
      row += step_y[static_cast<std::size_t>(direction)];
      for (const int turn : {1, 0, 3}) {  // left first: round the same block where two touch at a point
        const int next = (direction + turn) % 4;
        if (is_edge(column, row, next)) {
          if (turn != 0) {
            corners.push_back(point(column, row));
          }
          direction = next;
          break;
        }
      }
    }
    const std::size_t first = edges_.size();
    const std::size_t count = corners.size();
    for (std::size_t i = 0; i < count; ++i) {
      edges_.push_back(
          {corners[i], corners[(i + 1) % count], first + (i + count - 1) % count, first + (i + 1) % count});
    }
  }

  const Plan& plan_;
  std::vector<bool> walked_;
  std::vector<OutlineEdge> edges_;
};

}  // namespace

double OutlineEdge::length_m() const {
  return std::abs(to.x_m - from.x_m) + std::abs(to.y_m - from.y_m);
}

SectionPoint OutlineEdge::at(double along_m) const {
  const double share = along_m / length_m();
  return {from.x_m + share * (to.x_m - from.x_m), from.y_m + share * (to.y_m - from.y_m)};
}

std::vector<OutlineEdge> outline_of(const Plan& plan) {
  return Tracer(plan).trace();
}

}  // namespace dewgap::section_kernel
