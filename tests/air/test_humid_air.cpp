#include "dewgap/air/humid_air.hpp"

#include <gtest/gtest.h>

#include <stdexcept>
#include <string>

#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

double textbook_value(const test::ReferenceRow& row) {
  const double t = row.number("temperature_C");
  const double vapour =
      vapour_pressure_Pa(t, row.number("relative_humidity"), SaturationFormula::murphy_koop, Phase::stable);
  const std::string& quantity = row.text("quantity");
  if (quantity == "vapour_density_kg_m3") {
    return vapour_density_kg_m3(t, vapour);
  }
  if (quantity == "humid_air_density_kg_m3") {
    return humid_air_density_kg_m3(t, vapour);
  }
  if (quantity == "humidity_ratio") {
    return humidity_ratio(vapour);
  }
  if (quantity == "humid_air_enthalpy_J_kg") {
    return humid_air_enthalpy_J_kg(t, vapour);
  }
  if (quantity == "latent_heat_J_kg") {
    return latent_heat_J_kg(t);
  }
  if (quantity == "volumetric_heat_capacity_J_m3K") {
    return volumetric_heat_capacity_J_m3K(t, vapour);
  }
  throw std::runtime_error("no such quantity: " + quantity);
}

TEST(HumidAir, TextbookValues) {
  test::check_reference("humid_air/textbook.csv", textbook_value);
}

TEST(HumidAir, DewPointTable) {
  for (const auto formula :
       {SaturationFormula::iso_13788, SaturationFormula::sonntag, SaturationFormula::murphy_koop}) {
    test::check_reference("humid_air/dew_point.csv", [&](const auto& row) {
      return dew_point_C(
          vapour_pressure_Pa(row.number("temperature_C"), row.number("relative_humidity"), formula), formula,
          Phase::stable);
    });
  }
}

TEST(HumidAir, RoundTrips) {
  for (double t = -40.0; t <= 60.0; t += 2.5) {
    for (const double humidity : {0.0, 0.05, 0.5, 0.8, 1.0}) {
      const double vapour = vapour_pressure_Pa(t, humidity);
      EXPECT_NEAR(relative_humidity(t, vapour), humidity, 1e-14);
      const double density = vapour_density_kg_m3(t, vapour);
      EXPECT_NEAR(vapour_pressure_from_density_Pa(t, density), vapour, 1e-12 * vapour);
    }
    // Of saturated air the dew point is the temperature.
    EXPECT_NEAR(dew_point_C(vapour_pressure_Pa(t, 1.0), SaturationFormula::murphy_koop, Phase::water), t,
                1e-9);
  }
}

TEST(HumidAir, HumidityOverIceExceedsHumidityOverWaterBelowZero) {
  const double vapour = vapour_pressure_Pa(-10.0, 0.95);
  const double over_ice = relative_humidity(-10.0, vapour, SaturationFormula::murphy_koop, Phase::ice);
  EXPECT_GT(over_ice, 1.0);
  EXPECT_EQ(relative_humidity(-10.0, vapour, SaturationFormula::murphy_koop, Phase::stable), over_ice);
}

TEST(HumidAir, IdealGasLaws) {
  for (double t = -40.0; t <= 60.0; t += 10.0) {
    const double T = constants::kelvin(t);
    for (const double vapour : {0.0, 500.0, 2000.0}) {
      for (const double pressure : {70e3, 101325.0, 105e3}) {
        // Density, humidity ratio and vapour density tell the same story: rho_v = w rho_dry, rho = rho_dry +
        // rho_v.
        const double density = humid_air_density_kg_m3(t, vapour, pressure);
        const double ratio = humidity_ratio(vapour, pressure);
        EXPECT_NEAR(vapour_density_kg_m3(t, vapour), ratio / (1.0 + ratio) * density, 1e-14);
        // As one gas of mean molar mass: p = rho R T / M.
        const double share = vapour / pressure;
        const double molar_mass =
            share * constants::molar_mass_water_kg_mol + (1.0 - share) * constants::molar_mass_dry_air_kg_mol;
        EXPECT_NEAR(density * constants::molar_gas_J_molK * T / molar_mass, pressure, 1e-9 * pressure);
      }
    }
  }
}

TEST(HumidAir, LighterWhenDamperAndWhenWarmer) {
  for (double t = 0.0; t <= 40.0; t += 5.0) {
    double lighter = humid_air_density_kg_m3(t, 0.0);
    for (double humidity = 0.1; humidity <= 1.0; humidity += 0.1) {
      const double density = humid_air_density_kg_m3(t, vapour_pressure_Pa(t, humidity));
      EXPECT_LT(density, lighter);
      EXPECT_LT(humid_air_density_kg_m3(t + 0.1, vapour_pressure_Pa(t, humidity)), density);
      lighter = density;
    }
  }
}

TEST(HumidAir, EnthalpyIsZeroForDryAirAtZeroAndRisesWithHeatCapacity) {
  EXPECT_EQ(humid_air_enthalpy_J_kg(0.0, 0.0), 0.0);
  // Per m3 at constant moisture, dh rho_dry / dT is the volumetric heat capacity.
  const double vapour = 1200.0;
  const double rise = humid_air_enthalpy_J_kg(21.0, vapour) - humid_air_enthalpy_J_kg(20.0, vapour);
  const double dry_density = humid_air_density_kg_m3(20.0, vapour) - vapour_density_kg_m3(20.0, vapour);
  EXPECT_NEAR(rise * dry_density, volumetric_heat_capacity_J_m3K(20.0, vapour), 1e-6);
}

TEST(LatentHeat, PhasesChooseTheirOwn) {
  EXPECT_EQ(latent_heat_J_kg(-5.0), latent_heat_J_kg(-5.0, Phase::ice));
  EXPECT_EQ(latent_heat_J_kg(5.0), latent_heat_J_kg(5.0, Phase::water));
  EXPECT_LT(latent_heat_J_kg(-5.0, Phase::water), latent_heat_J_kg(-5.0, Phase::ice));
  // Heat of fusion at 0 C, 333.5 kJ/kg.
  EXPECT_NEAR(latent_heat_J_kg(0.0, Phase::ice) - latent_heat_J_kg(0.0, Phase::water), 333.5e3, 0.6e3);
}

TEST(HumidAir, BadTemperature) {
  for (const double t : {-80.1, 100.1, test::not_a_number}) {
    EXPECT_THROW(vapour_pressure_Pa(t, 0.5), InvalidInput);
    EXPECT_THROW(relative_humidity(t, 500.0), InvalidInput);
    EXPECT_THROW(vapour_density_kg_m3(t, 500.0), InvalidInput);
    EXPECT_THROW(vapour_pressure_from_density_Pa(t, 0.01), InvalidInput);
    EXPECT_THROW(humid_air_density_kg_m3(t, 500.0), InvalidInput);
    EXPECT_THROW(humid_air_enthalpy_J_kg(t, 500.0), InvalidInput);
    EXPECT_THROW(volumetric_heat_capacity_J_m3K(t, 500.0), InvalidInput);
    EXPECT_THROW(latent_heat_J_kg(t), InvalidInput);
  }
  EXPECT_THROW(latent_heat_J_kg(0.1, Phase::ice), InvalidInput);
  EXPECT_THROW(vapour_pressure_Pa(-1.0, 0.5, SaturationFormula::iso_13788), InvalidInput);
}

TEST(HumidAir, BadHumidityAndVapour) {
  for (const double humidity : {-0.01, 1.01, 50.0, test::not_a_number}) {
    EXPECT_THROW(vapour_pressure_Pa(20.0, humidity), InvalidInput) << humidity;
  }
  for (const double vapour : {-1.0, 1e6, test::not_a_number}) {
    EXPECT_THROW(relative_humidity(20.0, vapour), InvalidInput);
    EXPECT_THROW(vapour_density_kg_m3(20.0, vapour), InvalidInput);
    EXPECT_THROW(vapour_pressure_from_density_Pa(20.0, vapour), InvalidInput);
    EXPECT_THROW(humid_air_density_kg_m3(20.0, vapour), InvalidInput);
    EXPECT_THROW(humidity_ratio(vapour), InvalidInput);
    EXPECT_THROW(humid_air_enthalpy_J_kg(20.0, vapour), InvalidInput);
    EXPECT_THROW(volumetric_heat_capacity_J_m3K(20.0, vapour), InvalidInput);
  }
}

TEST(HumidAir, BadPressure) {
  for (const double pressure : {0.0, 29e3, 121e3, test::not_a_number}) {
    EXPECT_THROW(humid_air_density_kg_m3(20.0, 500.0, pressure), InvalidInput);
    EXPECT_THROW(humidity_ratio(500.0, pressure), InvalidInput);
    EXPECT_THROW(humid_air_enthalpy_J_kg(20.0, 500.0, pressure), InvalidInput);
    EXPECT_THROW(volumetric_heat_capacity_J_m3K(20.0, 500.0, pressure), InvalidInput);
  }
}

}  // namespace
}  // namespace dewgap
