// The drawing of a section as rectangles of one item each, and its outline as faces of one boundary each.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "dewgap/window/section.hpp"

namespace dewgap::section_kernel {

/// Coordinates nearer than this are one line.
inline constexpr double same_line_m = 1e-8;

using ItemPlace = std::optional<std::uint32_t>;  ///< in Section::items; nothing: outside

/// A lattice whose lines carry all edges, and the item of each of its blocks, row after row.
struct Plan {
  std::vector<double> x_m;
  std::vector<double> y_m;
  std::vector<ItemPlace> item;
  std::vector<bool> open;  ///< of each item: an OpenFill
  std::vector<SectionFace> faces;

  std::size_t columns() const { return x_m.size() - 1; }
  std::size_t rows() const { return y_m.size() - 1; }
  ItemPlace item_of(std::size_t column, std::size_t row) const { return item[row * columns() + column]; }
  bool solid(std::size_t column, std::size_t row) const {
    const ItemPlace place = item_of(column, row);
    return place.has_value() && !open[*place];
  }
};

/// Checks the section, draws it and names its faces. Throws InvalidInput as solve_section says.
Plan plan_of(const Section& section);

/// Place of the line at a coordinate; the lines hold one within same_line_m of it.
std::size_t line_at(const std::vector<double>& lines_m, double at_m);

/// The lattice of the polygons alone, with no faces; checks overlaps and holes.
Plan draw_items(const Section& section);

/// The same lattice with further lines; those within same_line_m of an old one are left out.
Plan with_lines(const Plan& plan, const std::vector<double>& x_m, const std::vector<double>& y_m);

}  // namespace dewgap::section_kernel
