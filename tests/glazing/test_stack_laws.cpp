// Laws that every stack must obey, over the random stacks of states.csv.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "dewgap/air/constants.hpp"
#include "dewgap/glazing/stack_ends_kernel.hpp"
#include "random_stacks.hpp"

namespace dewgap {
namespace {

using test::for_each_random_stack;
using test::RandomStack;

// The largest single flux of a solution, as the tolerance counts it.
double largest_flux_W_m2(const RandomStack& state, const StackSolution& solution) {
  double largest = std::max(
      {std::abs(solution.room_radiation_flux_W_m2), std::abs(solution.room_convection_flux_W_m2),
       std::abs(solution.outdoor_radiation_flux_W_m2), std::abs(solution.outdoor_convection_flux_W_m2),
       std::abs(solution.room_flux_W_m2), std::abs(solution.outdoor_flux_W_m2)});
  for (std::size_t i = 0; i < state.stack.layer_count; ++i) {
    const auto& layer = state.stack.layers[i];
    largest = std::max({largest, layer.absorbed_sun_W_m2, std::abs(layer.outer_face_heat_W_m2),
                        std::abs(layer.inner_face_heat_W_m2)});
    const double drop_K = solution.face_temperature_C[2 * i + 1] - solution.face_temperature_C[2 * i];
    largest = std::max(largest, std::abs(drop_K) * layer.conductivity_W_mK / layer.thickness_m);
  }
  for (std::size_t i = 0; i + 1 < state.stack.layer_count; ++i) {
    largest = std::max(largest, std::abs(solution.gap_radiation_flux_W_m2[i]));
    for (const std::size_t face : {2 * i + 1, 2 * i + 2}) {
      const double from_air_K = solution.face_temperature_C[face] - solution.gap_air_temperature_C[i];
      largest = std::max(largest, std::abs(2.0 * solution.gap_convection_W_m2K[i] * from_air_K));
    }
  }
  return largest;
}

TEST(StackLaws, EveryStackConvergesAndItsEnergyCloses) {
  int solved = 0;
  double worst = 0.0;
  for_each_random_stack([&](const RandomStack& state) {
    const auto solution = solve_stack(state.stack, state.outdoors, state.room);
    ASSERT_EQ(solution.status, SolveStatus::converged) << "residual " << solution.residual_W_m2 << " W/m2";
    // Heat from the room and the sources leaves outdoors or with the air streams.
    const double imbalance = solution.room_flux_W_m2 + state.sources_W_m2() - solution.outdoor_flux_W_m2 -
                             solution.air_stream_heat_W_m2;
    const double scale = std::max(largest_flux_W_m2(state, solution), 1.0);
    ASSERT_LE(std::abs(imbalance), 1e-9 * scale);
    worst = std::max(worst, std::abs(imbalance) / scale);
    ++solved;
  });
  EXPECT_GE(solved, 100000);
  RecordProperty("stacks", solved);
  RecordProperty("worst_relative_imbalance", std::to_string(worst));
}

TEST(StackLaws, WithoutSourcesTemperaturesLieBetweenTheSurroundings) {
  for_each_random_stack([](const RandomStack& state) {
    if (state.has_sources()) {
      return;
    }
    const auto& out = state.outdoors;
    double low = std::min({out.air_temperature_C, out.sky_temperature_C, out.ground_temperature_C,
                           state.room.air_temperature_C, state.room.radiant_temperature_C});
    double high = std::max({out.air_temperature_C, out.sky_temperature_C, out.ground_temperature_C,
                            state.room.air_temperature_C, state.room.radiant_temperature_C});
    for (std::size_t i = 0; i + 1 < state.stack.layer_count; ++i) {
      const auto& stream = state.stack.gaps[i].air_stream;
      if (stream.heat_capacity_flow_W_m2K > 0.0) {
        low = std::min(low, stream.inlet_temperature_C);
        high = std::max(high, stream.inlet_temperature_C);
      }
    }
    const auto solution = solve_stack(state.stack, state.outdoors, state.room);
    for (std::size_t f = 0; f < 2 * state.stack.layer_count; ++f) {
      ASSERT_GE(solution.face_temperature_C[f], low - 1e-6);
      ASSERT_LE(solution.face_temperature_C[f], high + 1e-6);
    }
    for (std::size_t i = 0; i + 1 < state.stack.layer_count; ++i) {
      ASSERT_GE(solution.gap_air_temperature_C[i], low - 1e-6);
      ASSERT_LE(solution.gap_air_temperature_C[i], high + 1e-6);
    }
  });
}

// The stack seen from the other side: layers, gaps and surroundings reversed.
RandomStack mirrored(const RandomStack& state) {
  auto other = state;
  const std::size_t n = state.stack.layer_count;
  for (std::size_t i = 0; i < n; ++i) {
    auto layer = state.stack.layers[n - 1 - i];
    std::swap(layer.emissivity_outer, layer.emissivity_inner);
    std::swap(layer.outer_face_heat_W_m2, layer.inner_face_heat_W_m2);
    other.stack.layers[i] = layer;
    if (i + 1 < n) {
      other.stack.gaps[i] = state.stack.gaps[n - 2 - i];
    }
  }
  std::swap(other.outdoors.air_temperature_C, other.room.air_temperature_C);
  std::swap(other.outdoors.ground_temperature_C, other.room.radiant_temperature_C);
  std::swap(other.outdoors.convection_W_m2K, other.room.film_convection_W_m2K);
  return other;
}

TEST(StackLaws, AMirroredStackGivesTheMirroredAnswer) {
  int compared = 0;
  for_each_random_stack(
      [&](const RandomStack& drawn) {
        auto state = drawn;
        // With streams more than one state may satisfy the balance (see stack.hpp), so closed gaps only.
        if (state.has_stream()) {
          return;
        }
        state.stack.tilt_deg = 90.0;
        state.outdoors.sky_view_factor = 0.0;
        state.room.film_convection_W_m2K = 3.0;
        state.outdoors.convection_W_m2K = std::min(state.outdoors.convection_W_m2K, 100.0);
        const auto there = solve_stack(state.stack, state.outdoors, state.room);
        const auto other = mirrored(state);
        const auto back = solve_stack(other.stack, other.outdoors, other.room);
        const std::size_t faces = 2 * state.stack.layer_count;
        for (std::size_t f = 0; f < faces; ++f) {
          ASSERT_NEAR(there.face_temperature_C[f], back.face_temperature_C[faces - 1 - f], 1e-6);
        }
        ASSERT_NEAR(there.room_flux_W_m2, -back.outdoor_flux_W_m2, 1e-6);
        ++compared;
      },
      10);
  EXPECT_GE(compared, 3000);
}

template <std::size_t Layers>
bool has_kink(const glazing_kernel::StackBalance<Layers>& below,
              const glazing_kernel::StackBalance<Layers>& above) {
  double largest = 0.0;
  double change = 0.0;
  for (std::size_t i = 0; i < below.jacobian.entries.size(); ++i) {
    largest = std::max(largest, std::abs(below.jacobian.entries[i]));
    change = std::max(change, std::abs(above.jacobian.entries[i] - below.jacobian.entries[i]));
  }
  return change > 1e-3 * largest;
}

// Largest difference between the analytic Jacobian and central differences, over the largest entry; negative
// where a kink of a correlation lies within the step.
template <std::size_t Layers>
double jacobian_error(const RandomStack& state, double step_K) {
  const auto equations = glazing_kernel::real_equations<Layers>(state.stack, state.outdoors, state.room);
  auto x = glazing_kernel::real_start<Layers>(equations, state.outdoors, state.room);
  for (std::size_t i = 0; i < Layers; ++i) {
    x[2 * i] += 1.7 * static_cast<double>(i % 3);  // no two faces at one temperature
  }
  const auto at = equations.evaluate(x);
  double largest = 0.0;
  double error = 0.0;
  for (std::size_t column = 0; column < 2 * Layers; ++column) {
    const double resistance = equations.parts.resistance_m2K_W[column / 2];
    const double step = column % 2 == 0 ? step_K : step_K / std::max(resistance, 1e-3);
    auto low = x;
    auto high = x;
    low[column] -= step;
    high[column] += step;
    const auto below = equations.evaluate(low);
    const auto above = equations.evaluate(high);
    if (has_kink<Layers>(below, above)) {
      return -1.0;
    }
    for (std::size_t row = 0; row < 2 * Layers; ++row) {
      const double difference = (above.residual[row] - below.residual[row]) / (high[column] - low[column]);
      error = std::max(error, std::abs(difference - at.jacobian(row, column)));
      largest = std::max(largest, std::abs(at.jacobian(row, column)));
    }
  }
  return error / largest;
}

TEST(StackLaws, TheJacobianAgreesWithDifferences) {
  int compared = 0;
  int kinks = 0;
  double worst = 0.0;
  for_each_random_stack(
      [&](const RandomStack& state) {
        const double error = glazing_kernel::with_layer_count(
            state.stack.layer_count,
            [&]<std::size_t Layers>() { return jacobian_error<Layers>(state, 5e-6); });
        if (error < 0.0) {
          ++kinks;
          return;
        }
        ASSERT_LE(error, 1e-6);
        worst = std::max(worst, error);
        ++compared;
      },
      10);
  EXPECT_GE(compared, 9000);
  EXPECT_LE(kinks, 1000);
  RecordProperty("worst_relative_error", std::to_string(worst));
}

}  // namespace
}  // namespace dewgap
