// The prepared step of a damp layer against the checked one.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "dewgap/air/saturation.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/moisture/timber_kernel.hpp"
#include "moisture/random_draw.hpp"

namespace dewgap {
namespace {

using air_kernel::saturation_table;
using moisture_kernel::prepared;
using moisture_kernel::step_prepared_layer;

// The bound that the header states.
constexpr double bound = 1e-7;

struct Worst {
  double moisture = 0.0;
  double humidity = 0.0;
  double response = 0.0;
  double given = 0.0;
};

double apart(double value, double expected) {
  return expected == 0.0 ? std::abs(value) : std::abs(value / expected - 1.0);
}

void compare(const DampLayerStep& step, const DampLayerStep& expected, double water_kg, Worst& worst) {
  worst.moisture = std::max(worst.moisture, apart(step.moisture_kg_kg, expected.moisture_kg_kg));
  worst.humidity = std::max(worst.humidity, apart(step.relative_humidity, expected.relative_humidity));
  worst.humidity = std::max(worst.humidity, apart(step.vapour_Pa, expected.vapour_Pa));
  worst.response = std::max(worst.response, apart(step.response_kg_sPa, expected.response_kg_sPa));
  const double scale_kg = std::max(water_kg, std::abs(expected.given_kg));
  worst.given = std::max(worst.given, std::abs(step.given_kg - expected.given_kg) / scale_kg);
}

TEST(TimberKernel, MeetsTheCheckedStepFromAnyStart) {
  Worst worst;
  int cases = 0;
  test::for_each_drawn_case("moisture/timber_states.csv", [&](auto& draw, const auto& limit, const auto&) {
    const double t = draw.between(limit("temperature_min_C"), limit("temperature_max_C"));
    const double saturation_Pa = saturation_pressure_Pa(t, SaturationFormula::murphy_koop, Phase::water);
    const DampLayer layer{.area_m2 = draw.between(0.01, 1.0),
                          .thickness_m = draw.between(0.0005, limit("thickness_max_m")),
                          .dry_density_kg_m3 = draw.between(350.0, 800.0),
                          .vapour_resistance_factor = draw.log_between(10.0, 200.0),
                          .coat_equivalent_air_m = draw.or_none(3, draw.between(0.0, limit("coat_max_m")))};
    const DampLayerConditions air{.duration_s = draw.between(1.0, limit("duration_max_s")),
                                  .temperature_C = t,
                                  .air_vapour_Pa = draw.between(0.0, limit("humidity_max")) * saturation_Pa,
                                  .transfer_kg_m2sPa = draw.or_none(9, draw.log_between(1e-9, 1e-7))};
    const double moisture = draw.between(limit("moisture_min_kg_kg"), limit("moisture_max_kg_kg"));
    const auto expected = step_damp_layer(layer, moisture, air);
    const auto warm = expected.relative_humidity + draw.between(-0.01, 0.01);
    for (const double start : {warm, 0.0, 1.0, draw.between(0.0, 1.0)}) {
      const auto step = step_prepared_layer(prepared(layer), moisture, start, air, saturation_table());
      compare(step, expected, dry_mass_kg(layer) * moisture, worst);
      ++cases;
    }
  });
  EXPECT_GT(cases, 10000);
  EXPECT_LE(worst.moisture, bound);
  EXPECT_LE(worst.humidity, bound);
  EXPECT_LE(worst.response, bound);
  EXPECT_LE(worst.given, bound);
  EXPECT_GT(worst.humidity, 0.0);
  std::printf("worst relative: moisture %.2g, humidity %.2g, response %.2g, given %.2g\n", worst.moisture,
              worst.humidity, worst.response, worst.given);
}

TEST(TimberKernel, KeepsTheCheckedYearAndItsLedger) {
  const DampLayer layer{.area_m2 = 0.3};
  const auto ready = prepared(layer);
  double moisture = 0.14;
  double humidity = 0.5;
  double checked = 0.14;
  double given_kg = 0.0;
  for (int hour = 0; hour < 8760; ++hour) {
    const double t =
        8.0 - 8.0 * std::cos(hour * 2.0 * 3.14159265358979 / 8760.0) + 3.0 * std::sin(0.26 * hour);
    const double air_Pa = saturation_pressure_Pa(t) * (0.85 + 0.14 * std::sin(0.003 * hour));
    const DampLayerConditions air{.temperature_C = t, .air_vapour_Pa = air_Pa};
    const auto step = step_prepared_layer(ready, moisture, humidity, air, saturation_table());
    moisture = step.moisture_kg_kg;
    humidity = step.relative_humidity;
    given_kg += step.given_kg;
    checked = step_damp_layer(layer, checked, air).moisture_kg_kg;
    ASSERT_NEAR(moisture, checked, bound * checked) << hour;
  }
  EXPECT_NEAR(dry_mass_kg(layer) * (0.14 - moisture), given_kg, 1e-14);
}

TEST(TimberKernel, PreparesWhatTheCheckedStepWouldTake) {
  const auto ready = prepared({.area_m2 = 0.5, .thickness_m = 0.004, .coat_equivalent_air_m = 0.7});
  EXPECT_DOUBLE_EQ(ready.dry_mass_kg_m2, 1.8);
  EXPECT_DOUBLE_EQ(ready.dry_mass_kg, 0.9);
  EXPECT_DOUBLE_EQ(ready.inside_air_m, 0.76);
  EXPECT_THROW(prepared({.area_m2 = -1.0}), InvalidInput);
  EXPECT_THROW(prepared({.area_m2 = 0.5, .thickness_m = std::nan("")}), InvalidInput);
  EXPECT_THROW(prepared({.area_m2 = 0.5, .coat_equivalent_air_m = -0.1}), InvalidInput);
}

}  // namespace
}  // namespace dewgap
