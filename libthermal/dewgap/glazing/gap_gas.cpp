#include <array>

#include "dewgap/air/constants.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/glazing/gap_gas_kernel.hpp"
#include "dewgap/glazing/gap_nusselt_kernel.hpp"

namespace dewgap {
namespace glazing_kernel {
namespace {

constexpr double middle_C = 5.0;
constexpr double reach_K = 80.0;
constexpr double middle_K = constants::kelvin(middle_C);

Parabola through(double below, double middle, double above) {
  return {middle, (above - below) / (2.0 * reach_K),
          (above - 2.0 * middle + below) / (2.0 * reach_K * reach_K)};
}

}  // namespace

GasState gas_state(const GasProperties& gas, double temperature_K) {
  // Ra = g beta dT L^3 rho^2 cp / (mu k), beta = 1/T (EN 673 5.3, ISO 15099 5.3.2; from memory).
  const double factor = gravity_m_s2 / temperature_K * gas.density_kg_m3 * gas.density_kg_m3 *
                        gas.specific_heat_J_kgK / (gas.viscosity_Pa_s * gas.conductivity_W_mK);
  return {gas.conductivity_W_mK, 0.0, factor, 0.0};
}

GapGas GapGas::iso_15099(const GasMixture& gas) {
  const std::array at{gas_properties_iso_15099(gas, middle_C - reach_K),
                      gas_properties_iso_15099(gas, middle_C),
                      gas_properties_iso_15099(gas, middle_C + reach_K)};
  GapGas curves;
  curves.conductivity_ = through(at[0].conductivity_W_mK, at[1].conductivity_W_mK, at[2].conductivity_W_mK);
  curves.viscosity_ = through(at[0].viscosity_Pa_s, at[1].viscosity_Pa_s, at[2].viscosity_Pa_s);
  curves.specific_heat_ =
      through(at[0].specific_heat_J_kgK, at[1].specific_heat_J_kgK, at[2].specific_heat_J_kgK);
  curves.density_times_temperature_ = at[1].density_kg_m3 * middle_K;  // ideal gas
  return curves;
}

GapGas iso_15099_fill(const GasMixture& gas) {
  struct Fill {
    GasMixture mixture;
    GapGas curves;
  };
  const auto fill = [](const GasMixture& mixture) { return Fill{mixture, GapGas::iso_15099(mixture)}; };
  static const std::array usual{fill({1.0, 0.0, 0.0}), fill({0.1, 0.9, 0.0}), fill({0.0, 1.0, 0.0}),
                                fill({0.1, 0.0, 0.9}), fill({0.0, 0.0, 1.0})};
  for (const auto& one : usual) {
    if (one.mixture.air == gas.air && one.mixture.argon == gas.argon && one.mixture.krypton == gas.krypton) {
      return one.curves;
    }
  }
  return GapGas::iso_15099(gas);
}

GapGas GapGas::en_673(const GasMixture& gas) {
  // EN 673 5.3: properties from the table's row for 10 C, at the mean temperature of all gaps.
  constexpr double mean_K = constants::en_673_mean_temperature_K;
  constexpr double table_row_C = 10.0;
  GapGas held;
  held.held_ = true;
  held.held_state_ = gas_state(gas_properties_en_673(gas, table_row_C), mean_K);
  return held;
}

GasState GapGas::at(double temperature_K) const {
  if (held_) {
    return held_state_;
  }
  const double T = std::clamp(temperature_K, coldest_K, hottest_K);
  const double x = T - middle_K;
  const GasProperties gas{density_times_temperature_ / T, viscosity_.value(x), conductivity_.value(x),
                          specific_heat_.value(x)};
  auto state = gas_state(gas, T);
  if (T == temperature_K) {
    state.conductivity_slope = conductivity_.derivative(x);
    // d ln(beta rho^2 cp / (mu k))/dT with beta and rho as 1/T
    state.rayleigh_log_slope = -3.0 / T + specific_heat_.derivative(x) / gas.specific_heat_J_kgK -
                               viscosity_.derivative(x) / gas.viscosity_Pa_s -
                               conductivity_.derivative(x) / gas.conductivity_W_mK;
  }
  return state;
}

}  // namespace glazing_kernel

double gap_rayleigh(const GasProperties& gas, double width_m, double difference_K,
                    double mean_temperature_K) {
  require_in_range(width_m, {1e-6, 10.0}, "gap width or plate height", "m");
  require_in_range(difference_K, {-200.0, 200.0}, "temperature difference", "K");
  require_in_range(mean_temperature_K, {150.0, 450.0}, "mean temperature", "K");
  require_in_range(gas.density_kg_m3, {1e-3, 100.0}, "density", "kg/m3");
  require_in_range(gas.viscosity_Pa_s, {1e-7, 1e-2}, "viscosity", "Pa s");
  require_in_range(gas.conductivity_W_mK, {1e-4, 1.0}, "conductivity", "W/(m K)");
  require_in_range(gas.specific_heat_J_kgK, {1.0, 1e5}, "specific heat", "J/(kg K)");
  const double magnitude_K = difference_K < 0.0 ? -difference_K : difference_K;
  return glazing_kernel::gas_state(gas, mean_temperature_K).rayleigh_factor * magnitude_K * width_m *
         width_m * width_m;
}

}  // namespace dewgap
