#include "dewgap/air/saturation_table_kernel.hpp"

#include "dewgap/air/saturation.hpp"

namespace dewgap::air_kernel {
namespace {

SaturationPoint formula_at(double temperature_C, Phase phase) {
  return {saturation_pressure_Pa(temperature_C, SaturationFormula::murphy_koop, phase),
          saturation_slope_Pa_K(temperature_C, SaturationFormula::murphy_koop, phase)};
}

double temperature_of_node_C(int node) {
  return node / SaturationTable::nodes_per_K;
}

/// Coefficients of the cubic in [0, 1] with these values, and slopes per spacing, at its ends.
struct Cubic {
  double a0;
  double a1;
  double a2;
  double a3;
};

Cubic between(int node, Phase phase) {
  const auto from = formula_at(temperature_of_node_C(node), phase);
  const auto to = formula_at(temperature_of_node_C(node + 1), phase);
  const double from_slope = from.slope_Pa_K / SaturationTable::nodes_per_K;
  const double to_slope = to.slope_Pa_K / SaturationTable::nodes_per_K;
  const double rise = to.pressure_Pa - from.pressure_Pa;
  // Cubic Hermite interpolation.
  return {from.pressure_Pa, from_slope, 3.0 * rise - 2.0 * from_slope - to_slope,
          from_slope + to_slope - 2.0 * rise};
}

}  // namespace

SaturationTable::Cell SaturationTable::cell_over_water(int node) {
  const auto [a0, a1, a2, a3] = between(node, Phase::water);
  return {a0, a1, a2, a3};
}

SaturationTable::Cell SaturationTable::cell_over_ice(int node) {
  const auto [a0, a1, a2, a3] = between(node, Phase::ice);
  return {a0, a1, a2, a3};
}

SaturationTable::SaturationTable() {
  int node = first_node;
  for (std::size_t i = 0; i < cell_count; ++i, ++node) {
    water_[i] = cell_over_water(node);
    stable_[i] = node < 0 ? cell_over_ice(node) : water_[i];
  }
}

const SaturationTable& saturation_table() {
  static const SaturationTable table;
  return table;
}

}  // namespace dewgap::air_kernel
