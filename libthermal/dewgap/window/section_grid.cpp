// One grid of a section: section_grid_kernel.hpp.
#include <algorithm>
#include <cmath>
#include <utility>

#include "dewgap/window/section_grid_kernel.hpp"

namespace dewgap::section_kernel {
namespace {

constexpr int most_rounds = 30;
constexpr double aimed_change = 1e-6;
constexpr double permitted_change = 1e-4;
/// Heat has to lean so much further to the other axis before a cavity's flow is turned: no swinging near 45
/// degrees (our convention).
constexpr double turning_margin = 1.02;

CavityState solved_state(const CavityWalls& walls, FlowAxis before) {
  const double along_x = std::abs(walls.heat_along_x) * (before == FlowAxis::x ? turning_margin : 1.0);
  const double along_y = std::abs(walls.heat_along_y) * (before == FlowAxis::y ? turning_margin : 1.0);
  if (along_x >= along_y) {
    return {FlowAxis::x, std::abs(walls.high_x_C - walls.low_x_C), 0.5 * (walls.high_x_C + walls.low_x_C)};
  }
  return {FlowAxis::y, std::abs(walls.high_y_C - walls.low_y_C), 0.5 * (walls.high_y_C + walls.low_y_C)};
}

double largest_change(const Conductivities& before, const Conductivities& after) {
  double largest = 0.0;
  for (std::size_t item = 0; item < before.size(); ++item) {
    if (before[item] > 0.0) {
      largest = std::max(largest, std::abs(after[item] / before[item] - 1.0));
    }
  }
  return largest;
}

/// Repeats the vertex scheme until the cavities' conductivities stay.
void settle_cavities(const Task& task, SolvedGrid& grid) {
  const std::size_t boundaries = task.section.boundaries.size();
  for (int round = 0; round < most_rounds; ++round) {
    grid.conductivity_W_mK = conductivities_of(task.section, task.cavities, grid.states, task.rule);
    grid.by_vertices =
        solve_scheme(vertex_network(grid.mesh, task.air, task.plan, grid.conductivity_W_mK), boundaries);
    grid.solved.clear();
    for (std::size_t k = 0; k < task.cavities.size(); ++k) {
      grid.solved.push_back(solved_state(
          walls_of(grid.mesh, task.cavities[k].item, grid.by_vertices.temperature_C), grid.states[k].flow));
    }
    const Conductivities next = conductivities_of(task.section, task.cavities, grid.solved, task.rule);
    const double change = largest_change(grid.conductivity_W_mK, next);
    grid.cavities_settled = change <= permitted_change;
    if (change <= aimed_change) {
      return;
    }
    grid.states = grid.solved;
  }
}

/// The mean of the schemes at crossings. On faces of no resistance both have the given temperature.
void join_schemes(const Task& task, SolvedGrid& grid) {
  const auto& by_vertices_C = grid.by_vertices.temperature_C;
  for (const auto& part : grid.mesh.faces) {
    const auto& beside = task.air[part.face];
    if (beside && beside->resistance_m2K_W == 0.0) {
      grid.by_cells_C[part.end_1] = by_vertices_C[part.end_1];
      grid.by_cells_C[part.end_2] = by_vertices_C[part.end_2];
    }
  }
  for (std::size_t crossing = 0; crossing < by_vertices_C.size(); ++crossing) {
    grid.crossing_C.push_back(0.5 * (by_vertices_C[crossing] + grid.by_cells_C[crossing]));
  }
}

}  // namespace

Task task_of(const Section& section, CavityRule rule) {
  Plan plan = plan_of(section);
  auto air = air_of_faces(section, plan);
  auto cavities = cavity_shapes(section, plan);
  return {section, std::move(plan), std::move(air), std::move(cavities), rule};
}

std::vector<CavityState> first_states(const Task& task) {
  std::vector<CavityState> states;
  for (const auto& shape : task.cavities) {
    states.push_back({shape.x_m <= shape.y_m ? FlowAxis::x : FlowAxis::y, 10.0, 10.0});
  }
  return states;
}

SolvedGrid solve_on(const Task& task, GridLines x, GridLines y, std::vector<CavityState> states) {
  SolvedGrid grid;
  grid.mesh = mesh_of(task.plan, std::move(x), std::move(y));
  grid.states = std::move(states);
  settle_cavities(task, grid);
  const SchemeNetwork cells = cell_network(grid.mesh, task.air, task.plan, grid.conductivity_W_mK);
  grid.by_cells = solve_scheme(cells, task.section.boundaries.size());
  grid.flux = flux_of(grid.mesh, cells, grid.by_cells);
  grid.by_cells_C = at_crossings(grid.mesh, grid.flux, grid.by_cells, grid.conductivity_W_mK);
  join_schemes(task, grid);
  grid.terms = difference_terms(grid.mesh, task.air, grid.conductivity_W_mK, grid.by_vertices.temperature_C,
                                grid.flux);
  grid.balanced =
      grid.by_vertices.status == SolveStatus::converged && grid.by_cells.status == SolveStatus::converged;
  return grid;
}

}  // namespace dewgap::section_kernel
