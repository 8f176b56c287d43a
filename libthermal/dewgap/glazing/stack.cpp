#include "dewgap/glazing/stack.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>

#include "dewgap/air/constants.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/glazing/stack_ends_kernel.hpp"

namespace dewgap {
namespace {

using glazing_kernel::FaceState;
using glazing_kernel::GapGas;
using glazing_kernel::RealEnds;
using glazing_kernel::RealEquations;
using glazing_kernel::StackParts;

double celsius(double temperature_K) {
  return temperature_K - constants::celsius_zero_K;
}

// The gas fits end at 100 C: a hotter answer would rest on nothing.
template <std::size_t Layers>
void require_gas_in_range(const RealEquations<Layers>& equations, const FaceState<Layers>& state) {
  const PermittedRange permitted{celsius(GapGas::coldest_K), celsius(GapGas::hottest_K)};
  const auto require = [&](double temperature_K, std::string_view what) {
    require_in_range(celsius(temperature_K), permitted, what, "C (range of the gas properties)");
  };
  for (std::size_t i = 0; i + 1 < Layers; ++i) {
    require(0.5 * (state.temperature_K[2 * i + 1] + state.temperature_K[2 * i + 2]),
            "mean temperature of a gap");
  }
  const double surface_K = state.temperature_K[2 * Layers - 1];
  const double air_K = equations.ends.film.air_temperature_K();
  require(air_K + 0.25 * (surface_K - air_K), "temperature of the room's film");
}

/// Reads a solved state out into a StackSolution.
template <std::size_t Layers>
class StackReport {
 public:
  StackReport(const RealEquations<Layers>& equations, const FaceState<Layers>& state)
      : parts_(equations.parts), ends_(equations.ends), state_(state) {}

  StackSolution onto(const StackSolution& unsolved) {
    solution_ = unsolved;
    for (std::size_t f = 0; f < 2 * Layers; ++f) {
      solution_.face_temperature_C[f] = celsius(state_.temperature_K[f]);
    }
    if (parts_.long_wave.any_layer_transmits()) {
      solution_.flags.raise(ValidityFlag::film_transmits_long_wave);
    }
    for (std::size_t i = 0; i + 1 < Layers; ++i) {
      add_gap(i);
    }
    add_radiation();
    add_room();
    add_outdoors();
    return solution_;
  }

 private:
  // Long-wave that a layer takes up at its two faces.
  double absorbed_W_m2(std::size_t layer) const {
    double sum = 0.0;
    for (const std::size_t face : {2 * layer, 2 * layer + 1}) {
      sum += parts_.long_wave.emissivity(face) * (state_.irradiance_W_m2[face] - state_.black_W_m2[face]);
    }
    return sum;
  }

  // Net radiation towards outdoors through each space: the room's, less what the layers on the way take up.
  void add_radiation() {
    double radiation = parts_.long_wave.room_flux_W_m2(state_.irradiance_W_m2, state_.black_W_m2);
    solution_.room_radiation_flux_W_m2 = radiation;
    for (std::size_t i = Layers - 1; i > 0; --i) {
      radiation -= absorbed_W_m2(i);
      solution_.gap_radiation_flux_W_m2[i - 1] = radiation;
    }
    solution_.outdoor_radiation_flux_W_m2 = radiation - absorbed_W_m2(0);
  }

  void add_gap(std::size_t i) {
    const auto& gap = parts_.gaps[i];
    const double outer_K = state_.temperature_K[2 * i + 1];
    const double inner_K = state_.temperature_K[2 * i + 2];
    const auto exchange = gap.exchange(outer_K, inner_K);
    solution_.gap_air_temperature_C[i] = celsius(exchange.air_temperature_K);
    solution_.gap_convection_W_m2K[i] = exchange.convection_W_m2K;
    solution_.gap_convection_flux_W_m2[i] =
        inner_K >= outer_K ? exchange.from_inner_W_m2 : -exchange.from_outer_W_m2;
    solution_.air_stream_heat_W_m2 +=
        gap.stream_W_m2K * (exchange.air_temperature_K - gap.inlet_temperature_K);
    solution_.flags.raise(exchange.flags);
    if (gap.width_m > 0.05) {
      solution_.flags.raise(ValidityFlag::gap_wide_correlations_differ);
    }
  }

  void add_room() {
    const double surface_K = state_.temperature_K[2 * Layers - 1];
    const auto film = ends_.film.at(surface_K);
    solution_.flags.raise(film.flags);
    solution_.room_convection_W_m2K = film.convection_W_m2K;
    solution_.room_convection_flux_W_m2 =
        film.convection_W_m2K * (ends_.film.air_temperature_K() - surface_K);
    solution_.room_flux_W_m2 = solution_.room_convection_flux_W_m2 + solution_.room_radiation_flux_W_m2;
    const double difference_K = ends_.film.air_temperature_K() - ends_.outdoor_air_K;
    if (std::abs(difference_K) >= 0.1) {
      solution_.u_value_W_m2K = solution_.room_flux_W_m2 / difference_K;
    }
  }

  void add_outdoors() {
    solution_.outdoor_convection_flux_W_m2 =
        ends_.outdoor_convection_W_m2K * (state_.temperature_K[0] - ends_.outdoor_air_K);
    solution_.outdoor_flux_W_m2 =
        solution_.outdoor_convection_flux_W_m2 + solution_.outdoor_radiation_flux_W_m2;
  }

  const StackParts<Layers>& parts_;
  const RealEnds& ends_;
  const FaceState<Layers>& state_;
  StackSolution solution_;
};

template <std::size_t Faces>
double largest_imbalance_W_m2(const numerics::Vector<Faces>& residual) {
  double largest = 0.0;
  for (const double imbalance : residual) {
    largest = std::max(largest, std::abs(imbalance));
  }
  return largest;
}

template <std::size_t Layers>
StackSolution solve_layers(const Stack& stack, const OutdoorClimate& outdoors, const RoomClimate& room,
                           const StackOptions& options) {
  const auto equations = glazing_kernel::real_equations<Layers>(stack, outdoors, room);
  const auto start = glazing_kernel::real_start<Layers>(equations, outdoors, room);
  const auto found = glazing_kernel::settle<Layers>(equations, start, options);
  StackSolution solution;
  solution.status = found.status;
  solution.iterations = found.iterations;
  solution.layer_count = Layers;
  solution.residual_W_m2 = largest_imbalance_W_m2(found.residual);
  if (found.status != SolveStatus::converged) {
    return solution;
  }
  const auto state = equations.parts.state(found.solution);
  require_gas_in_range(equations, state);
  return StackReport<Layers>(equations, state).onto(solution);
}

}  // namespace

StackSolution solve_stack(const Stack& stack, const OutdoorClimate& outdoors, const RoomClimate& room,
                          StackOptions options) {
  options.validate();
  glazing_kernel::require_valid(stack, outdoors, room);
  return glazing_kernel::with_layer_count(stack.layer_count, [&]<std::size_t Layers>() {
    return solve_layers<Layers>(stack, outdoors, room, options);
  });
}

}  // namespace dewgap
