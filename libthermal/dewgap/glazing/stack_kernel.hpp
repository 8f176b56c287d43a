// The energy balance of a stack's faces as equations for Newton's method, under either set of boundary
// conditions. Private to glazing. The number of layers is known when compiled, so that everything small stays
// in registers.
//
// Unknowns, two a layer: its mean temperature m (K) and the flux phi through it (W/m2, positive from the room
// to outdoors). Its faces lie at m -+ phi R / 2. That is the same as two face temperatures, but keeps full
// precision for thin or well conducting layers, down to no resistance at all.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include "dewgap/glazing/gap_exchange_kernel.hpp"
#include "dewgap/glazing/long_wave_kernel.hpp"
#include "dewgap/glazing/stack_balance_kernel.hpp"
#include "dewgap/numerics/newton.hpp"

namespace dewgap::glazing_kernel {

/// Temperatures, black emission and irradiance of the faces at one state.
template <std::size_t Layers>
struct FaceState {
  FaceVector<Layers> temperature_K{};
  FaceVector<Layers> black_W_m2{};
  FaceVector<Layers> irradiance_W_m2{};
};

/// A stack without its two sides.
template <std::size_t Layers>
struct StackParts {
  static constexpr std::size_t faces = 2 * Layers;

  std::array<double, Layers> resistance_m2K_W{};
  FaceVector<Layers> heat_W_m2{};  ///< set free at each face
  std::array<GapModel, Layers - 1> gaps{};
  LongWaveExchange<Layers> long_wave;
  BlackEmission emission;

  FaceVector<Layers> face_temperatures_K(const FaceVector<Layers>& x) const {
    FaceVector<Layers> temperature{};
    for (std::size_t i = 0; i < Layers; ++i) {
      const double half_drop = 0.5 * x[2 * i + 1] * resistance_m2K_W[i];
      temperature[2 * i] = x[2 * i] - half_drop;
      temperature[2 * i + 1] = x[2 * i] + half_drop;
    }
    return temperature;
  }

  FaceState<Layers> state(const FaceVector<Layers>& x) const {
    FaceState<Layers> state;
    state.temperature_K = face_temperatures_K(x);
    for (std::size_t f = 0; f < faces; ++f) {
      state.black_W_m2[f] = emission.power_W_m2(state.temperature_K[f]);
    }
    state.irradiance_W_m2 = long_wave.irradiance_W_m2(state.black_W_m2);
    return state;
  }

  /// Radiation, convection in the gaps, heat set free at the faces and the flux through the layers; the two
  /// sides come later.
  StackBalance<Layers> balance(const FaceVector<Layers>& x, const FaceState<Layers>& at) const {
    StackBalance<Layers> balance(resistance_m2K_W);
    FaceVector<Layers> slope{};
    for (std::size_t f = 0; f < faces; ++f) {
      slope[f] = emission.slope_W_m2K(at.temperature_K[f]);
      balance.add_heat(f, heat_W_m2[f]);
      // Net long-wave absorbed: e (G - E)
      balance.add_heat(f, long_wave.emissivity(f) * (at.irradiance_W_m2[f] - at.black_W_m2[f]));
    }
    if (long_wave.any_layer_transmits()) {
      add_slopes_of_all_faces(slope, balance);
    } else {
      add_slopes_of_facing_faces(slope, balance);
    }
    add_convection(at, balance);
    for (std::size_t i = 0; i < Layers; ++i) {
      balance.add_layer_flux(i, x[2 * i + 1]);
    }
    return balance;
  }

 private:
  double radiation_slope(std::size_t f, std::size_t g, const FaceVector<Layers>& slope) const {
    return long_wave.emissivity(f) * (long_wave.share(f, g) - (f == g ? 1.0 : 0.0)) * slope[g];
  }

  void add_slopes_of_all_faces(const FaceVector<Layers>& slope, StackBalance<Layers>& balance) const {
    for (std::size_t f = 0; f < faces; ++f) {
      for (std::size_t g = 0; g < faces; ++g) {
        balance.add_slope(f, g, radiation_slope(f, g, slope));
      }
    }
  }

  void add_slopes_of_facing_faces(const FaceVector<Layers>& slope, StackBalance<Layers>& balance) const {
    for (std::size_t f = 0; f < faces; ++f) {
      balance.add_slope(f, f, radiation_slope(f, f, slope));
    }
    for (std::size_t a = 1; a + 1 < faces; a += 2) {
      balance.add_slope(a, a + 1, radiation_slope(a, a + 1, slope));
      balance.add_slope(a + 1, a, radiation_slope(a + 1, a, slope));
    }
  }

  void add_convection(const FaceState<Layers>& at, StackBalance<Layers>& balance) const {
    for (std::size_t i = 0; i + 1 < Layers; ++i) {
      const std::size_t a = 2 * i + 1;
      const std::size_t b = a + 1;
      const auto gap = gaps[i].exchange(at.temperature_K[a], at.temperature_K[b]);
      balance.add_heat(a, -gap.from_outer_W_m2);
      balance.add_heat(b, -gap.from_inner_W_m2);
      for (std::size_t side = 0; side < 2; ++side) {
        balance.add_slope(a, a + side, -gap.from_outer_slope[side]);
        balance.add_slope(b, a + side, -gap.from_inner_slope[side]);
      }
    }
  }
};

/// Parts and ends together: the system that numerics::solve_newton takes. The ends are in
/// stack_ends_kernel.hpp.
template <std::size_t Layers, class Ends>
struct StackEquations {
  StackParts<Layers> parts;
  Ends ends;

  StackBalance<Layers> evaluate(const FaceVector<Layers>& x) const {
    const auto state = parts.state(x);
    auto balance = parts.balance(x, state);
    ends.apply(state.temperature_K, balance);
    balance.close();
    return balance;
  }

  /// No face moves more than 60 K in a step.
  double step_limit(const FaceVector<Layers>& step) const {
    double largest = 0.0;
    for (std::size_t i = 0; i < Layers; ++i) {
      const double half_drop = 0.5 * std::abs(step[2 * i + 1]) * parts.resistance_m2K_W[i];
      largest = std::max(largest, std::abs(step[2 * i]) + half_drop);
    }
    return largest > 60.0 ? 60.0 / largest : 1.0;
  }
};

}  // namespace dewgap::glazing_kernel
