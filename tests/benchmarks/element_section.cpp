// Sections and meshes for section_elements.edp: element_section.hpp.
#include "element_section.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fstream>
#include <stdexcept>

#include "dewgap/window/section_grid_kernel.hpp"
#include "window/ready_samples.hpp"
#include "window/section_tables.hpp"

namespace dewgap::bench {
namespace {

namespace kernel = section_kernel;

/// Grid lines at given places, which include the drawing's.
kernel::GridLines lines_at(const std::vector<double>& drawing_m, const std::vector<double>& at_m) {
  kernel::GridLines lines{at_m, {}};
  std::uint32_t part = 0;
  for (std::size_t i = 0; i + 1 < at_m.size(); ++i) {
    while (at_m[i] >= drawing_m[part + 1] - kernel::same_line_m) {
      ++part;
    }
    lines.part.push_back(part);
  }
  return lines;
}

kernel::GridLines even_lines(const std::vector<double>& drawing_m, double apart_m) {
  std::vector<double> at_m;
  for (std::size_t i = 0; i + 1 < drawing_m.size(); ++i) {
    const double width_m = drawing_m[i + 1] - drawing_m[i];
    const auto parts = static_cast<int>(std::ceil(width_m / apart_m - 1e-9));
    for (int k = 0; k < parts; ++k) {
      at_m.push_back(drawing_m[i] + width_m * k / parts);
    }
  }
  at_m.push_back(drawing_m.back());
  return lines_at(drawing_m, at_m);
}

kernel::GridLines all_halved(const kernel::GridLines& lines) {
  return kernel::halved(lines, std::vector<bool>(lines.intervals(), true));
}

double shorter_side_m(const kernel::Plan& plan) {
  return std::min(plan.x_m.back() - plan.x_m.front(), plan.y_m.back() - plan.y_m.front());
}

/// Every so-manieth line of each part of the drawing, from its first.
kernel::GridLines thinned(const kernel::GridLines& lines, const std::vector<double>& drawing_m, int every) {
  std::vector<double> at_m;
  int since = 0;
  for (std::size_t i = 0; i < lines.intervals(); ++i) {
    const bool first_of_part = i == 0 || lines.part[i] != lines.part[i - 1];
    since = first_of_part ? 0 : since + 1;
    if (since % every == 0) {
      at_m.push_back(lines.at_m[i]);
    }
  }
  at_m.push_back(drawing_m.back());
  return lines_at(drawing_m, at_m);
}

struct Airs {
  double lowest_C;
  double highest_C;
};
Airs airs_of(const std::vector<std::optional<kernel::FaceAir>>& air) {
  Airs airs{1e9, -1e9};
  for (const auto& beside : air) {
    if (beside) {
      airs.lowest_C = std::min(airs.lowest_C, beside->temperature_C);
      airs.highest_C = std::max(airs.highest_C, beside->temperature_C);
    }
  }
  return airs;
}

/// The file format of the elements' `readmesh`: vertices, triangles with region, outer edges with label.
void write_mesh(const kernel::Mesh& mesh, const std::string& path) {
  std::vector<std::size_t> vertex((mesh.columns() + 1) * (mesh.rows() + 1), 0);
  std::vector<std::array<std::size_t, 4>> triangles;  // three crossings and the item
  for (std::size_t row = 0; row < mesh.rows(); ++row) {
    for (std::size_t column = 0; column < mesh.columns(); ++column) {
      const auto& item = mesh.item[mesh.cell(column, row)];
      if (!item) {
        continue;
      }
      const std::size_t a = mesh.crossing(column, row);
      const std::size_t b = mesh.crossing(column + 1, row);
      const std::size_t c = mesh.crossing(column + 1, row + 1);
      const std::size_t d = mesh.crossing(column, row + 1);
      triangles.push_back({a, b, c, *item});
      triangles.push_back({a, c, d, *item});
      vertex[a] = vertex[b] = vertex[c] = vertex[d] = 1;
    }
  }
  std::size_t vertices = 0;
  for (auto& number : vertex) {
    number = number == 0 ? 0 : ++vertices;
  }
  std::ofstream out(path);
  out.precision(15);
  out << vertices << ' ' << triangles.size() << ' ' << mesh.faces.size() << '\n';
  for (std::size_t k = 0; k < vertex.size(); ++k) {
    if (vertex[k] > 0) {
      out << mesh.x.at_m[k % (mesh.columns() + 1)] << ' ' << mesh.y.at_m[k / (mesh.columns() + 1)] << " 0\n";
    }
  }
  for (const auto& [a, b, c, item] : triangles) {
    out << vertex[a] << ' ' << vertex[b] << ' ' << vertex[c] << ' ' << item << '\n';
  }
  for (const auto& face : mesh.faces) {
    out << vertex[face.end_1] << ' ' << vertex[face.end_2] << ' ' << face.face + 1 << '\n';
  }
}

}  // namespace

std::vector<ElementCase> element_cases() {
  const auto ready = test::usual_sections().front();
  return {{"ISO 10211 case 2", test::iso_10211_case_2()},
          {"ISO 10077-2 D.4", test::iso_10077_2_section_d4()},
          {ready.name, section_of(ready.ready, ReadyFilling::glass_and_sheet)}};
}

Section with_fixed_cavities(Section section) {
  const auto result = solve_section(section);
  for (auto& item : section.items) {
    for (const auto& cavity : result.cavities) {
      if (cavity.item == item.name) {
        item.fill = SolidFill{cavity.conductivity_W_mK};
      }
    }
  }
  return section;
}

std::vector<GivenMesh> given_meshes(const Section& section, double bound, const MeshCounts& counts) {
  const kernel::Plan plan = kernel::plan_of(section);
  std::vector<GivenMesh> meshes;
  double apart_m = 0.25 * shorter_side_m(plan);
  for (int k = 0; k < counts.even; ++k, apart_m *= 0.5) {
    meshes.push_back(
        {"even", kernel::mesh_of(plan, even_lines(plan.x_m, apart_m), even_lines(plan.y_m, apart_m))});
  }
  const auto result =
      solve_section(section, {.coupling_error_bound = bound, .temperature_error_bound_K = 10.0});
  auto x = lines_at(plan.x_m, result.field.x_m);
  auto y = lines_at(plan.y_m, result.field.y_m);
  for (int k = 0, every = 8; k < counts.graded; ++k, every /= 2) {
    if (every > 0) {
      meshes.push_back(
          {"graded", kernel::mesh_of(plan, thinned(x, plan.x_m, every), thinned(y, plan.y_m, every))});
    } else {
      x = all_halved(x);
      y = all_halved(y);
      meshes.push_back({"graded", kernel::mesh_of(plan, x, y)});
    }
  }
  return meshes;
}

void write_elements(const Section& section, const std::vector<GivenMesh>& meshes, int adaptations,
                    const std::string& folder) {
  const kernel::Task task = kernel::task_of(section, CavityRule::standard_difference);
  const Airs airs = airs_of(task.air);
  std::ofstream out(folder + "/section.txt");
  out.precision(15);
  out << section.items.size() << '\n';
  for (const auto& item : section.items) {
    const auto* solid = std::get_if<SolidFill>(&item.fill);
    out << (solid != nullptr ? solid->conductivity_W_mK : 0.0) << '\n';
  }
  out << task.air.size() << '\n';
  for (const auto& beside : task.air) {
    out << (beside ? 1.0 / beside->resistance_m2K_W : 0.0) << ' '
        << (beside ? (beside->temperature_C - airs.lowest_C) / (airs.highest_C - airs.lowest_C) : 0.0)
        << '\n';
  }
  constexpr double first_interpolation_error = 0.08;  // of temperatures from 0 to 1
  out << meshes.size() << ' ' << shorter_side_m(task.plan) << ' ' << first_interpolation_error << ' '
      << adaptations << '\n';
  for (std::size_t k = 0; k < meshes.size(); ++k) {
    write_mesh(meshes[k].mesh, folder + "/given_" + std::to_string(k) + ".msh");
  }
  if (!out) {
    throw std::runtime_error("cannot write to " + folder);
  }
}

}  // namespace dewgap::bench
