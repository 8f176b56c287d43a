#include "dewgap/air/gas.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "dewgap/air/constants.hpp"
#include "dewgap/air/gas_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

using constants::celsius_zero_K;

void require_fractions(const GasMixture& gas) {
  require_in_range(gas.air, {0.0, 1.0}, "air fraction", "");
  require_in_range(gas.argon, {0.0, 1.0}, "argon fraction", "");
  require_in_range(gas.krypton, {0.0, 1.0}, "krypton fraction", "");
  require_in_range(gas.air + gas.argon + gas.krypton, {1.0 - 1e-9, 1.0 + 1e-9}, "sum of the gas fractions",
                   "");
}

// EN 673 Table 1, from memory: rows at -10, 0, 10 and 20 C.
constexpr double en_673_first_C = -10.0;
constexpr double en_673_step_K = 10.0;
using En673Table = std::array<GasProperties, 4>;
constexpr En673Table en_673_air{{{1.326, 1.661e-5, 0.02336, 1008.0},
                                 {1.277, 1.711e-5, 0.02416, 1008.0},
                                 {1.232, 1.761e-5, 0.02496, 1008.0},
                                 {1.189, 1.811e-5, 0.02576, 1008.0}}};
constexpr En673Table en_673_argon{{{1.829, 2.038e-5, 0.01584, 519.0},
                                   {1.762, 2.101e-5, 0.01634, 519.0},
                                   {1.699, 2.164e-5, 0.01684, 519.0},
                                   {1.640, 2.228e-5, 0.01734, 519.0}}};
constexpr En673Table en_673_krypton{{{3.832, 2.260e-5, 0.00842, 245.0},
                                     {3.690, 2.330e-5, 0.00870, 245.0},
                                     {3.560, 2.400e-5, 0.00900, 245.0},
                                     {3.430, 2.470e-5, 0.00926, 245.0}}};

GasProperties scaled(const GasProperties& gas, double factor) {
  return {factor * gas.density_kg_m3, factor * gas.viscosity_Pa_s, factor * gas.conductivity_W_mK,
          factor * gas.specific_heat_J_kgK};
}

GasProperties sum(const GasProperties& a, const GasProperties& b) {
  return {a.density_kg_m3 + b.density_kg_m3, a.viscosity_Pa_s + b.viscosity_Pa_s,
          a.conductivity_W_mK + b.conductivity_W_mK, a.specific_heat_J_kgK + b.specific_heat_J_kgK};
}

// Linear between neighbouring rows; the first and last pair are continued beyond the table.
GasProperties en_673_row(const En673Table& table, double temperature_C) {
  const double steps = (temperature_C - en_673_first_C) / en_673_step_K;
  const auto last_pair = static_cast<double>(table.size() - 2);
  const double lower = std::clamp(std::floor(steps), 0.0, last_pair);
  const auto index = static_cast<std::size_t>(lower);
  const double share = steps - lower;
  return sum(scaled(table[index], 1.0 - share), scaled(table[index + 1], share));
}

// ISO 15099 Annex B, from memory: property = constant + slope T, T in K.
struct LinearFit {
  double constant;
  double slope_per_K;

  double at(double temperature_K) const { return constant + slope_per_K * temperature_K; }
};

struct Iso15099Gas {
  LinearFit conductivity_W_mK;
  LinearFit viscosity_Pa_s;
  LinearFit specific_heat_J_kgK;
  double molar_mass_kg_mol;
};

constexpr Iso15099Gas iso_15099_air{
    {2.873e-3, 7.760e-5}, {3.723e-6, 4.940e-8}, {1002.737, 1.2324e-2}, 28.97e-3};
constexpr Iso15099Gas iso_15099_argon{{2.285e-3, 5.149e-5}, {3.379e-6, 6.451e-8}, {521.9285, 0.0}, 39.948e-3};
constexpr Iso15099Gas iso_15099_krypton{
    {9.443e-4, 2.826e-5}, {2.213e-6, 7.777e-8}, {248.0907, 0.0}, 83.80e-3};

gas_kernel::Component component(const Iso15099Gas& gas, double mole_fraction, double temperature_K) {
  return {mole_fraction, gas.molar_mass_kg_mol, gas.viscosity_Pa_s.at(temperature_K),
          gas.conductivity_W_mK.at(temperature_K), gas.specific_heat_J_kgK.at(temperature_K)};
}

}  // namespace

GasProperties gas_properties_en_673(const GasMixture& gas, double temperature_C) {
  require_fractions(gas);
  require_in_range(temperature_C, {-30.0, 50.0}, "gas temperature", "C");
  // EN 673 clause 5.3.4: each property is the fraction-weighted sum over the gases, from memory.
  const auto air = scaled(en_673_row(en_673_air, temperature_C), gas.air);
  const auto argon = scaled(en_673_row(en_673_argon, temperature_C), gas.argon);
  const auto krypton = scaled(en_673_row(en_673_krypton, temperature_C), gas.krypton);
  return sum(sum(air, argon), krypton);
}

GasProperties gas_properties_iso_15099(const GasMixture& gas, double temperature_C, double pressure_Pa) {
  require_fractions(gas);
  require_in_range(temperature_C, {173.0 - celsius_zero_K, 373.0 - celsius_zero_K}, "gas temperature", "C");
  require_in_range(pressure_Pa, {30.0e3, 120.0e3}, "gas pressure", "Pa");
  const double T = constants::kelvin(temperature_C);
  // Volume fractions of ideal gases are mole fractions.
  const std::array gases{component(iso_15099_air, gas.air, T), component(iso_15099_argon, gas.argon, T),
                         component(iso_15099_krypton, gas.krypton, T)};
  return {.density_kg_m3 =
              pressure_Pa * gas_kernel::mixture_molar_mass_kg_mol(gases) / (constants::molar_gas_J_molK * T),
          .viscosity_Pa_s = gas_kernel::mixture_viscosity_Pa_s(gases),
          .conductivity_W_mK = gas_kernel::mixture_conductivity_W_mK(gases),
          .specific_heat_J_kgK = gas_kernel::mixture_specific_heat_J_kgK(gases)};
}

}  // namespace dewgap
