// Saturation pressure of water vapour and its slope in a few nanoseconds, for loops over hours.
//
// Cubic Hermite tables of Murphy and Koop's formulas (air/saturation.hpp), spacing 0.25 K, values and slopes
// of the nodes from the formulas. Ice and water are separate pieces, so that nothing is smeared over 0 C:
// below 0 C the stable phase is ice, from 0 C up (also -0.0) water. At the nodes the pressure is the
// formula's own.
//
// Accuracy against the formulas, -70 to 90 C: pressure within 1e-8 of itself, slope within 1e-6 of itself;
// the slope is continuous inside each piece. Outside that range, and for NaN, InvalidInput is thrown.
#pragma once

#include <array>
#include <cstddef>

#include "dewgap/errors.hpp"

namespace dewgap::air_kernel {

struct SaturationPoint {
  double pressure_Pa;
  double slope_Pa_K;
};

class SaturationTable {
 public:
  static constexpr PermittedRange range_C{-70.0, 90.0};
  static constexpr double nodes_per_K = 4.0;

  SaturationTable();

  /// Over ice below 0 C, over water from 0 C up.
  SaturationPoint at(double temperature_C) const { return point_of(stable_, temperature_C); }
  /// Over water, supercooled below 0 C: what relative humidity refers to.
  SaturationPoint over_water_at(double temperature_C) const { return point_of(water_, temperature_C); }

 private:
  /// A cubic in the share of the spacing that lies behind.
  struct Cell {
    double a0;
    double a1;
    double a2;
    double a3;
  };
  static constexpr int first_node = -280;         // of -70 C
  static constexpr std::size_t cell_count = 641;  // one more than the range needs, for 90 C itself
  using Cells = std::array<Cell, cell_count>;

  static SaturationPoint point_of(const Cells& cells, double temperature_C) {
    require_in_range(temperature_C, range_C, "saturation temperature", "C");
    // Scaling by 4 is exact, so that the smallest number below zero still lies in the last cell of ice.
    const double scaled = temperature_C * nodes_per_K;
    const int towards_zero = static_cast<int>(scaled);
    const int node = towards_zero - (scaled < towards_zero ? 1 : 0);
    const double share = scaled - node;
    const Cell& cell = cells[static_cast<std::size_t>(node - first_node)];
    return {cell.a0 + share * (cell.a1 + share * (cell.a2 + share * cell.a3)),
            nodes_per_K * (cell.a1 + share * (2.0 * cell.a2 + share * 3.0 * cell.a3))};
  }
  static Cell cell_over_water(int node);
  static Cell cell_over_ice(int node);

  Cells stable_{};
  Cells water_{};
};

/// The one table, made at the first call. Fetch it once outside the loop: each call looks whether it is made.
const SaturationTable& saturation_table();

inline SaturationPoint saturation_at(double temperature_C) {
  return saturation_table().at(temperature_C);
}
inline SaturationPoint water_saturation_at(double temperature_C) {
  return saturation_table().over_water_at(temperature_C);
}

}  // namespace dewgap::air_kernel
