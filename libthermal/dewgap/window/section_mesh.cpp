// Grids of a section: section_mesh_kernel.hpp.
#include <algorithm>
#include <cmath>
#include <utility>

#include "dewgap/window/section_mesh_kernel.hpp"

namespace dewgap::section_kernel {
namespace {

constexpr double widest_over_neighbour = 4.0;
constexpr double first_share = 0.05;  // of the section's extent
constexpr std::size_t least_intervals = 2;

void halve_once(GridLines& lines, const std::vector<bool>& marked) {
  GridLines finer;
  for (std::size_t i = 0; i < lines.intervals(); ++i) {
    finer.at_m.push_back(lines.at_m[i]);
    finer.part.push_back(lines.part[i]);
    if (marked[i]) {
      finer.at_m.push_back(0.5 * (lines.at_m[i] + lines.at_m[i + 1]));
      finer.part.push_back(lines.part[i]);
    }
  }
  finer.at_m.push_back(lines.at_m.back());
  lines = std::move(finer);
}

/// Halves intervals until none is more than four times as wide as its neighbour.
void grade(GridLines& lines) {
  for (bool changed = true; changed;) {
    std::vector<bool> too_wide(lines.intervals(), false);
    changed = false;
    for (std::size_t i = 0; i < lines.intervals(); ++i) {
      double neighbour_m = lines.width_m(i);
      if (i > 0) neighbour_m = std::min(neighbour_m, lines.width_m(i - 1));
      if (i + 1 < lines.intervals()) neighbour_m = std::min(neighbour_m, lines.width_m(i + 1));
      too_wide[i] = lines.width_m(i) > widest_over_neighbour * neighbour_m * (1.0 + 1e-9);
      changed = changed || too_wide[i];
    }
    halve_once(lines, too_wide);
  }
}

ItemPlace solved_item(const Plan& plan, std::size_t column, std::size_t row) {
  return plan.solid(column, row) ? plan.item_of(column, row) : std::nullopt;
}

/// Sides of cells along one face of the section.
void append_faces(const Plan& plan, std::size_t f, Mesh& mesh) {
  const SectionFace& face = plan.faces[f];
  const bool along_x = face.from.y_m == face.to.y_m;
  const GridLines& lines = along_x ? mesh.x : mesh.y;
  const std::size_t one = line_at(lines.at_m, along_x ? face.from.x_m : face.from.y_m);
  const std::size_t other = line_at(lines.at_m, along_x ? face.to.x_m : face.to.y_m);
  const std::size_t line =
      line_at(along_x ? mesh.y.at_m : mesh.x.at_m, along_x ? face.from.y_m : face.from.x_m);
  // the section lies on the left: above a walk to the east, left of a walk to the north
  const bool beyond = along_x == (one < other);
  const std::size_t across = beyond ? line : line - 1;
  for (std::size_t i = std::min(one, other); i < std::max(one, other); ++i) {
    MeshFace part{0, CellSide::west, f, lines.width_m(i), 0, 0};
    if (along_x) {
      part.cell = mesh.cell(i, across);
      part.side = beyond ? CellSide::south : CellSide::north;
      part.end_1 = mesh.crossing(i, line);
      part.end_2 = mesh.crossing(i + 1, line);
    } else {
      part.cell = mesh.cell(across, i);
      part.side = beyond ? CellSide::west : CellSide::east;
      part.end_1 = mesh.crossing(line, i);
      part.end_2 = mesh.crossing(line, i + 1);
    }
    mesh.faces.push_back(part);
  }
}

}  // namespace

GridLines first_lines(const std::vector<double>& drawing_m) {
  const double widest_m = first_share * (drawing_m.back() - drawing_m.front());
  GridLines lines;
  for (std::size_t part = 0; part + 1 < drawing_m.size(); ++part) {
    const double width_m = drawing_m[part + 1] - drawing_m[part];
    const auto count =
        std::max(least_intervals, static_cast<std::size_t>(std::ceil(width_m / widest_m - 1e-9)));
    for (std::size_t k = 0; k < count; ++k) {
      lines.at_m.push_back(drawing_m[part] + width_m * static_cast<double>(k) / static_cast<double>(count));
      lines.part.push_back(static_cast<std::uint32_t>(part));
    }
  }
  lines.at_m.push_back(drawing_m.back());
  grade(lines);
  return lines;
}

GridLines halved(const GridLines& lines, const std::vector<bool>& marked) {
  GridLines finer = lines;
  halve_once(finer, marked);
  grade(finer);
  return finer;
}

Mesh mesh_of(const Plan& plan, GridLines x, GridLines y) {
  Mesh mesh{std::move(x), std::move(y), {}, {}, 0};
  mesh.item.reserve(mesh.columns() * mesh.rows());
  for (std::size_t row = 0; row < mesh.rows(); ++row) {
    for (std::size_t column = 0; column < mesh.columns(); ++column) {
      mesh.item.push_back(solved_item(plan, mesh.x.part[column], mesh.y.part[row]));
      mesh.cells += mesh.item.back() ? 1u : 0u;
    }
  }
  for (std::size_t f = 0; f < plan.faces.size(); ++f) {
    append_faces(plan, f, mesh);
  }
  return mesh;
}

}  // namespace dewgap::section_kernel
