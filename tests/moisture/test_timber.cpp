#include "dewgap/moisture/timber.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <vector>

#include "dewgap/air/saturation.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/moisture/transfer.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

constexpr DampLayer one_m2{.area_m2 = 1.0};

double water_saturation_Pa(double temperature_C) {
  return saturation_pressure_Pa(temperature_C, SaturationFormula::murphy_koop, Phase::water);
}

TEST(WoodMoisture, MeetsTheWoodHandbook) {
  test::check_reference(
      "wood_handbook/equilibrium_moisture.csv",
      [](const test::ReferenceRow& row) {
        return 100.0 * wood_moisture_kg_kg(row.number("temperature_C"), row.number("relative_humidity"));
      },
      0.06);
}

TEST(WoodMoisture, TheInverseMeetsTheCautionAgainstDecay) {
  test::check_reference("wood_handbook/caution.csv", [](const test::ReferenceRow& row) {
    EXPECT_EQ(row.number("moisture_kg_kg"), timber_caution_kg_kg);
    return wood_relative_humidity(row.number("temperature_C"), row.number("moisture_kg_kg"));
  });
}

TEST(WoodMoisture, RisesFromNothingToFibreSaturationWithTheStatedSlope) {
  int looked_at = 0;
  for (double temperature_C = -30.0; temperature_C <= 80.0; temperature_C += 5.0) {
    EXPECT_EQ(wood_moisture_kg_kg(temperature_C, 0.0), 0.0);
    EXPECT_GE(wood_moisture_kg_kg(temperature_C, 1.0), 0.235) << temperature_C;
    EXPECT_LE(wood_moisture_kg_kg(temperature_C, 1.0), 0.295) << temperature_C;
    for (double humidity = 0.0; humidity <= 1.0; humidity += 1.0 / 64.0) {
      const double slope = wood_moisture_slope_kg_kg(temperature_C, humidity);
      ASSERT_GT(slope, 0.02) << temperature_C << ' ' << humidity;
      if (humidity > 0.0 && humidity < 1.0) {
        constexpr double step = 1e-5;
        const double rise = wood_moisture_kg_kg(temperature_C, humidity + step) -
                            wood_moisture_kg_kg(temperature_C, humidity - step);
        ASSERT_NEAR(rise / (2.0 * step) / slope, 1.0, 1e-6) << temperature_C << ' ' << humidity;
        ++looked_at;
      }
    }
  }
  EXPECT_EQ(looked_at, 23 * 63);
}

TEST(WoodMoisture, TheInverseReturnsToTheHumidity) {
  for (double temperature_C = -30.0; temperature_C <= 80.0; temperature_C += 2.5) {
    for (int i = 0; i <= 1000; ++i) {
      const double humidity = i / 1000.0;
      const double moisture = wood_moisture_kg_kg(temperature_C, humidity);
      ASSERT_NEAR(wood_relative_humidity(temperature_C, moisture), humidity, 1e-13)
          << temperature_C << ' ' << humidity;
    }
    EXPECT_EQ(wood_relative_humidity(temperature_C, 0.0), 0.0);
    EXPECT_EQ(wood_relative_humidity(temperature_C, 0.3), 1.0);  // free water
    EXPECT_EQ(wood_relative_humidity(temperature_C, 2.5), 1.0);
  }
}

TEST(WoodMoisture, IsContinuedBelowTheTableAsStated) {
  for (double humidity = 0.0; humidity <= 0.9; humidity += 0.01) {
    const double less = wood_moisture_kg_kg(0.0, humidity) - wood_moisture_kg_kg(-30.0, humidity);
    EXPECT_GE(less, -0.0001) << humidity;
    EXPECT_LE(less, 0.021) << humidity;
  }
  EXPECT_LE(wood_moisture_kg_kg(0.0, 1.0) - wood_moisture_kg_kg(-30.0, 1.0), 0.031);
}

TEST(DampLayer, WetWoodDriesAtTheRateOfItsResistances) {
  // Film, coat and half the layer in series, by hand.
  const DampLayer layer{.area_m2 = 0.4,
                        .thickness_m = 0.004,
                        .dry_density_kg_m3 = 500.0,
                        .vapour_resistance_factor = 20.0,
                        .coat_equivalent_air_m = 0.06};
  const DampLayerConditions air{
      .duration_s = 3600.0, .temperature_C = 15.0, .air_vapour_Pa = 700.0, .transfer_kg_m2sPa = 2e-8};
  const auto step = step_damp_layer(layer, 0.6, air);
  const double resistance = 1.0 / 2e-8 + (0.06 + 0.04) / vapour_permeability_air_kg_msPa(15.0);
  const double given_kg = 0.4 / resistance * (water_saturation_Pa(15.0) - 700.0) * 3600.0;
  EXPECT_NEAR(step.given_kg / given_kg, 1.0, 1e-12);
  EXPECT_NEAR(dry_mass_kg(layer), 0.8, 1e-15);
  EXPECT_NEAR(step.moisture_kg_kg, 0.6 - given_kg / 0.8, 1e-14);
  EXPECT_EQ(step.relative_humidity, 1.0);
  EXPECT_EQ(step.vapour_Pa, water_saturation_Pa(15.0));
  EXPECT_NEAR(step.response_kg_sPa * resistance / 0.4, 1.0, 1e-12);
}

TEST(DampLayer, StaysWhereItIsInEquilibrium) {
  for (const double humidity : {0.2, 0.5, 0.8, 0.95}) {
    const double moisture = wood_moisture_kg_kg(10.0, humidity);
    const auto step = step_damp_layer(
        one_m2, moisture, {.temperature_C = 10.0, .air_vapour_Pa = humidity * water_saturation_Pa(10.0)});
    EXPECT_NEAR(step.moisture_kg_kg, moisture, 1e-15);
    EXPECT_NEAR(step.given_kg, 0.0, 1e-15);
  }
}

TEST(DampLayer, ExchangesNothingWithoutAFilmOrAnArea) {
  const auto sealed = step_damp_layer(one_m2, 0.15, {.air_vapour_Pa = 0.0, .transfer_kg_m2sPa = 0.0});
  EXPECT_NEAR(sealed.moisture_kg_kg, 0.15, 1e-15);
  EXPECT_NEAR(sealed.given_kg, 0.0, 1e-15);
  EXPECT_EQ(sealed.response_kg_sPa, 0.0);
  const auto none = step_damp_layer({.area_m2 = 0.0}, 0.15, {.air_vapour_Pa = 300.0});
  EXPECT_EQ(none.given_kg, 0.0);
  EXPECT_EQ(none.response_kg_sPa, 0.0);
}

TEST(DampLayer, DryWoodInDryAirStaysDry) {
  const auto step = step_damp_layer(one_m2, 0.0, {.air_vapour_Pa = 0.0});
  EXPECT_EQ(step.moisture_kg_kg, 0.0);
  EXPECT_EQ(step.given_kg, 0.0);
  EXPECT_EQ(step.vapour_Pa, 0.0);
}

TEST(WoodMoisture, RefusesWhatIsOutsideItsRange) {
  for (const double temperature_C : {-30.1, 80.1, test::not_a_number}) {
    EXPECT_THROW(wood_moisture_kg_kg(temperature_C, 0.5), InvalidInput);
    EXPECT_THROW(wood_moisture_slope_kg_kg(temperature_C, 0.5), InvalidInput);
    EXPECT_THROW(wood_relative_humidity(temperature_C, 0.1), InvalidInput);
  }
  for (const double humidity : {-1e-9, 1.0001, 55.0, test::not_a_number}) {
    EXPECT_THROW(wood_moisture_kg_kg(20.0, humidity), InvalidInput);
    EXPECT_THROW(wood_moisture_slope_kg_kg(20.0, humidity), InvalidInput);
  }
  for (const double moisture : {-1e-9, 2.51, 12.0, test::not_a_number}) {
    EXPECT_THROW(wood_relative_humidity(20.0, moisture), InvalidInput);
    EXPECT_THROW(step_damp_layer(one_m2, moisture, {}), InvalidInput);
  }
}

TEST(DampLayer, RefusesWhatIsOutsideItsRange) {
  const std::vector<std::function<void(DampLayer&, double)>> of_layer{
      [](DampLayer& layer, double value) { layer.area_m2 = value; },
      [](DampLayer& layer, double value) { layer.thickness_m = value; },
      [](DampLayer& layer, double value) { layer.dry_density_kg_m3 = value; },
      [](DampLayer& layer, double value) { layer.vapour_resistance_factor = value; },
      [](DampLayer& layer, double value) { layer.coat_equivalent_air_m = value; }};
  const std::vector<std::function<void(DampLayerConditions&, double)>> of_conditions{
      [](DampLayerConditions& air, double value) { air.duration_s = value; },
      [](DampLayerConditions& air, double value) { air.temperature_C = value; },
      [](DampLayerConditions& air, double value) { air.air_vapour_Pa = value; },
      [](DampLayerConditions& air, double value) { air.transfer_kg_m2sPa = value; }};
  for (const double value : {-31.0, 1e6, test::not_a_number}) {
    for (const auto& set : of_layer) {
      DampLayer layer = one_m2;
      set(layer, value);
      EXPECT_THROW(step_damp_layer(layer, 0.1, {}), InvalidInput);
      EXPECT_THROW(dry_mass_kg(layer), InvalidInput);
    }
    for (const auto& set : of_conditions) {
      DampLayerConditions air;
      set(air, value);
      EXPECT_THROW(step_damp_layer(one_m2, 0.1, air), InvalidInput);
    }
  }
}

}  // namespace
}  // namespace dewgap
