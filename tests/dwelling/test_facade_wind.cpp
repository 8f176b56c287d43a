#include "dewgap/dwelling/facade_wind.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <set>

#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

constexpr Shelter shelters[] = {Shelter::open, Shelter::fields, Shelter::suburb, Shelter::facing_wall};

TEST(FacadeWind, MeetsTheThreeCoefficients) {
  for (const auto shelter : shelters) {
    const auto row = pressure_coefficients(shelter);
    EXPECT_DOUBLE_EQ(facade_pressure_coefficient(row, 0.0), row.windward);
    EXPECT_DOUBLE_EQ(facade_pressure_coefficient(row, 90.0), row.side);
    EXPECT_DOUBLE_EQ(facade_pressure_coefficient(row, 180.0), row.leeward);
  }
}

TEST(FacadeWind, IsEvenAndGoesRound) {
  const PressureCoefficients row;
  for (double angle = 0.0; angle <= 180.0; angle += 7.5) {
    const double here = facade_pressure_coefficient(row, angle);
    EXPECT_DOUBLE_EQ(facade_pressure_coefficient(row, -angle), here);
    EXPECT_DOUBLE_EQ(facade_pressure_coefficient(row, 360.0 - angle), here);
    EXPECT_DOUBLE_EQ(facade_pressure_coefficient(row, angle - 360.0), here);
  }
}

TEST(FacadeWind, IsSmooth) {
  // A sum of two cosines: slope and curvature are bounded by their amplitudes.
  const PressureCoefficients row;
  const double h_deg = 0.01;
  const double h = h_deg * std::numbers::pi / 180.0;
  const double odd = 0.5 * (row.windward - row.leeward);
  const double even = 0.25 * (row.windward + row.leeward) - 0.5 * row.side;
  for (double angle = -179.0; angle <= 179.0; angle += 0.5) {
    const double before = facade_pressure_coefficient(row, angle - h_deg);
    const double here = facade_pressure_coefficient(row, angle);
    const double after = facade_pressure_coefficient(row, angle + h_deg);
    EXPECT_LE(std::abs(after - before) / (2.0 * h), std::abs(odd) + 2.0 * std::abs(even) + 1e-6);
    EXPECT_LE(std::abs(after - 2.0 * here + before) / (h * h), std::abs(odd) + 4.0 * std::abs(even) + 1e-6);
  }
  EXPECT_NEAR(facade_pressure_coefficient(row, 60.0), row.side + 0.5 * odd + 0.5 * even, 1e-15);
}

/// Walker and Wilson's harmonic (1994, from memory), both sides alike; angle in degrees.
double walker_wilson(const PressureCoefficients& row, double angle_deg) {
  const double angle = angle_deg * std::numbers::pi / 180.0;
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  return 0.5 * ((row.windward + row.leeward) * std::sqrt(std::abs(c)) +
                (row.windward - row.leeward) * std::copysign(std::pow(std::abs(c), 0.75), c)) +
         row.side * s * s * s * s;
}

TEST(FacadeWind, ItsShapeLiesWhereTheHeaderSays) {
  double widest = 0.0;
  double deepest = 0.0;
  for (const auto shelter : shelters) {
    const auto row = pressure_coefficients(shelter);
    const double share = (facade_pressure_coefficient(row, 45.0) - row.side) / (row.windward - row.side);
    EXPECT_GE(share, 0.62);
    EXPECT_LE(share, 0.642);
    for (double angle = 0.0; angle <= 180.0; angle += 0.5) {
      const double here = facade_pressure_coefficient(row, angle);
      widest = std::max(widest, std::abs(here - walker_wilson(row, angle)));
      deepest = std::max(deepest, std::min(row.side, row.leeward) - here);
      EXPECT_LE(here, row.windward + 1e-15);  // rounding at 0 degrees
    }
  }
  EXPECT_LE(widest, 0.13);
  EXPECT_LE(deepest, 0.025);
  EXPECT_GT(deepest, 0.0);
  std::printf("furthest from Walker and Wilson %.3f, dip %.4f\n", widest, deepest);
}

TEST(FacadeWind, FallsFromWindwardToSide) {
  for (const auto shelter : shelters) {
    const auto row = pressure_coefficients(shelter);
    for (double angle = 0.0; angle < 90.0; angle += 1.0) {
      EXPECT_GT(facade_pressure_coefficient(row, angle), facade_pressure_coefficient(row, angle + 1.0));
    }
  }
}

TEST(FacadeWind, RefusesWhatIsNoCoefficientOrAngle) {
  EXPECT_THROW(facade_pressure_coefficient({.windward = 1.3}, 0.0), InvalidInput);
  EXPECT_THROW(facade_pressure_coefficient({.leeward = -1.6}, 0.0), InvalidInput);
  EXPECT_THROW(facade_pressure_coefficient({.side = test::not_a_number}, 0.0), InvalidInput);
  EXPECT_THROW(facade_pressure_coefficient({}, 360.5), InvalidInput);
  EXPECT_THROW(facade_pressure_coefficient({}, test::not_a_number), InvalidInput);
}

TEST(WindAngle, ByCompass) {
  EXPECT_EQ(angle_from_normal_deg(270.0, 270.0), 0.0);
  EXPECT_EQ(angle_from_normal_deg(0.0, 360.0), 0.0);
  EXPECT_EQ(angle_from_normal_deg(350.0, 10.0), 20.0);
  EXPECT_EQ(angle_from_normal_deg(10.0, 350.0), 20.0);
  EXPECT_EQ(angle_from_normal_deg(45.0, 225.0), 180.0);
  EXPECT_EQ(angle_from_normal_deg(90.0, 225.0), 135.0);
  for (double wind = 0.0; wind <= 360.0; wind += 15.0) {
    for (double facing = 0.0; facing <= 360.0; facing += 15.0) {
      const double angle = angle_from_normal_deg(wind, facing);
      EXPECT_GE(angle, 0.0);
      EXPECT_LE(angle, 180.0);
      EXPECT_EQ(angle, angle_from_normal_deg(facing, wind));
    }
  }
  EXPECT_THROW(angle_from_normal_deg(-1.0, 0.0), InvalidInput);
  EXPECT_THROW(angle_from_normal_deg(0.0, 361.0), InvalidInput);
  EXPECT_THROW(angle_from_normal_deg(test::not_a_number, 0.0), InvalidInput);
}

TEST(WindAngle, TheSameSeedAndDayGiveTheSame) {
  std::set<double> angles;
  int same = 0;
  for (std::size_t day = 0; day < 366; ++day) {
    const double angle = modelled_wind_angle_deg(45.0, day, 7);
    EXPECT_EQ(angle, modelled_wind_angle_deg(45.0, day, 7));
    same += angle == modelled_wind_angle_deg(45.0, day, 8) ? 1 : 0;
    angles.insert(angle);
    EXPECT_GE(angle, 0.0);
    EXPECT_LE(angle, 180.0);
  }
  EXPECT_EQ(angles.size(), 366u);
  EXPECT_EQ(same, 0);
}

TEST(WindAngle, SpreadsAsANormalFoldedOnTheHalfCircle) {
  constexpr int count = 40000;
  // Shares below an angle; prevailing at 90, where 1.5 sd reach the folds, and at 0, folded in the middle.
  int within_one_sd = 0;
  int below_60_at_zero = 0;
  double sum = 0.0;
  double product = 0.0;
  double before = 90.0;
  for (std::size_t day = 0; day < count; ++day) {
    const double angle = modelled_wind_angle_deg(90.0, day, 3);
    within_one_sd += std::abs(angle - 90.0) < 60.0 ? 1 : 0;
    sum += angle - 90.0;
    product += (angle - 90.0) * (before - 90.0);
    before = angle;
    below_60_at_zero += modelled_wind_angle_deg(0.0, day, 3) < 60.0 ? 1 : 0;
  }
  // Within one sd 0.6827, and from beyond the folds at 1.5 sd what lies 2 to 4 sd off: 2 (0.02275 - 0.00003).
  EXPECT_NEAR(within_one_sd / double{count}, 0.6827 + 0.0454, 4.0 * std::sqrt(0.2 / count));
  EXPECT_NEAR(below_60_at_zero / double{count}, 0.6827, 4.0 * std::sqrt(0.22 / count));
  EXPECT_NEAR(sum / count, 0.0, 4.0 * 60.0 / std::sqrt(count));
  EXPECT_NEAR(product / count / (50.0 * 50.0), 0.0, 4.0 / std::sqrt(count) * 1.5);
}

TEST(WindAngle, RefusesWhatIsNoAngle) {
  EXPECT_THROW(modelled_wind_angle_deg(-1.0, 0, 1), InvalidInput);
  EXPECT_THROW(modelled_wind_angle_deg(181.0, 0, 1), InvalidInput);
  EXPECT_THROW(modelled_wind_angle_deg(test::not_a_number, 0, 1), InvalidInput);
}

}  // namespace
}  // namespace dewgap
