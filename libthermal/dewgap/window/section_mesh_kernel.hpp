// The grid of a section: the drawing's lines and further ones between them.
#pragma once

#include <cstdint>
#include <vector>

#include "dewgap/window/section_plan_kernel.hpp"

namespace dewgap::section_kernel {

/// Grid lines of one direction; `part` is the interval of the drawing that each grid interval lies in.
struct GridLines {
  std::vector<double> at_m;
  std::vector<std::uint32_t> part;

  std::size_t intervals() const { return part.size(); }
  double width_m(std::size_t interval) const { return at_m[interval + 1] - at_m[interval]; }
};

/// Side of a cell, seen from its middle.
enum class CellSide { west, east, south, north };

/// The side of a cell that lies on a face of the section. Ends are crossings of the grid.
struct MeshFace {
  std::size_t cell = 0;
  CellSide side = CellSide::west;
  std::size_t face = 0;  ///< in Plan::faces
  double length_m = 0.0;
  std::size_t end_1 = 0;
  std::size_t end_2 = 0;
};

struct Mesh {
  GridLines x;
  GridLines y;
  std::vector<ItemPlace> item;  ///< of each cell, row after row; nothing where not solved
  std::vector<MeshFace> faces;
  std::size_t cells = 0;  ///< that are solved

  std::size_t columns() const { return x.intervals(); }
  std::size_t rows() const { return y.intervals(); }
  std::size_t cell(std::size_t column, std::size_t row) const { return row * columns() + column; }
  std::size_t crossing(std::size_t column, std::size_t row) const { return row * (columns() + 1) + column; }
};

/// Each interval of the drawing in two at least; none longer than a twentieth of the section, nor than four
/// times its neighbour.
GridLines first_lines(const std::vector<double>& drawing_m);
/// Marked intervals are halved, and then any that is more than four times as wide as its neighbour.
GridLines halved(const GridLines& lines, const std::vector<bool>& marked);

Mesh mesh_of(const Plan& plan, GridLines x, GridLines y);

}  // namespace dewgap::section_kernel
