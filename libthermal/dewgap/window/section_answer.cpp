// What one solved grid says: section_answer_kernel.hpp.
#include <algorithm>
#include <cmath>
#include <limits>
#include <set>
#include <utility>

#include "dewgap/errors.hpp"
#include "dewgap/window/section_answer_kernel.hpp"
#include "dewgap/window/section_words_kernel.hpp"

namespace dewgap::section_kernel {
namespace {

const AirSide* air_side(const Section& section, std::size_t boundary) {
  return std::get_if<AirSide>(&section.boundaries[boundary].condition);
}

/// The two air temperatures that drive the heat, the higher first; nothing when there are one or more than
/// two.
std::optional<std::pair<double, double>> driving_temperatures(const Task& task) {
  std::set<double> distinct;
  for (const auto& face : task.plan.faces) {
    if (const auto* air = air_side(task.section, face.boundary)) {
      distinct.insert(air->temperature_C);
    }
  }
  if (distinct.size() != 2) {
    return std::nullopt;
  }
  return std::pair(*distinct.rbegin(), *distinct.begin());
}

double heat_from(const Section& section, const std::vector<double>& flow_W_m, double temperature_C) {
  double sum_W_m = 0.0;
  for (std::size_t k = 0; k < flow_W_m.size(); ++k) {
    const auto* air = air_side(section, k);
    sum_W_m += air != nullptr && air->temperature_C == temperature_C ? flow_W_m[k] : 0.0;
  }
  return sum_W_m;
}

double imbalance_of(const std::vector<SectionHeat>& heat) {
  double in_W_m = 0.0;
  double out_W_m = 0.0;
  for (const auto& through : heat) {
    (through.flow_W_m > 0.0 ? in_W_m : out_W_m) += through.flow_W_m;
  }
  const double larger_W_m = std::max(in_W_m, -out_W_m);
  return larger_W_m > 0.0 ? std::abs(in_W_m + out_W_m) / larger_W_m : 0.0;
}

/// Intervals whose ends include the place: one, or two when it is on a line.
std::vector<std::size_t> intervals_about(const std::vector<double>& lines_m, double at_m) {
  std::vector<std::size_t> about;
  const std::size_t line = line_at(lines_m, at_m);
  if (line > 0 && line < lines_m.size()) {
    about.push_back(line - 1);
  }
  if (line + 1 < lines_m.size() && lines_m[line] <= at_m + same_line_m) {
    about.push_back(line);
  }
  return about;
}

/// Temperature that all air sides of a role share.
std::optional<double> shared_temperature_C(const Section& section, AirRole role) {
  std::set<double> distinct;
  for (const auto& boundary : section.boundaries) {
    const auto* air = std::get_if<AirSide>(&boundary.condition);
    if (air != nullptr && air->role == role) {
      distinct.insert(air->temperature_C);
    }
  }
  return distinct.size() == 1 ? std::optional(*distinct.begin()) : std::nullopt;
}

std::vector<SectionCavity> cavities_of(const Task& task, const SolvedGrid& grid) {
  std::vector<SectionCavity> cavities;
  for (std::size_t k = 0; k < task.cavities.size(); ++k) {
    const CavityShape& shape = task.cavities[k];
    const bool along_x = grid.states[k].flow == FlowAxis::x;
    cavities.push_back({task.section.items[shape.item].name, grid.conductivity_W_mK[shape.item],
                        grid.states[k].flow, along_x ? shape.x_m : shape.y_m, along_x ? shape.y_m : shape.x_m,
                        grid.solved[k].difference_K, grid.solved[k].mean_temperature_C});
  }
  return cavities;
}

double schemes_apart_K(const SolvedGrid& grid, std::size_t crossing) {
  return std::abs(grid.by_vertices.temperature_C[crossing] - grid.by_cells_C[crossing]);
}

/// The largest difference of the schemes at the five by five crossings about a point: at one alone the two
/// may happen to agree.
double apart_about_K(const SolvedGrid& grid, const SectionPoint& point) {
  constexpr std::size_t reach = 2;
  const auto& x_m = grid.mesh.x.at_m;
  const auto& y_m = grid.mesh.y.at_m;
  const std::size_t column = line_at(x_m, point.x_m);
  const std::size_t row = line_at(y_m, point.y_m);
  double largest_K = 0.0;
  for (std::size_t j = row - std::min(row, reach); j <= std::min(row + reach, y_m.size() - 1); ++j) {
    for (std::size_t i = column - std::min(column, reach); i <= std::min(column + reach, x_m.size() - 1);
         ++i) {
      largest_K = std::max(largest_K, schemes_apart_K(grid, grid.mesh.crossing(i, j)));
    }
  }
  return largest_K;
}

}  // namespace

std::optional<SectionCoupling> coupling_of(const Task& task, const SolvedGrid& grid) {
  const auto driving = driving_temperatures(task);
  if (!driving) {
    return std::nullopt;
  }
  const double difference_K = driving->first - driving->second;
  const double upper = heat_from(task.section, grid.by_vertices.flow_W_m, driving->first) / difference_K;
  const double lower = heat_from(task.section, grid.by_cells.flow_W_m, driving->first) / difference_K;
  const double value = 0.5 * (upper + lower);
  // the same two fields integrated exactly: section.hpp
  const double square_K2 = difference_K * difference_K;
  const double above = upper - grid.terms.vertex_excess_W_K_m / square_K2 - value;
  const double below = value - lower - grid.terms.cell_shortfall_W_K_m / square_K2;
  return SectionCoupling{value, std::max(std::abs(above), std::abs(below))};
}

std::vector<SectionHeat> heat_of(const Task& task, const SolvedGrid& grid) {
  std::vector<SectionHeat> heat;
  for (std::size_t k = 0; k < task.section.boundaries.size(); ++k) {
    const double one_W_m = grid.by_vertices.flow_W_m[k];
    const double other_W_m = grid.by_cells.flow_W_m[k];
    heat.push_back(
        {task.section.boundaries[k].name, 0.5 * (one_W_m + other_W_m), 0.5 * std::abs(one_W_m - other_W_m)});
  }
  return heat;
}

std::optional<double> bilinear_at(const std::vector<double>& x_m, const std::vector<double>& y_m,
                                  const std::vector<ItemPlace>& item, const std::vector<double>& crossing_C,
                                  SectionPoint point) {
  for (const std::size_t row : intervals_about(y_m, point.y_m)) {
    for (const std::size_t column : intervals_about(x_m, point.x_m)) {
      if (!item[row * (x_m.size() - 1) + column]) {
        continue;
      }
      const double right = std::clamp((point.x_m - x_m[column]) / (x_m[column + 1] - x_m[column]), 0.0, 1.0);
      const double up = std::clamp((point.y_m - y_m[row]) / (y_m[row + 1] - y_m[row]), 0.0, 1.0);
      const std::size_t south_west = row * x_m.size() + column;
      const std::size_t north_west = south_west + x_m.size();
      return (1.0 - up) * ((1.0 - right) * crossing_C[south_west] + right * crossing_C[south_west + 1]) +
             up * ((1.0 - right) * crossing_C[north_west] + right * crossing_C[north_west + 1]);
    }
  }
  return std::nullopt;
}

std::vector<SectionPoint> coldest_room_places(const Task& task, const SolvedGrid& grid) {
  constexpr double as_cold_K = 1e-9;
  std::set<std::size_t> crossings;
  double lowest_C = std::numeric_limits<double>::infinity();
  for (const auto& part : grid.mesh.faces) {
    const auto* air = air_side(task.section, task.plan.faces[part.face].boundary);
    if (air != nullptr && air->role == AirRole::room) {
      crossings.insert({part.end_1, part.end_2});
      lowest_C = std::min({lowest_C, grid.crossing_C[part.end_1], grid.crossing_C[part.end_2]});
    }
  }
  std::vector<SectionPoint> places;
  const std::size_t lines = grid.mesh.x.at_m.size();
  for (const std::size_t crossing : crossings) {
    if (grid.crossing_C[crossing] <= lowest_C + as_cold_K) {
      places.push_back({grid.mesh.x.at_m[crossing % lines], grid.mesh.y.at_m[crossing / lines]});
    }
  }
  return places;
}

std::optional<SettledTemperature> coldest_room_face(const Task& task, const SolvedGrid& grid) {
  const auto places = coldest_room_places(task, grid);
  if (places.empty()) {
    return std::nullopt;
  }
  return watched_temperatures(task, grid, {places.front()}).front();
}

std::vector<SettledTemperature> watched_temperatures(const Task& task, const SolvedGrid& grid,
                                                     const std::vector<SectionPoint>& watched) {
  std::vector<SettledTemperature> temperatures;
  const Mesh& mesh = grid.mesh;
  for (const auto& point : watched) {
    const auto mean_C = bilinear_at(mesh.x.at_m, mesh.y.at_m, mesh.item, grid.crossing_C, point);
    if (!mean_C) {
      throw InvalidInput("watched", "has the point " + place(point) + ", where nothing of the section of " +
                                        std::to_string(task.section.items.size()) + " items is solved");
    }
    temperatures.push_back({point, *mean_C, apart_about_K(grid, point)});
  }
  return temperatures;
}

SectionResult result_of(const Task& task, SolvedGrid grid, SectionAim aim) {
  SectionResult result;
  if (aim == SectionAim::heat_flow_and_temperatures) {
    result.coupling = coupling_of(task, grid);
    result.heat = heat_of(task, grid);
    result.heat_imbalance = imbalance_of(result.heat);
  }
  result.cavities = cavities_of(task, grid);
  result.cells = grid.mesh.cells;
  result.faces = task.plan.faces;
  for (const auto& item : task.section.items) {
    result.items.push_back(item.name);
  }
  for (const auto& boundary : task.section.boundaries) {
    result.boundaries.push_back(boundary.name);
  }
  result.room_temperature_C = shared_temperature_C(task.section, AirRole::room);
  result.outdoor_temperature_C = shared_temperature_C(task.section, AirRole::outdoors);
  result.field = {std::move(grid.mesh.x.at_m), std::move(grid.mesh.y.at_m), std::move(grid.crossing_C),
                  std::move(grid.mesh.item)};
  return result;
}

}  // namespace dewgap::section_kernel
