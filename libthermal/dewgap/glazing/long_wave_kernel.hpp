// Net long-wave radiation between the faces of a stack, its two surroundings included. Private to glazing.
#pragma once

#include <array>
#include <cstddef>

#include "dewgap/air/constants.hpp"
#include "dewgap/glazing/stack.hpp"
#include "dewgap/glazing/stack_balance_kernel.hpp"
#include "dewgap/numerics/newton.hpp"

namespace dewgap::glazing_kernel {

/// The law of black emission that a set of boundary conditions uses, and its slope.
class BlackEmission {
 public:
  /// sigma T^4.
  static BlackEmission stefan_boltzmann() { return {constants::stefan_boltzmann_W_m2K4, 0.0}; }
  /// 4 sigma Tm^3 T, as EN 673 linearises it, with its rounded sigma.
  static BlackEmission linearised(double mean_temperature_K) {
    return {0.0, 4.0 * constants::stefan_boltzmann_en_673_W_m2K4 * cube(mean_temperature_K)};
  }
  BlackEmission() = default;

  double power_W_m2(double temperature_K) const {
    return (fourth_ * cube(temperature_K) + linear_) * temperature_K;
  }
  double slope_W_m2K(double temperature_K) const { return 4.0 * fourth_ * cube(temperature_K) + linear_; }

 private:
  BlackEmission(double fourth, double linear) : fourth_(fourth), linear_(linear) {}
  static double cube(double t) { return t * t * t; }
  double fourth_ = 0.0;
  double linear_ = 0.0;
};

/// Black radiation that reaches the stack from its two sides, W/m2.
struct LongWaveSurroundings {
  double from_outdoors_W_m2 = 0.0;
  double from_room_W_m2 = 0.0;
};

/// Faces are counted as in FaceVector. How much of each face's emission reaches each other face. Irradiance
/// of face f: constant of f + sum over g of share(f, g) E_g, with E the black emission.
template <std::size_t Layers>
class LongWaveExchange {
 public:
  static constexpr std::size_t faces = 2 * Layers;

  LongWaveExchange() = default;
  LongWaveExchange(const std::array<StackLayer, max_stack_layers>& layers,
                   LongWaveSurroundings surroundings) {
    for (std::size_t i = 0; i < Layers; ++i) {
      emissivity_[2 * i] = layers[i].emissivity_outer;
      emissivity_[2 * i + 1] = layers[i].emissivity_inner;
      transmittance_[i] = layers[i].long_wave_transmittance;
      any_transmits_ = any_transmits_ || transmittance_[i] > 0.0;
    }
    from_outdoors_[0] = 1.0;
    from_room_[faces - 1] = 1.0;
    if (any_transmits_) {
      share_through_layers();
    } else {
      share_between_neighbours();
    }
    set_surroundings(surroundings);
  }

  /// Other surroundings for the same layers.
  void set_surroundings(LongWaveSurroundings surroundings) {
    for (std::size_t f = 0; f < faces; ++f) {
      constant_[f] =
          from_outdoors_[f] * surroundings.from_outdoors_W_m2 + from_room_[f] * surroundings.from_room_W_m2;
    }
  }

  /// Irradiance of every face, W/m2, from the black emission of every face.
  FaceVector<Layers> irradiance_W_m2(const FaceVector<Layers>& black) const {
    auto irradiance = constant_;
    if (any_transmits_) {
      for (std::size_t f = 0; f < faces; ++f) {
        for (std::size_t g = 0; g < faces; ++g) {
          irradiance[f] += share_(f, g) * black[g];
        }
      }
      return irradiance;
    }
    for (std::size_t f = 1; f + 1 < faces; ++f) {
      irradiance[f] += share_(f, f) * black[f] + share_(f, facing(f)) * black[facing(f)];
    }
    return irradiance;
  }

  /// Share of face g's black emission in the irradiance of face f.
  double share(std::size_t f, std::size_t g) const { return share_(f, g); }
  double emissivity(std::size_t face) const { return emissivity_[face]; }
  bool any_layer_transmits() const { return any_transmits_; }

  /// Net flux towards outdoors at the room-side face, W/m2: what the room's surfaces lose.
  double room_flux_W_m2(const FaceVector<Layers>& irradiance, const FaceVector<Layers>& black) const {
    constexpr std::size_t f = faces - 1;
    const double leaving = emissivity_[f] * black[f] + reflectance(f) * irradiance[f] +
                           transmittance_[f / 2] * irradiance[behind(f)];
    return irradiance[f] - leaving;
  }

  /// Net flux towards outdoors at the outermost face, W/m2: what the surroundings outdoors gain.
  double outdoor_flux_W_m2(const FaceVector<Layers>& irradiance, const FaceVector<Layers>& black) const {
    const double leaving =
        emissivity_[0] * black[0] + reflectance(0) * irradiance[0] + transmittance_[0] * irradiance[1];
    return leaving - irradiance[0];
  }

 private:
  // The face that looks at `face` across a gap; only for faces that have one.
  static std::size_t facing(std::size_t face) { return face % 2 == 0 ? face - 1 : face + 1; }
  // The other face of the same layer.
  static std::size_t behind(std::size_t face) { return face % 2 == 0 ? face + 1 : face - 1; }
  double reflectance(std::size_t face) const { return 1.0 - emissivity_[face] - transmittance_[face / 2]; }

  // Opaque layers, two faces a and b to a gap: each leaves e E + (1 - e) G, so that
  // G_a = (e_b E_b + (1 - e_b) e_a E_a) / (1 - (1 - e_a)(1 - e_b)) (net radiation method, ISO 15099 5.2).
  void share_between_neighbours() {
    for (std::size_t a = 1; a + 1 < faces; ++a) {
      const std::size_t b = facing(a);
      const double once_round = 1.0 - reflectance(a) * reflectance(b);
      share_(a, b) = emissivity_[b] / once_round;
      share_(a, a) = reflectance(b) * emissivity_[a] / once_round;
    }
  }

  // Layers that transmit: face f leaves e_f E_f + rho_f G_f + tau G_behind(f), and its irradiance G_f is what
  // the facing face leaves; at the two ends it is the surroundings'. Linear in G; solved once for each face's
  // emission.
  void share_through_layers() {
    numerics::SquareMatrix<faces> system;
    for (std::size_t f = 0; f < faces; ++f) {
      system(f, f) = 1.0;
      if (f == 0 || f + 1 == faces) {
        continue;
      }
      const std::size_t b = facing(f);
      system(f, b) -= reflectance(b);
      system(f, behind(b)) -= transmittance_[b / 2];
    }
    // Diagonally dominant in its rows with some to spare (emissivity >= 0.01), hence never singular.
    const numerics::LuFactors<faces> factors(system);
    from_outdoors_ = factors.solve(from_outdoors_);
    from_room_ = factors.solve(from_room_);
    for (std::size_t g = 1; g + 1 < faces; ++g) {
      FaceVector<Layers> unit{};
      unit[facing(g)] = emissivity_[g];
      const auto column = factors.solve(unit);
      for (std::size_t f = 0; f < faces; ++f) {
        share_(f, g) = column[f];
      }
    }
  }

  bool any_transmits_ = false;
  FaceVector<Layers> emissivity_{};
  std::array<double, Layers> transmittance_{};
  FaceVector<Layers>
      from_outdoors_{};  // irradiance of each face for a unit of black radiation from that side
  FaceVector<Layers> from_room_{};
  FaceVector<Layers> constant_{};
  numerics::SquareMatrix<faces> share_;
};

}  // namespace dewgap::glazing_kernel
