// Networks on a lattice, their order of elimination and their two solvers.
#include "dewgap/numerics/grid_network.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "dewgap/numerics/nested_dissection.hpp"
#include "dewgap/numerics/split_mix.hpp"

namespace dewgap::numerics {
namespace {

/// Conductances over six decades, some links and nodes left out, warm on the left and cold on the right.
GridNetwork random_network(std::size_t columns, std::size_t rows, std::uint64_t seed) {
  SplitMix64 words(seed);
  GridNetwork network(columns, rows);
  const auto conductance = [&] { return std::pow(10.0, 6.0 * words.inside_unit_interval() - 3.0); };
  for (std::size_t row = 0; row < rows; ++row) {
    for (std::size_t column = 0; column < columns; ++column) {
      const std::size_t node = network.node(column, row);
      if (column + 1 < columns) network.east[node] = conductance();
      if (row + 1 < rows && words.inside_unit_interval() < 0.9) network.north[node] = conductance();
    }
    network.ground[network.node(0, row)] = 2.0;
    network.source[network.node(0, row)] = 2.0 * 20.0;
    network.ground[network.node(columns - 1, row)] = 0.5;
    network.source[network.node(columns - 1, row)] = 0.5 * -5.0;
  }
  return network;
}

TEST(GridNetwork, ResistorsInSeriesAreExact) {
  GridNetwork network(4, 1);
  network.east = {1.0, 2.0, 4.0, 0.0};
  network.ground = {5.0, 0.0, 0.0, 10.0};
  network.source = {5.0 * 20.0, 0.0, 0.0, 0.0};
  const double current = 20.0 / (0.2 + 1.0 + 0.5 + 0.25 + 0.1);
  for (const auto method : {NetworkMethod::direct, NetworkMethod::multigrid}) {
    const auto solution = solve(network, method);
    ASSERT_EQ(solution.status, SolveStatus::converged);
    EXPECT_NEAR(solution.potential[0], 20.0 - 0.2 * current, 1e-12);
    EXPECT_NEAR(solution.potential[3], 0.1 * current, 1e-12);
  }
}

TEST(GridNetwork, BothMethodsAgreeAndBalance) {
  for (const std::uint64_t seed : {1u, 2u, 3u}) {
    const auto network = random_network(70, 55, seed);
    const auto direct = solve(network, NetworkMethod::direct);
    const auto multigrid = solve(network, NetworkMethod::multigrid);
    ASSERT_EQ(direct.status, SolveStatus::converged);
    ASSERT_EQ(multigrid.status, SolveStatus::converged);
    EXPECT_LT(direct.imbalance, 1e-9);
    EXPECT_LT(multigrid.imbalance, 1e-9);
    for (std::size_t node = 0; node < network.size(); ++node) {
      EXPECT_NEAR(direct.potential[node], multigrid.potential[node], 1e-6);
      EXPECT_LE(direct.potential[node], 20.0 + 1e-9);
      EXPECT_GE(direct.potential[node], -5.0 - 1e-9);
    }
  }
}

TEST(GridNetwork, ResidualCurrentsSumToWhatTheGroundGives) {
  const auto network = random_network(20, 20, 5);
  const auto solution = solve(network, NetworkMethod::direct);
  const auto residual = residual_currents(network, solution.potential);
  for (const double current : residual) {
    EXPECT_NEAR(current, 0.0, 1e-9);
  }
}

TEST(GridNetwork, AbsentNodesKeepNoughtAndDoNotMatter) {
  GridNetwork network(3, 3);  // only the middle row is there
  for (const std::size_t column : {0u, 1u}) {
    network.east[network.node(column, 1)] = 1.0;
  }
  network.ground[network.node(0, 1)] = 1.0;
  network.source[network.node(0, 1)] = 12.0;
  network.ground[network.node(2, 1)] = 1.0;
  for (const auto method : {NetworkMethod::direct, NetworkMethod::multigrid}) {
    const auto solution = solve(network, method);
    EXPECT_NEAR(solution.potential[network.node(1, 1)], 6.0, 1e-12);
    EXPECT_EQ(solution.potential[network.node(1, 0)], 0.0);
  }
}

TEST(GridNetwork, WithoutGroundItIsSingular) {
  GridNetwork network(2, 1);
  network.east = {1.0, 0.0};
  EXPECT_NE(solve(network, NetworkMethod::direct).status, SolveStatus::converged);
}

TEST(NestedDissection, NumbersEachPresentNodeOnceAndTheMiddleLineLast) {
  std::vector<bool> present(9 * 7, true);
  present[13] = false;
  const auto order = nested_dissection_order(9, 7, present);
  ASSERT_EQ(order.size(), present.size() - 1);
  auto sorted = order;
  std::sort(sorted.begin(), sorted.end());
  EXPECT_EQ(std::adjacent_find(sorted.begin(), sorted.end()), sorted.end());
  EXPECT_EQ(std::count(order.begin(), order.end(), 13u), 0);
  // column 13 % 9 = 4 is the middle line, one of its nodes is absent
  for (std::size_t k = order.size() - 6; k < order.size(); ++k) {
    EXPECT_EQ(order[k] % 9, 4u);
  }
}

}  // namespace
}  // namespace dewgap::numerics
