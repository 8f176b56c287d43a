// One grid of a section solved by both schemes, cavities settled.
#pragma once

#include <vector>

#include "dewgap/window/section_cavity_kernel.hpp"
#include "dewgap/window/section_estimate_kernel.hpp"

namespace dewgap::section_kernel {

/// What stays the same from grid to grid.
struct Task {
  const Section& section;
  Plan plan;
  std::vector<std::optional<FaceAir>> air;
  std::vector<CavityShape> cavities;
  CavityRule rule = CavityRule::standard_difference;
};
Task task_of(const Section& section, CavityRule rule);

/// Start of the iteration: heat along the shorter side, 10 K at 10 C.
std::vector<CavityState> first_states(const Task& task);

struct SolvedGrid {
  Mesh mesh;
  std::vector<CavityState> states;  ///< of the cavities, as used
  std::vector<CavityState> solved;  ///< as they come out
  Conductivities conductivity_W_mK;
  SchemeSolution by_vertices;
  SchemeSolution by_cells;
  std::vector<double> by_cells_C;  ///< the cell scheme's temperatures at crossings, given ones kept
  std::vector<double> crossing_C;  ///< the mean of both schemes
  CellFlux flux;
  DifferenceTerms terms;
  bool cavities_settled = true;
  bool balanced = true;
};

/// Solves both schemes on the grid; the cavities' states start from the given ones and are repeated with the
/// vertex scheme until no conductivity changes by more than 1e-6 (1e-4 counts as settled after 30 rounds).
SolvedGrid solve_on(const Task& task, GridLines x, GridLines y, std::vector<CavityState> states);

}  // namespace dewgap::section_kernel
