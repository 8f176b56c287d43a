// Laws of a damp layer over thousands of random cases (tests/moisture/timber_states.csv).
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "dewgap/air/saturation.hpp"
#include "dewgap/moisture/film.hpp"
#include "dewgap/moisture/timber.hpp"
#include "dewgap/moisture/transfer.hpp"
#include "moisture/random_draw.hpp"

namespace dewgap {
namespace {

struct Case {
  DampLayer layer;
  double moisture_kg_kg;
  DampLayerConditions air;
};

double water_saturation_Pa(double temperature_C) {
  return saturation_pressure_Pa(temperature_C, SaturationFormula::murphy_koop, Phase::water);
}

Case drawn(test::RandomDraw& draw, const test::Limits& limit) {
  const double temperature_C = draw.between(limit("temperature_min_C"), limit("temperature_max_C"));
  const double face_m_s = mass_transfer_m_s(draw.between(0.0, limit("convection_max_W_m2K")), 1250.0);
  return {
      .layer = {.area_m2 = draw.between(0.01, 1.0),
                .thickness_m = draw.between(0.0005, limit("thickness_max_m")),
                .dry_density_kg_m3 = draw.between(350.0, 800.0),
                .vapour_resistance_factor = draw.log_between(10.0, 200.0),
                .coat_equivalent_air_m = draw.or_none(3, draw.between(0.0, limit("coat_max_m")))},
      .moisture_kg_kg = draw.between(limit("moisture_min_kg_kg"), limit("moisture_max_kg_kg")),
      .air = {.duration_s = draw.between(1.0, limit("duration_max_s")),
              .temperature_C = temperature_C,
              .air_vapour_Pa = draw.between(0.0, limit("humidity_max")) * water_saturation_Pa(temperature_C),
              .transfer_kg_m2sPa = vapour_transfer_kg_m2sPa(face_m_s, temperature_C)}};
}

double equilibrium_kg_kg(const Case& given) {
  return wood_moisture_kg_kg(given.air.temperature_C,
                             given.air.air_vapour_Pa / water_saturation_Pa(given.air.temperature_C));
}

double after_many(Case given, int steps) {
  given.air.duration_s = std::max(1.0, given.air.duration_s / steps);
  for (int i = 0; i < steps; ++i) {
    given.moisture_kg_kg = step_damp_layer(given.layer, given.moisture_kg_kg, given.air).moisture_kg_kg;
  }
  return given.moisture_kg_kg;
}

void for_each_case(const std::function<void(const Case&)>& check) {
  test::for_each_drawn_case("moisture/timber_states.csv",
                            [&](auto& draw, const auto& limits, const auto& name) {
                              SCOPED_TRACE(name);
                              if (!::testing::Test::HasFatalFailure()) {
                                check(drawn(draw, limits));
                              }
                            });
}

TEST(DampLayerLaws, WaterIsConservedNeverNegativeNeverPastEquilibrium) {
  int drier = 0;
  int wetter = 0;
  for_each_case([&](const Case& given) {
    const auto step = step_damp_layer(given.layer, given.moisture_kg_kg, given.air);
    const double water_kg = dry_mass_kg(given.layer) * given.moisture_kg_kg;
    const double left_kg = dry_mass_kg(given.layer) * step.moisture_kg_kg;
    ASSERT_NEAR(left_kg + step.given_kg, water_kg, 1e-15 * (water_kg + left_kg));
    const double equilibrium = equilibrium_kg_kg(given);
    ASSERT_GE(step.moisture_kg_kg, std::min(equilibrium, given.moisture_kg_kg) - 1e-15);
    ASSERT_LE(step.moisture_kg_kg, std::max(equilibrium, given.moisture_kg_kg) + 1e-15);
    ASSERT_GE(step.moisture_kg_kg, 0.0);
    ++(step.given_kg > 0.0 ? drier : wetter);
  });
  EXPECT_GT(drier, 1000);
  EXPECT_GT(wetter, 1000);
}

TEST(DampLayerLaws, GivesWhatPassesItsResistance) {
  for_each_case([](const Case& given) {
    const auto step = step_damp_layer(given.layer, given.moisture_kg_kg, given.air);
    const double inside_air_m = given.layer.coat_equivalent_air_m +
                                0.5 * given.layer.thickness_m * given.layer.vapour_resistance_factor;
    const double resistance = 1.0 / given.air.transfer_kg_m2sPa +
                              inside_air_m / vapour_permeability_air_kg_msPa(given.air.temperature_C);
    const double difference_Pa = step.vapour_Pa - given.air.air_vapour_Pa;
    const double given_kg = given.layer.area_m2 / resistance * difference_Pa * given.air.duration_s;
    // Rounding: of the water held, and of the humidity that was solved for.
    const double scale_kg = dry_mass_kg(given.layer);
    ASSERT_NEAR(step.given_kg, given_kg, 1e-14 * scale_kg + 1e-12 * std::abs(given_kg));
    ASSERT_NEAR(wood_relative_humidity(given.air.temperature_C, step.moisture_kg_kg), step.relative_humidity,
                1e-12);
  });
}

TEST(DampLayerLaws, OneStepLiesNearManyShortOnes) {
  double worst = 0.0;
  for_each_case([&](const Case& given) {
    const double distance = std::abs(equilibrium_kg_kg(given) - given.moisture_kg_kg);
    const double apart = std::abs(after_many(given, 1) - after_many(given, 60));
    worst = std::max(worst, apart / std::max(distance, 1e-9));
    ASSERT_LE(apart, 0.25 * distance + 1e-14);
  });
  EXPECT_GT(worst, 0.1);  // the bound is needed
  RecordProperty("worst_share_of_distance", std::to_string(worst));
}

TEST(DampLayerLaws, HalfTheStepHalvesTheError) {
  const Case given{.layer = {.area_m2 = 1.0},
                   .moisture_kg_kg = 0.22,
                   .air = {.duration_s = 7200.0, .temperature_C = 12.0, .air_vapour_Pa = 700.0}};
  const double exact = 2.0 * after_many(given, 4096) - after_many(given, 2048);
  for (const int steps : {4, 8, 16, 32}) {
    const double ratio = (after_many(given, steps) - exact) / (after_many(given, 2 * steps) - exact);
    EXPECT_NEAR(ratio, 2.0, 0.05) << steps;
  }
}

TEST(DampLayerLaws, TheResponseIsTheSlopeOfWhatItGives) {
  for_each_case([](const Case& given) {
    constexpr double apart_Pa = 0.05;
    auto drier = given;
    auto damper = given;
    drier.air.air_vapour_Pa = std::max(0.0, given.air.air_vapour_Pa - apart_Pa);
    damper.air.air_vapour_Pa = given.air.air_vapour_Pa + apart_Pa;
    const auto low = step_damp_layer(drier.layer, drier.moisture_kg_kg, drier.air);
    const auto high = step_damp_layer(damper.layer, damper.moisture_kg_kg, damper.air);
    ASSERT_GE(low.given_kg, high.given_kg);
    if ((low.relative_humidity < 1.0) != (high.relative_humidity < 1.0)) {
      return;  // fibre saturation lies between
    }
    const double slope = (low.given_kg - high.given_kg) / given.air.duration_s /
                         (damper.air.air_vapour_Pa - drier.air.air_vapour_Pa);
    const auto here = step_damp_layer(given.layer, given.moisture_kg_kg, given.air);
    // Rounding of the two masses of water over so small a difference.
    const double rounding = 1e-15 * dry_mass_kg(given.layer) / given.air.duration_s / apart_Pa;
    ASSERT_NEAR(slope, here.response_kg_sPa, 1e-4 * here.response_kg_sPa + rounding);
  });
}

TEST(DampLayerLaws, PaintSlowsIt) {
  for_each_case([](const Case& given) {
    auto painted = given.layer;
    painted.coat_equivalent_air_m += 0.5;
    const double bare_kg = step_damp_layer(given.layer, given.moisture_kg_kg, given.air).given_kg;
    const double painted_kg = step_damp_layer(painted, given.moisture_kg_kg, given.air).given_kg;
    ASSERT_LE(std::abs(painted_kg), std::abs(bare_kg) + 1e-15 * dry_mass_kg(given.layer));
  });
}

}  // namespace
}  // namespace dewgap
