// A gap's gas as curves over temperature, prepared once a solve. Private to glazing.
#pragma once

#include <algorithm>

#include "dewgap/air/gas.hpp"

namespace dewgap::glazing_kernel {

/// What a gap's convection needs of its gas: Ra = rayleigh_factor |dT| L^3.
struct GasState {
  double conductivity_W_mK = 0.0;
  double conductivity_slope = 0.0;  ///< per K
  double rayleigh_factor = 0.0;     ///< g beta rho^2 cp / (mu k), 1/(K m3)
  double rayleigh_log_slope = 0.0;  ///< d ln(rayleigh_factor)/dT, 1/K
};

/// Parabola through three points; exact for the linear fits of a pure gas.
struct Parabola {
  double at_middle = 0.0;
  double slope = 0.0;
  double half_curvature = 0.0;

  double value(double x) const { return at_middle + x * (slope + x * half_curvature); }
  double derivative(double x) const { return slope + 2.0 * x * half_curvature; }
};

/// Gas at standard pressure.
class GapGas {
 public:
  GapGas() = default;
  /// ISO 15099 fits between 173.15 and 373.15 K: exact for a pure gas, mixtures within 2e-5. Outside that
  /// range, which an iterate of Newton's method may leave, the values of its ends are kept.
  static GapGas iso_15099(const GasMixture& gas);
  /// EN 673 properties at 10 C, mean temperature 283 K, whatever the temperature.
  static GapGas en_673(const GasMixture& gas);

  /// temperature_K: of the gas.
  GasState at(double temperature_K) const;

  static constexpr double coldest_K = 173.15;
  static constexpr double hottest_K = 373.0;

 private:
  bool held_ = false;  // properties do not follow the temperature
  Parabola conductivity_;
  Parabola viscosity_;
  Parabola specific_heat_;
  double density_times_temperature_ = 0.0;
  GasState held_state_;
};

/// GapGas::iso_15099 of a fill; those of air and of the usual fills are worked out once a process.
GapGas iso_15099_fill(const GasMixture& gas);

/// The state of properties at hand, without slopes.
GasState gas_state(const GasProperties& gas, double temperature_K);

}  // namespace dewgap::glazing_kernel
