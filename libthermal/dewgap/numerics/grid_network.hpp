// Conductances on a rectangular lattice: the linear systems of steady conduction in a plane. Private to the
// library.
#pragma once

#include <cstddef>
#include <vector>

#include "dewgap/validity.hpp"

namespace dewgap::numerics {

/// Nodes of a lattice, row after row, each joined to its east and north neighbour and to fixed potentials.
/// All conductances are 0 or positive. A node without any conductance is absent and keeps potential 0.
struct GridNetwork {
  GridNetwork(std::size_t columns_of_it, std::size_t rows_of_it);

  std::size_t columns;
  std::size_t rows;
  std::vector<double> east;    ///< to the next node of the row; 0 in the last column
  std::vector<double> north;   ///< to the next node of the column; 0 in the last row
  std::vector<double> ground;  ///< sum of the conductances to fixed potentials
  std::vector<double> source;  ///< sum of those conductances times their potentials

  std::size_t size() const { return columns * rows; }
  std::size_t node(std::size_t column, std::size_t row) const { return row * columns + column; }
};

/// direct: LDLT factors in nested dissection order (nested_dissection.hpp): about n log n entries and n^1.5
/// operations. multigrid: conjugate gradients with an aggregation multigrid (aggregation_multigrid.hpp):
/// about n^1.15 of time and n of memory, measured from 1e4 to 1.3e6 nodes (tests/benchmarks/bench_section):
/// 3 to 7 microseconds and 0.3 kB a node. automatic: direct up to `largest_direct_nodes`.
enum class NetworkMethod { automatic, direct, multigrid };
inline constexpr std::size_t largest_direct_nodes = 60'000;

struct NetworkSolution {
  SolveStatus status = SolveStatus::iteration_limit;
  std::vector<double> potential;
  /// What flows in from fixed potentials less what flows out, over the larger of the two.
  double imbalance = 0.0;
  int iterations = 0;  ///< of conjugate gradients; with direct factors, steps of iterative refinement
};

/// Potentials at which the current into every node is nought. Iterative refinement goes on until the
/// imbalance is below 1e-11 or no longer falls; `converged` means that it is below 1e-9. `singular`: a part
/// of the lattice is joined to no fixed potential.
NetworkSolution solve(const GridNetwork& network, NetworkMethod method = NetworkMethod::automatic);

/// Current into each node at the given potentials, summed link by link, so that what one node gains its
/// neighbour loses to the last bit.
std::vector<double> residual_currents(const GridNetwork& network, const std::vector<double>& potential);

}  // namespace dewgap::numerics
