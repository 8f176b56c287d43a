#include "dewgap/numerics/grid_network.hpp"

#include <Eigen/SparseCholesky>
#include <algorithm>
#include <cmath>
#include <functional>

#include "dewgap/numerics/aggregation_multigrid.hpp"
#include "dewgap/numerics/nested_dissection.hpp"

namespace dewgap::numerics {
namespace {

constexpr double aimed_imbalance = 1e-11;
constexpr double permitted_imbalance = 1e-9;
constexpr int most_refinements = 4;
constexpr double first_tolerance = 1e-9;  // of the residual, conjugate gradients from nought
constexpr double next_tolerance = 1e-3;   // of what a run has left
constexpr int most_iterations = 400;

using LowerColumns = Eigen::SparseMatrix<double>;
using Factors = Eigen::SimplicialLDLT<LowerColumns, Eigen::Lower, Eigen::NaturalOrdering<int>>;

enum class Order { by_rows, dissected };
enum class Triangles { lower, both };

/// The present nodes, numbered.
struct Numbering {
  std::vector<std::size_t> node_of;
  std::vector<Eigen::Index> unknown_of;  // of each node; of absent ones never asked
};

std::vector<double> diagonal_of(const GridNetwork& network) {
  std::vector<double> diagonal = network.ground;
  for (std::size_t node = 0; node < network.size(); ++node) {
    if (network.east[node] > 0.0) {
      diagonal[node] += network.east[node];
      diagonal[node + 1] += network.east[node];
    }
    if (network.north[node] > 0.0) {
      diagonal[node] += network.north[node];
      diagonal[node + network.columns] += network.north[node];
    }
  }
  return diagonal;
}

Numbering numbered(const GridNetwork& network, const std::vector<double>& diagonal, Order order) {
  std::vector<bool> present(network.size());
  for (std::size_t node = 0; node < network.size(); ++node) {
    present[node] = diagonal[node] > 0.0;
  }
  Numbering numbering;
  if (order == Order::dissected) {
    numbering.node_of = nested_dissection_order(network.columns, network.rows, present);
  } else {
    for (std::size_t node = 0; node < network.size(); ++node) {
      if (present[node]) {
        numbering.node_of.push_back(node);
      }
    }
  }
  numbering.unknown_of.resize(network.size());
  for (std::size_t k = 0; k < numbering.node_of.size(); ++k) {
    numbering.unknown_of[numbering.node_of[k]] = static_cast<Eigen::Index>(k);
  }
  return numbering;
}

/// The matrix column by column: its lower triangle for the factors, both triangles for the multigrid.
template <class Matrix>
Matrix assembled(const GridNetwork& network, const std::vector<double>& diagonal, const Numbering& numbering,
                 Triangles triangles) {
  const auto count = static_cast<Eigen::Index>(numbering.node_of.size());
  Matrix matrix(count, count);
  matrix.reserve(5 * count);
  std::vector<std::pair<Eigen::Index, double>> entries;
  for (Eigen::Index k = 0; k < count; ++k) {
    const std::size_t node = numbering.node_of[static_cast<std::size_t>(k)];
    entries.assign(1, {k, diagonal[node]});
    const auto add = [&](std::size_t neighbour, double conductance) {
      const Eigen::Index other = numbering.unknown_of[neighbour];
      if (triangles == Triangles::both || other > k) {
        entries.emplace_back(other, -conductance);
      }
    };
    if (network.east[node] > 0.0) {
      add(node + 1, network.east[node]);
    }
    if (network.north[node] > 0.0) {
      add(node + network.columns, network.north[node]);
    }
    if (node % network.columns > 0 && network.east[node - 1] > 0.0) {
      add(node - 1, network.east[node - 1]);
    }
    if (node >= network.columns && network.north[node - network.columns] > 0.0) {
      add(node - network.columns, network.north[node - network.columns]);
    }
    std::sort(entries.begin(), entries.end());
    matrix.startVec(k);
    for (const auto& [inner, value] : entries) {
      matrix.insertBackByOuterInner(k, inner) = value;
    }
  }
  matrix.finalize();
  return matrix;
}

double imbalance_of(const GridNetwork& network, const std::vector<double>& potential) {
  double in = 0.0;
  double out = 0.0;
  for (std::size_t node = 0; node < network.size(); ++node) {
    const double current = network.source[node] - network.ground[node] * potential[node];
    (current > 0.0 ? in : out) += current;
  }
  const double larger = std::max(in, -out);
  return larger > 0.0 ? std::abs(in + out) / larger : 0.0;
}

/// x = x + A^-1 (b - A x), until heat in and out agree.
void refine(const GridNetwork& network, const Numbering& numbering, NetworkSolution& solution,
            const std::function<Eigen::VectorXd(const Eigen::VectorXd&)>& inverse) {
  for (int step = 0; step <= most_refinements; ++step) {
    const std::vector<double> residual = residual_currents(network, solution.potential);
    Eigen::VectorXd right_side(static_cast<Eigen::Index>(numbering.node_of.size()));
    for (std::size_t k = 0; k < numbering.node_of.size(); ++k) {
      right_side[static_cast<Eigen::Index>(k)] = residual[numbering.node_of[k]];
    }
    const Eigen::VectorXd correction = inverse(right_side);
    std::vector<double> next = solution.potential;
    for (std::size_t k = 0; k < numbering.node_of.size(); ++k) {
      next[numbering.node_of[k]] += correction[static_cast<Eigen::Index>(k)];
    }
    const double imbalance = imbalance_of(network, next);
    if (step > 0 && !(imbalance < solution.imbalance)) {
      break;
    }
    solution.potential = std::move(next);
    solution.imbalance = imbalance;
    if (step > 0 && imbalance <= aimed_imbalance) {
      break;
    }
  }
  solution.status =
      solution.imbalance <= permitted_imbalance ? SolveStatus::converged : SolveStatus::iteration_limit;
}

NetworkSolution solve_direct(const GridNetwork& network, const std::vector<double>& diagonal) {
  NetworkSolution solution{SolveStatus::singular, std::vector<double>(network.size(), 0.0), 0.0, 0};
  const Numbering numbering = numbered(network, diagonal, Order::dissected);
  Factors factors;
  factors.compute(assembled<LowerColumns>(network, diagonal, numbering, Triangles::lower));
  if (factors.info() != Eigen::Success || !(factors.vectorD().array() > 0.0).all()) {
    return solution;
  }
  refine(network, numbering, solution, [&](const Eigen::VectorXd& right_side) {
    ++solution.iterations;
    return Eigen::VectorXd(factors.solve(right_side));
  });
  return solution;
}

NetworkSolution solve_multigrid(const GridNetwork& network, const std::vector<double>& diagonal) {
  NetworkSolution solution{SolveStatus::singular, std::vector<double>(network.size(), 0.0), 0.0, 0};
  const Numbering numbering = numbered(network, diagonal, Order::by_rows);
  const AggregationMultigrid multigrid(
      assembled<SymmetricRows>(network, diagonal, numbering, Triangles::both));
  if (!multigrid.usable()) {
    return solution;
  }
  refine(network, numbering, solution, [&](const Eigen::VectorXd& right_side) {
    const AggregationMultigrid::Answer answer = multigrid.solve(
        right_side, solution.iterations == 0 ? first_tolerance : next_tolerance, most_iterations);
    solution.iterations += answer.iterations;
    return answer.x;
  });
  return solution;
}

}  // namespace

GridNetwork::GridNetwork(std::size_t columns_of_it, std::size_t rows_of_it)
    : columns(columns_of_it),
      rows(rows_of_it),
      east(columns * rows, 0.0),
      north(columns * rows, 0.0),
      ground(columns * rows, 0.0),
      source(columns * rows, 0.0) {}

std::vector<double> residual_currents(const GridNetwork& network, const std::vector<double>& potential) {
  std::vector<double> residual(network.size());
  for (std::size_t node = 0; node < network.size(); ++node) {
    residual[node] = network.source[node] - network.ground[node] * potential[node];
  }
  for (std::size_t node = 0; node < network.size(); ++node) {
    if (network.east[node] > 0.0) {
      const double current = network.east[node] * (potential[node] - potential[node + 1]);
      residual[node] -= current;
      residual[node + 1] += current;
    }
    if (network.north[node] > 0.0) {
      const std::size_t above = node + network.columns;
      const double current = network.north[node] * (potential[node] - potential[above]);
      residual[node] -= current;
      residual[above] += current;
    }
  }
  return residual;
}

NetworkSolution solve(const GridNetwork& network, NetworkMethod method) {
  const bool direct = method == NetworkMethod::direct ||
                      (method == NetworkMethod::automatic && network.size() <= largest_direct_nodes);
  const std::vector<double> diagonal = diagonal_of(network);
  return direct ? solve_direct(network, diagonal) : solve_multigrid(network, diagonal);
}

}  // namespace dewgap::numerics
