#include "dewgap/numerics/levy_series.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace dewgap::numerics {
namespace {

// A series of alternating terms is out by less than the first that is left out, m = 101.
constexpr double curvature_tolerance = 4.0 / (31.006 * 101.0 * 101.0 * 101.0);

TEST(LevySeries, ALongPlateBendsAsAStrip) {
  const auto centre = levy_centre(1000.0);
  EXPECT_NEAR(centre.deflection, 5.0 / 384.0, 1e-11);
  EXPECT_NEAR(centre.curvature_across, 1.0 / 8.0, curvature_tolerance);
  EXPECT_NEAR(centre.curvature_along, 0.0, 1e-12);
  // what the ends take away is alike for both lengths
  const double middle = 1000.0 * levy_mean_deflection(1000.0) - 500.0 * levy_mean_deflection(500.0);
  EXPECT_NEAR(middle / 500.0, 1.0 / 120.0, 1e-11);
}

TEST(LevySeries, ASquareBendsAlikeBothWays) {
  const auto centre = levy_centre(1.0);
  EXPECT_NEAR(centre.curvature_across, centre.curvature_along, 2.0 * curvature_tolerance);
}

/// Navier's double series sums the same plate another way.
TEST(LevySeries, AgreesWithTheDoubleSeries) {
  constexpr double pi = std::numbers::pi;
  for (const double b : {1.0, 1.5, 3.0}) {
    double centre = 0.0;
    double mean = 0.0;
    for (int i = 400; i >= 0; --i) {
      for (int j = 400; j >= 0; --j) {
        const double m = 2.0 * i + 1.0;
        const double n = 2.0 * j + 1.0;
        const double k = m * m + n * n / (b * b);
        centre += ((i + j) % 2 == 0 ? 1.0 : -1.0) / (m * n * k * k);
        mean += 1.0 / (m * m * n * n * k * k);
      }
    }
    EXPECT_NEAR(levy_centre(b).deflection, 16.0 / std::pow(pi, 6) * centre, 1e-10) << b;
    EXPECT_NEAR(levy_mean_deflection(b), 64.0 / std::pow(pi, 8) * mean, 1e-10) << b;
  }
}

TEST(LevySeries, AForceBendsALongPlateToItsLimit) {
  constexpr double pi = std::numbers::pi;
  constexpr double zeta_of_3 = 1.2020569031595943;
  // odd m from 101 on are left out: less than the integral of m^-3 over half of the numbers from 99
  const double left_out = 1.0 / (4.0 * 99.0 * 99.0) / (2.0 * std::pow(pi, 3));
  EXPECT_NEAR(levy_central_force(1000.0), 7.0 * zeta_of_3 / (16.0 * std::pow(pi, 3)), left_out);
  // a square: Timoshenko and Woinowsky-Krieger, Table 23, from memory
  EXPECT_NEAR(levy_central_force(1.0), 0.01160, 0.000005);
}

}  // namespace
}  // namespace dewgap::numerics
