#include "dewgap/glazing/declared.hpp"

#include <array>
#include <cmath>

#include "dewgap/air/constants.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/glazing/stack_ends_kernel.hpp"

namespace dewgap {
namespace {

using glazing_kernel::BlackEmission;
using glazing_kernel::DeclaredEnds;
using glazing_kernel::FaceVector;
using glazing_kernel::GapGas;
using glazing_kernel::GapModel;
using glazing_kernel::GapNusseltLaw;
using glazing_kernel::LongWaveExchange;
using glazing_kernel::StackEquations;

constexpr double mean_K = constants::en_673_mean_temperature_K;
constexpr double shared_difference_K = 15.0;  // EN 673 5.3.1, from memory

void require_valid(const DeclaredGlazing& glazing) {
  require_in_range(static_cast<double>(glazing.panes.size()), {1.0, 5.0}, "number of panes", "");
  if (glazing.gaps.size() + 1 != glazing.panes.size()) {
    throw InvalidInput("gaps", "one gap is needed between each two panes");
  }
  for (const auto& pane : glazing.panes) {
    require_in_range(pane.thickness_m, {5e-5, 0.030}, "pane thickness", "m");
    require_in_range(pane.conductivity_W_mK, {0.01, 400.0}, "pane conductivity", "W/(m K)");
  }
  for (const auto& gap : glazing.gaps) {
    require_in_range(gap.width_m, {0.002, 0.250}, "gap width", "m");
    require_in_range(gap.emissivity_outer, {0.01, 0.99}, "emissivity towards outdoors", "");
    require_in_range(gap.emissivity_inner, {0.01, 0.99}, "emissivity towards the room", "");
  }
  require_in_range(glazing.outdoor_film_W_m2K, {1.0, 200.0}, "outdoor film", "W/(m2 K)");
  require_in_range(glazing.room_emissivity, {0.01, 0.99}, "room-side emissivity", "");
}

double tilt_deg(DeclaredPosition position) {
  switch (position) {
    case DeclaredPosition::vertical:
      return 90.0;
    case DeclaredPosition::inclined_45:
      return 45.0;
    case DeclaredPosition::horizontal:
      return 0.0;
  }
  throw InvalidInput("position", "unknown");
}

GapModel gap_model(const DeclaredGap& gap, DeclaredPosition position) {
  constexpr double any_aspect_ratio = 50.0;  // EN 673 does not use it
  GapModel model;
  model.gas = GapGas::en_673(gap.gas);
  model.law_up = GapNusseltLaw(any_aspect_ratio, tilt_deg(position), GapCorrelation::en_673);
  model.law_down = model.law_up;
  model.width_m = gap.width_m;
  return model;
}

// The gap's emissivities sit on the faces that look into it: `emissivity_outer` belongs to the face towards
// outdoors of the gap, the inner face of the pane before it.
std::array<StackLayer, max_stack_layers> radiating_faces(const DeclaredGlazing& glazing) {
  std::array<StackLayer, max_stack_layers> layers{};
  for (std::size_t i = 0; i < glazing.gaps.size(); ++i) {
    layers[i].emissivity_inner = glazing.gaps[i].emissivity_outer;
    layers[i + 1].emissivity_outer = glazing.gaps[i].emissivity_inner;
  }
  return layers;
}

template <std::size_t Panes>
StackEquations<Panes, DeclaredEnds> declared_equations(const DeclaredGlazing& glazing) {
  StackEquations<Panes, DeclaredEnds> equations;
  auto& parts = equations.parts;
  // EN 673 5.2: radiation linearised at the mean temperature.
  parts.emission = BlackEmission::linearised(mean_K);
  parts.long_wave = LongWaveExchange<Panes>(radiating_faces(glazing), {});
  for (std::size_t i = 0; i < Panes; ++i) {
    parts.resistance_m2K_W[i] = glazing.panes[i].thickness_m / glazing.panes[i].conductivity_W_mK;
  }
  for (std::size_t i = 0; i + 1 < Panes; ++i) {
    parts.gaps[i] = gap_model(glazing.gaps[i], glazing.position);
  }
  equations.ends = {mean_K, shared_difference_K};
  return equations;
}

// Equal shares of the 15 K, and a flux of usual size.
template <std::size_t Panes>
FaceVector<Panes> declared_start() {
  FaceVector<Panes> x{};
  const double share = Panes > 1 ? shared_difference_K / static_cast<double>(Panes - 1) : 0.0;
  for (std::size_t i = 0; i < Panes; ++i) {
    x[2 * i] = mean_K + share * (static_cast<double>(i) - 0.5 * static_cast<double>(Panes - 1));
    x[2 * i + 1] = 3.0 * shared_difference_K;
  }
  return x;
}

template <std::size_t Panes>
DeclaredUValue solve_declared(const DeclaredGlazing& glazing) {
  const auto equations = declared_equations<Panes>(glazing);
  const auto& parts = equations.parts;
  const auto found = numerics::solve_newton(equations, declared_start<Panes>(), {60, 1e-12, 1e-10});
  DeclaredUValue declared;
  declared.status = found.status;
  declared.iterations = found.iterations;
  const auto temperature_K = parts.face_temperatures_K(found.solution);
  declared.residual_K = std::abs(equations.ends.excess_K(temperature_K));
  if (found.status != SolveStatus::converged) {
    return declared;
  }
  const double flux = found.solution[1];
  double resistance = 0.0;
  for (std::size_t i = 0; i < Panes; ++i) {
    resistance += parts.resistance_m2K_W[i];
    if (i + 1 < Panes) {
      const double difference = temperature_K[2 * i + 2] - temperature_K[2 * i + 1];
      declared.gap_conductance_W_m2K.push_back(flux / difference);
      resistance += difference / flux;
    }
  }
  declared.resistance_without_films_m2K_W = resistance;
  // EN 673 clause 8 (from memory): hi = 3.6 + 4.1 e / 0.837; 1/U = 1/he + R + 1/hi.
  const double room_film = 3.6 + 4.1 * glazing.room_emissivity / 0.837;
  declared.u_value_W_m2K = 1.0 / (1.0 / glazing.outdoor_film_W_m2K + resistance + 1.0 / room_film);
  return declared;
}

}  // namespace

DeclaredUValue declared_u_value(const DeclaredGlazing& glazing) {
  require_valid(glazing);
  return glazing_kernel::with_layer_count(
      glazing.panes.size(), [&]<std::size_t Panes>() { return solve_declared<Panes>(glazing); });
}

double u_value_with_resistances_W_m2K(const DeclaredUValue& declared, double rsi_m2K_W, double rse_m2K_W) {
  require_in_range(rsi_m2K_W, {0.0, 10.0}, "internal surface resistance", "m2 K/W");
  require_in_range(rse_m2K_W, {0.0, 10.0}, "external surface resistance", "m2 K/W");
  if (declared.status != SolveStatus::converged) {
    throw InvalidInput("declared U-value", "did not converge");
  }
  return 1.0 / (rsi_m2K_W + declared.resistance_without_films_m2K_W + rse_m2K_W);
}

}  // namespace dewgap
