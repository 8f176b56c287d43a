// Gathers the energy balance of a stack's faces at one state. Private to glazing.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include "dewgap/numerics/newton.hpp"

namespace dewgap::glazing_kernel {

/// One number a face, from outdoors; 2 i and 2 i + 1 are the outer and inner face of layer i.
template <std::size_t Layers>
using FaceVector = numerics::Vector<2 * Layers>;

/// Residual: heat in less heat out of every face, W/m2. Jacobian: over the unknowns of stack_kernel.hpp, (m,
/// phi) of each layer. Scale: the largest single flux. Imbalance: the largest of a face and of the whole
/// stack.
template <std::size_t Layers>
class StackBalance : public numerics::NewtonPoint<2 * Layers> {
 public:
  static constexpr std::size_t faces = 2 * Layers;

  explicit StackBalance(const std::array<double, Layers>& resistance_m2K_W)
      : resistance_m2K_W_(&resistance_m2K_W) {}

  void add_heat(std::size_t face, double flux_W_m2) {
    this->residual[face] += flux_W_m2;
    this->scale = std::max(this->scale, std::abs(flux_W_m2));
  }

  /// d(balance of `row`)/d(temperature of `face`), entered over the unknowns of the face's layer.
  void add_slope(std::size_t row, std::size_t face, double slope) {
    const std::size_t layer = face / 2;
    const double half = 0.5 * (*resistance_m2K_W_)[layer] * slope;
    this->jacobian(row, 2 * layer) += slope;
    this->jacobian(row, 2 * layer + 1) += face % 2 == 0 ? -half : half;
  }

  /// The flux phi through a layer, from its inner to its outer face.
  void add_layer_flux(std::size_t layer, double flux_W_m2) {
    add_heat(2 * layer, flux_W_m2);
    add_heat(2 * layer + 1, -flux_W_m2);
    this->jacobian(2 * layer, 2 * layer + 1) += 1.0;
    this->jacobian(2 * layer + 1, 2 * layer + 1) -= 1.0;
  }

  /// Puts another equation in the place of a face's balance; its slopes are to be added.
  void replace(std::size_t row, double left_over) {
    this->residual[row] = left_over;
    for (std::size_t column = 0; column < faces; ++column) {
      this->jacobian(row, column) = 0.0;
    }
  }

  /// To be called last.
  void close() {
    double largest = 0.0;
    double sum = 0.0;
    for (const double one : this->residual) {
      largest = std::max(largest, std::abs(one));
      sum += one;
    }
    this->imbalance = std::max(largest, std::abs(sum));
  }

 private:
  const std::array<double, Layers>* resistance_m2K_W_;
};

}  // namespace dewgap::glazing_kernel
