#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <limits>

#include "dewgap/air/saturation.hpp"
#include "dewgap/air/saturation_table_kernel.hpp"
#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

using air_kernel::saturation_at;
using air_kernel::saturation_table;
using air_kernel::SaturationPoint;
using air_kernel::SaturationTable;
using air_kernel::water_saturation_at;

constexpr auto murphy_koop = SaturationFormula::murphy_koop;
// The bounds that the header states.
constexpr double pressure_bound = 1e-8;
constexpr double slope_bound = 1e-6;

struct Worst {
  double pressure = 0.0;
  double slope = 0.0;
  void take(const SaturationPoint& point, double temperature_C, Phase phase) {
    const double pressure_Pa = saturation_pressure_Pa(temperature_C, murphy_koop, phase);
    const double slope_Pa_K = saturation_slope_Pa_K(temperature_C, murphy_koop, phase);
    const double pressure_error = std::abs(point.pressure_Pa / pressure_Pa - 1.0);
    const double slope_error = std::abs(point.slope_Pa_K / slope_Pa_K - 1.0);
    ASSERT_LE(pressure_error, pressure_bound) << temperature_C;
    ASSERT_LE(slope_error, slope_bound) << temperature_C;
    pressure = std::max(pressure, pressure_error);
    slope = std::max(slope, slope_error);
  }
};

// 160 K in steps that share no divisor with the table's spacing, and both ends.
template <class Visit>
void for_fine_grid(Visit visit) {
  constexpr int count = 150001;
  for (int i = 0; i <= count; ++i) {
    visit(std::min(90.0, -70.0 + 160.0 * i / count));
  }
}

TEST(SaturationTable, StableMeetsTheFormulas) {
  Worst worst;
  for_fine_grid([&](double t) { worst.take(saturation_table().at(t), t, Phase::stable); });
  EXPECT_GT(worst.pressure, 1e-10);  // a table, not the formula
  std::printf("worst relative error, stable: pressure %.2g, slope %.2g\n", worst.pressure, worst.slope);
}

TEST(SaturationTable, OverWaterMeetsTheFormula) {
  Worst worst;
  for_fine_grid([&](double t) { worst.take(saturation_table().over_water_at(t), t, Phase::water); });
  EXPECT_GT(worst.pressure, 1e-10);
  std::printf("worst relative error, over water: pressure %.2g, slope %.2g\n", worst.pressure, worst.slope);
}

TEST(SaturationTable, NodesAreTheFormulasOwn) {
  for (double t = -70.0; t <= 90.0; t += 0.25) {
    EXPECT_EQ(saturation_at(t).pressure_Pa, saturation_pressure_Pa(t)) << t;
    EXPECT_NEAR(saturation_at(t).slope_Pa_K, saturation_slope_Pa_K(t), 1e-13 * saturation_slope_Pa_K(t)) << t;
    EXPECT_EQ(water_saturation_at(t).pressure_Pa, saturation_pressure_Pa(t, murphy_koop, Phase::water)) << t;
  }
}

TEST(SaturationTable, NothingIsSmearedOverZero) {
  const double below_C = -std::numeric_limits<double>::denorm_min();
  EXPECT_NEAR(saturation_at(below_C).pressure_Pa, saturation_pressure_Pa(0.0, murphy_koop, Phase::ice),
              1e-10);
  EXPECT_NEAR(saturation_at(below_C).slope_Pa_K, saturation_slope_Pa_K(0.0, murphy_koop, Phase::ice), 1e-10);
  EXPECT_NEAR(saturation_at(-1e-9).pressure_Pa, saturation_pressure_Pa(0.0, murphy_koop, Phase::ice), 1e-6);
  for (const double zero_C : {0.0, -0.0}) {
    EXPECT_EQ(saturation_at(zero_C).pressure_Pa, saturation_pressure_Pa(0.0, murphy_koop, Phase::water));
  }
  // Over water zero is a node like any other.
  EXPECT_NEAR(water_saturation_at(below_C).pressure_Pa, water_saturation_at(0.0).pressure_Pa, 1e-10);
}

TEST(SaturationTable, SlopeIsContinuousAndThatOfThePressure) {
  for (double node = -69.75; node < 90.0; node += 0.25) {
    const double before = std::nextafter(node, -100.0);
    if (node != 0.0) {
      const double slope = saturation_at(node).slope_Pa_K;
      EXPECT_NEAR(saturation_at(before).slope_Pa_K, slope, 1e-12 * slope) << node;
    }
    const double slope = water_saturation_at(node).slope_Pa_K;
    EXPECT_NEAR(water_saturation_at(before).slope_Pa_K, slope, 1e-12 * slope) << node;
    const double h = 1e-4;
    const double middle = node - 0.125;
    const double rise = saturation_at(middle + h).pressure_Pa - saturation_at(middle - h).pressure_Pa;
    EXPECT_NEAR(rise / (2.0 * h) / saturation_at(middle).slope_Pa_K, 1.0, 1e-7) << middle;
  }
}

TEST(SaturationTable, PressureAndSlopeRise) {
  double pressure_Pa = 0.0;
  double water_Pa = 0.0;
  for_fine_grid([&](double t) {
    const auto point = saturation_at(t);
    EXPECT_GT(point.pressure_Pa, pressure_Pa) << t;
    EXPECT_GT(water_saturation_at(t).pressure_Pa, water_Pa) << t;
    EXPECT_GT(point.slope_Pa_K, 0.0);
    pressure_Pa = point.pressure_Pa;
    water_Pa = water_saturation_at(t).pressure_Pa;
  });
}

TEST(SaturationTable, RefusesWhatItDoesNotHold) {
  constexpr double infinity = std::numeric_limits<double>::infinity();
  for (const double t : {-70.001, 90.001, 1e300, -1e300, test::not_a_number, infinity, -infinity}) {
    EXPECT_THROW(saturation_at(t), InvalidInput) << t;
    EXPECT_THROW(water_saturation_at(t), InvalidInput) << t;
  }
  EXPECT_NO_THROW(saturation_at(SaturationTable::range_C.min));
  EXPECT_NO_THROW(saturation_at(SaturationTable::range_C.max));
}

}  // namespace
}  // namespace dewgap
