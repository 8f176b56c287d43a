#include "dewgap/air/gas.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <stdexcept>
#include <string>
#include <vector>

#include "dewgap/air/gas_kernel.hpp"
#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

constexpr GasMixture pure_air{1.0, 0.0, 0.0};
constexpr GasMixture pure_argon{0.0, 1.0, 0.0};
constexpr GasMixture pure_krypton{0.0, 0.0, 1.0};

GasMixture gas_named(const std::string& name) {
  if (name == "air") {
    return pure_air;
  }
  if (name == "argon") {
    return pure_argon;
  }
  if (name == "krypton") {
    return pure_krypton;
  }
  throw std::runtime_error("no such gas: " + name);
}

double property_named(const std::string& name, const GasProperties& gas) {
  if (name == "density_kg_m3") {
    return gas.density_kg_m3;
  }
  if (name == "viscosity_Pa_s") {
    return gas.viscosity_Pa_s;
  }
  if (name == "conductivity_W_mK") {
    return gas.conductivity_W_mK;
  }
  if (name == "specific_heat_J_kgK") {
    return gas.specific_heat_J_kgK;
  }
  throw std::runtime_error("no such property: " + name);
}

double en_673_value(const test::ReferenceRow& row) {
  const auto gas = gas_properties_en_673(gas_named(row.text("gas")), row.number("temperature_C"));
  return property_named(row.text("property"), gas);
}

double iso_15099_value(const test::ReferenceRow& row) {
  const auto gas = gas_properties_iso_15099(gas_named(row.text("gas")), row.number("temperature_C"));
  return property_named(row.text("property"), gas);
}

std::vector<double> numbers_of(const GasProperties& gas) {
  return {gas.density_kg_m3, gas.viscosity_Pa_s, gas.conductivity_W_mK, gas.specific_heat_J_kgK};
}

void expect_same(const GasProperties& a, const GasProperties& b, double relative) {
  const auto x = numbers_of(a);
  const auto y = numbers_of(b);
  for (std::size_t i = 0; i < x.size(); ++i) {
    EXPECT_NEAR(x[i] / y[i], 1.0, relative) << "property " << i;
  }
}

TEST(GasEn673, Table) {
  test::check_reference("en_673_gas/gas_properties.csv", en_673_value);
}

TEST(GasEn673, TableTemperaturesGiveTheTableExactly) {
  const auto table = test::read_reference("en_673_gas/gas_properties.csv");
  ASSERT_EQ(table.row_count(), 48u);
  for (std::size_t i = 0; i < table.row_count(); ++i) {
    const test::ReferenceRow row(table, i);
    EXPECT_EQ(en_673_value(row), row.number("expected")) << "line " << row.line();
  }
}

TEST(GasEn673, LinearBetweenAndBeyondRows) {
  // Half-way at 5 C, and the last pair continued to 50 C.
  const auto half = gas_properties_en_673(pure_argon, 5.0);
  EXPECT_NEAR(half.conductivity_W_mK, 0.01659, 1e-12);
  EXPECT_NEAR(half.density_kg_m3, 0.5 * (1.762 + 1.699), 1e-12);
  const auto warm = gas_properties_en_673(pure_air, 50.0);
  EXPECT_NEAR(warm.conductivity_W_mK, 0.02576 + 3.0 * 0.0008, 1e-12);
  EXPECT_NEAR(warm.density_kg_m3, 1.189 - 3.0 * 0.043, 1e-12);
  const auto cold = gas_properties_en_673(pure_air, -30.0);
  EXPECT_NEAR(cold.density_kg_m3, 1.326 + 2.0 * 0.049, 1e-12);
}

TEST(GasEn673, MixturesAreFractionWeighted) {
  const GasMixture mixture{.air = 0.1, .argon = 0.9, .krypton = 0.0};
  const auto mixed = gas_properties_en_673(mixture, 10.0);
  EXPECT_NEAR(mixed.conductivity_W_mK, 0.1 * 0.02496 + 0.9 * 0.01684, 1e-12);
  EXPECT_NEAR(mixed.viscosity_Pa_s, 0.1 * 1.761e-5 + 0.9 * 2.164e-5, 1e-15);
  EXPECT_NEAR(mixed.specific_heat_J_kgK, 0.1 * 1008.0 + 0.9 * 519.0, 1e-9);
}

TEST(GasIso15099, PrintedValues) {
  // Known difference: the conductivity of air at 10 C, by a unit of its last digit at most.
  test::check_reference("iso_15099_gas/gas_properties.csv", iso_15099_value, 1e-4);
}

TEST(GasIso15099, AgreesWithEn673) {
  test::check_reference("iso_15099_gas/against_en_673.csv", iso_15099_value);
}

TEST(GasIso15099, DensityIsProportionalToPressure) {
  const GasMixture mixture{.air = 0.2, .argon = 0.5, .krypton = 0.3};
  const auto low = gas_properties_iso_15099(mixture, 10.0, 50e3);
  const auto high = gas_properties_iso_15099(mixture, 10.0, 100e3);
  EXPECT_NEAR(high.density_kg_m3, 2.0 * low.density_kg_m3, 1e-12);
  EXPECT_EQ(high.conductivity_W_mK, low.conductivity_W_mK);
  EXPECT_EQ(high.viscosity_Pa_s, low.viscosity_Pa_s);
}

TEST(GasIso15099, TraceOfAnotherGasChangesLittle) {
  for (const double t : {-50.0, 10.0, 60.0}) {
    expect_same(gas_properties_iso_15099({1.0 - 1e-9, 1e-9, 0.0}, t), gas_properties_iso_15099(pure_air, t),
                1e-8);
    expect_same(gas_properties_iso_15099({1e-9, 0.0, 1.0 - 1e-9}, t),
                gas_properties_iso_15099(pure_krypton, t), 1e-7);
  }
}

TEST(GasIso15099, ConductivityOfArgonFillLiesNearTheLinearMixture) {
  for (double argon = 0.0; argon <= 1.0; argon += 0.1) {
    const GasMixture mixture{.air = 1.0 - argon, .argon = argon, .krypton = 0.0};
    const double k = gas_properties_iso_15099(mixture, 10.0).conductivity_W_mK;
    const double linear = (1.0 - argon) * gas_properties_iso_15099(pure_air, 10.0).conductivity_W_mK +
                          argon * gas_properties_iso_15099(pure_argon, 10.0).conductivity_W_mK;
    EXPECT_NEAR(k / linear, 1.0, 0.025) << argon;
  }
}

using gas_kernel::Component;

const Component air_like{0.5, 28.97e-3, 1.77e-5, 0.0249, 1006.0};
const Component argon_like{0.3, 39.948e-3, 2.16e-5, 0.0169, 521.9};
const Component krypton_like{0.2, 83.80e-3, 2.42e-5, 0.0089, 248.1};

std::vector<double> mixed(const std::vector<Component>& gases) {
  return {gas_kernel::mixture_molar_mass_kg_mol(gases), gas_kernel::mixture_specific_heat_J_kgK(gases),
          gas_kernel::mixture_viscosity_Pa_s(gases), gas_kernel::mixture_conductivity_W_mK(gases)};
}

Component with_fraction(Component gas, double mole_fraction) {
  gas.mole_fraction = mole_fraction;
  return gas;
}

TEST(GasMixing, OrderOfTheGasesDoesNotMatter) {
  std::vector<std::size_t> order{0, 1, 2};
  const std::array gases{air_like, argon_like, krypton_like};
  const auto expected = mixed({air_like, argon_like, krypton_like});
  while (std::next_permutation(order.begin(), order.end())) {
    const auto other = mixed({gases[order[0]], gases[order[1]], gases[order[2]]});
    for (std::size_t i = 0; i < expected.size(); ++i) {
      EXPECT_NEAR(other[i] / expected[i], 1.0, 1e-14);
    }
  }
}

TEST(GasMixing, AGasMixedWithItselfIsThatGas) {
  for (const auto& gas : {air_like, argon_like, krypton_like}) {
    const auto values = mixed({with_fraction(gas, 0.2), with_fraction(gas, 0.7), with_fraction(gas, 0.1)});
    const std::vector<double> expected{gas.molar_mass_kg_mol, gas.specific_heat_J_kgK, gas.viscosity_Pa_s,
                                       gas.conductivity_W_mK};
    for (std::size_t i = 0; i < expected.size(); ++i) {
      EXPECT_NEAR(values[i] / expected[i], 1.0, 1e-14);
    }
  }
}

TEST(GasMixing, SplittingOneGasInTwoChangesNothing) {
  const auto whole = mixed({air_like, argon_like, krypton_like});
  const auto split =
      mixed({with_fraction(air_like, 0.1), argon_like, krypton_like, with_fraction(air_like, 0.4)});
  for (std::size_t i = 0; i < whole.size(); ++i) {
    EXPECT_NEAR(split[i] / whole[i], 1.0, 1e-14);
  }
}

TEST(GasMixing, WilkeByHand) {
  // Equal molar masses: phi_ij = [1 + (mu_i/mu_j)^(1/2)]^2 / 4. mu 1 and 4, half each: phi_12 0.5625,
  // phi_21 2.25.
  const Component thin{0.5, 0.03, 1e-5, 0.02, 1000.0};
  const Component thick{0.5, 0.03, 4e-5, 0.02, 1000.0};
  EXPECT_NEAR(gas_kernel::mixture_viscosity_Pa_s(std::vector{thin, thick}), 1e-5 / 1.5625 + 4e-5 / 3.25,
              1e-18);
}

TEST(Gas, BadFractions) {
  for (const GasMixture& bad : std::vector<GasMixture>{{0.5, 0.4, 0.0},
                                                       {0.5, 0.6, 0.0},
                                                       {-0.1, 1.1, 0.0},
                                                       {1.0 + 1e-8, 0.0, 0.0},
                                                       {0.0, 0.0, 0.0},
                                                       {test::not_a_number, 1.0, 0.0},
                                                       {1.0, test::not_a_number, 0.0},
                                                       {1.0, 0.0, test::not_a_number}}) {
    EXPECT_THROW(gas_properties_en_673(bad, 10.0), InvalidInput);
    EXPECT_THROW(gas_properties_iso_15099(bad, 10.0), InvalidInput);
  }
}

TEST(Gas, BadTemperatureOrPressure) {
  for (const double t : {-30.1, 50.1, test::not_a_number}) {
    EXPECT_THROW(gas_properties_en_673(pure_air, t), InvalidInput);
  }
  for (const double t : {-100.2, 99.9, test::not_a_number}) {
    EXPECT_THROW(gas_properties_iso_15099(pure_air, t), InvalidInput);
  }
  for (const double pressure : {0.0, 29e3, 121e3, test::not_a_number}) {
    EXPECT_THROW(gas_properties_iso_15099(pure_air, 10.0, pressure), InvalidInput);
  }
}

}  // namespace
}  // namespace dewgap
