// Unventilated and ventilated layers of ISO 6946.
#include <gtest/gtest.h>

#include <stdexcept>

#include "dewgap/errors.hpp"
#include "dewgap/window/whole_window.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

constexpr HeatFlow all_directions[] = {HeatFlow::upwards, HeatFlow::horizontal, HeatFlow::downwards};

HeatFlow direction_named(const std::string& name) {
  if (name == "upwards") {
    return HeatFlow::upwards;
  }
  if (name == "horizontal") {
    return HeatFlow::horizontal;
  }
  if (name == "downwards") {
    return HeatFlow::downwards;
  }
  throw std::runtime_error("no such direction: " + name);
}

TEST(UnventilatedLayer, AgreesWithTheTable) {
  test::check_reference("iso_6946/air_layers.csv", [](const test::ReferenceRow& row) {
    AirLayer layer;
    layer.thickness_m = row.number("thickness_mm") * 1e-3;
    layer.direction = direction_named(row.text("direction"));
    return unventilated_air_layer_m2K_W(layer);
  });
}

TEST(UnventilatedLayer, NeverInsulatesLessWhenThickerOrFacingDown) {
  double last[3] = {0.0, 0.0, 0.0};
  for (double thickness_m = 0.002; thickness_m <= 0.3; thickness_m *= 1.15) {
    AirLayer layer;
    layer.thickness_m = thickness_m;
    double above = 0.0;
    for (std::size_t i = 0; i < 3; ++i) {
      layer.direction = all_directions[i];
      const double resistance = unventilated_air_layer_m2K_W(layer);
      EXPECT_GE(resistance, last[i]);
      EXPECT_GE(resistance, above - 1e-12);
      last[i] = above = resistance;
    }
  }
}

TEST(UnventilatedLayer, IsConductionAndRadiationWhereThin) {
  // 2 mm: 0.025 / 0.002 and 4 sigma 283.15^3 / (2/0.9 - 1)
  const double radiation = 4.0 * 5.670374419e-8 * 283.15 * 283.15 * 283.15 / (2.0 / 0.9 - 1.0);
  for (const auto direction : all_directions) {
    const AirLayer layer{.thickness_m = 0.002, .direction = direction};
    EXPECT_NEAR(unventilated_air_layer_m2K_W(layer), 1.0 / (12.5 + radiation), 1e-12);
  }
}

TEST(UnventilatedLayer, BranchesMeetAtFiveKelvin) {
  // The published coefficients meet within 1.5 % of the convection at 5 K (downwards 0.1216 against 0.12).
  for (const auto direction : all_directions) {
    AirLayer layer{.thickness_m = 0.1, .emissivity_1 = 0.01, .emissivity_2 = 0.01, .direction = direction};
    const double below = unventilated_air_layer_m2K_W(layer);
    layer.difference_K = 5.0 + 1e-9;
    EXPECT_NEAR(unventilated_air_layer_m2K_W(layer), below, 0.015 * below);
    layer.difference_K = 20.0;
    EXPECT_LE(unventilated_air_layer_m2K_W(layer), below);
  }
}

TEST(UnventilatedLayer, RejectsBadInput) {
  const auto rejects = [](double AirLayer::*field, std::initializer_list<double> values) {
    for (const double bad : values) {
      AirLayer layer;
      layer.*field = bad;
      EXPECT_THROW(unventilated_air_layer_m2K_W(layer), InvalidInput) << bad;
    }
  };
  rejects(&AirLayer::thickness_m, {0.0019, 0.31, -1.0, test::not_a_number});
  rejects(&AirLayer::emissivity_1, {0.0, 1.01, test::not_a_number});
  rejects(&AirLayer::emissivity_2, {0.0, 1.01, test::not_a_number});
  rejects(&AirLayer::mean_temperature_C, {-61.0, 81.0, test::not_a_number});
  rejects(&AirLayer::difference_K, {-1.0, 61.0, test::not_a_number});
}

TEST(VentilatedLayer, IsClassedByItsOpenings) {
  EXPECT_EQ(layer_ventilation(0.0), LayerVentilation::unventilated);
  EXPECT_EQ(layer_ventilation(500.0), LayerVentilation::unventilated);
  EXPECT_EQ(layer_ventilation(500.1), LayerVentilation::slightly_ventilated);
  EXPECT_EQ(layer_ventilation(1500.0), LayerVentilation::slightly_ventilated);
  EXPECT_EQ(layer_ventilation(1500.1), LayerVentilation::well_ventilated);
}

TEST(VentilatedLayer, IsContinuousAtBothLimits) {
  const auto total = [](double openings) { return ventilated_total_resistance_m2K_W(openings, 0.36, 0.26); };
  for (const double limit : {500.0, 1500.0}) {
    EXPECT_NEAR(total(limit - 1e-6), total(limit), 1e-9);
    EXPECT_NEAR(total(limit + 1e-6), total(limit), 1e-9);
  }
  EXPECT_EQ(total(0.0), 0.36);
  EXPECT_EQ(total(500.0), 0.36);
  EXPECT_NEAR(total(1500.0), 0.26, 1e-12);
  EXPECT_EQ(total(1e6), 0.26);
}

TEST(VentilatedLayer, InterpolatesTheTotalByHand) {
  // (1500 - 800)/1000 x 0.36 + (800 - 500)/1000 x 0.26
  EXPECT_NEAR(ventilated_total_resistance_m2K_W(800.0, 0.36, 0.26), 0.33, 1e-12);
  EXPECT_NEAR(ventilated_total_resistance_m2K_W(1000.0, 0.36, 0.26), 0.31, 1e-12);
}

TEST(VentilatedLayer, NeverRisesWithTheOpenings) {
  double last = 1.0;
  for (double openings = 0.0; openings < 2000.0; openings += 37.0) {
    const double total = ventilated_total_resistance_m2K_W(openings, 0.36, 0.26);
    EXPECT_LE(total, last);
    last = total;
  }
}

TEST(VentilatedLayer, RejectsBadInput) {
  for (const double bad : {-1.0, 1e8, test::not_a_number}) {
    EXPECT_THROW(layer_ventilation(bad), InvalidInput);
    EXPECT_THROW(ventilated_total_resistance_m2K_W(bad, 0.36, 0.26), InvalidInput);
    EXPECT_THROW(ventilated_total_resistance_m2K_W(800.0, bad, 0.26), InvalidInput);
    EXPECT_THROW(ventilated_total_resistance_m2K_W(800.0, 0.36, bad), InvalidInput);
  }
  EXPECT_THROW(ventilated_total_resistance_m2K_W(800.0, 0.26, 0.36), InvalidInput);
}

}  // namespace
}  // namespace dewgap
