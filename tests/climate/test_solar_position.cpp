#include "dewgap/climate/solar_position.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "dewgap/climate/solar_position_kernel.hpp"
#include "dewgap/climate/sun_kernel.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/numerics/root_finding.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

constexpr double refracted_upper_limb_deg = -0.833;

// When the sun's upper limb touches the horizon near a time, h UTC.
double rise_or_set_h(double latitude_deg, double longitude_deg, int day, double near_h) {
  const auto above_deg = [&](double hour) {
    return sun_position(latitude_deg, longitude_deg, day, hour).altitude_deg - refracted_upper_limb_deg;
  };
  const auto found = numerics::find_root(above_deg, near_h - 1.0, near_h + 1.0);
  EXPECT_EQ(found.status, SolveStatus::converged);
  return found.root;
}

TEST(SolarPosition, EquationOfTimeAndSolarTime) {
  test::check_reference("sun_geometry/solar_time.csv", [](const test::ReferenceRow& row) {
    const int day = static_cast<int>(row.number("day_of_year"));
    return row.text("quantity") == "equation_of_time_min"
               ? equation_of_time_min(day)
               : solar_time_h(row.number("longitude_deg"), day, row.number("hour_utc"));
  });
}

TEST(SolarPosition, SunriseAndSunsetByRefraction) {
  double worst_h = 0.0;
  test::check_reference(
      "sun_geometry/sunrise.csv",
      [&](const test::ReferenceRow& row) {
        const double expected = row.number("expected");
        const double computed = rise_or_set_h(row.number("latitude_deg"), row.number("longitude_deg"),
                                              static_cast<int>(row.number("day_of_year")), expected);
        worst_h = std::max(worst_h, std::abs(computed - expected));
        return computed;
      },
      1.2 / 60.0);
  std::printf("sunrise and sunset: at most %.2f min from the published\n", 60.0 * worst_h);
  EXPECT_LT(worst_h, 1.2 / 60.0);  // the header's figure
}

TEST(SolarPosition, HourOutsideTheAtmosphere) {
  test::check_reference(
      "sun_geometry/hour_outside.csv",
      [](const test::ReferenceRow& row) {
        const double latitude = row.number("latitude_deg");
        const int day = static_cast<int>(row.number("day_of_year"));
        const int hour = static_cast<int>(row.number("solar_hour"));
        if (const auto declination = row.optional_number("declination_deg")) {
          const auto path = climate::sun_path_at_declination(latitude, *declination);
          return 0.0036 * extraterrestrial_normal_W_m2(day) * path.mean_sine(path.lit_part(hour));
        }
        // A clock that shows solar time on that day.
        const SunSite site{latitude, 0.0, equation_of_time_min(day) / 60.0};
        return 0.0036 * sun_of_hour(site, day, hour).extraterrestrial_W_m2;
      },
      0.02);
}

TEST(SolarPosition, AgreesWithTheCosineOfIncidence) {
  for (const double latitude : {-60.0, -23.0, 0.0, 40.0, 67.0, 89.0}) {
    for (const int day : {10, 80, 172, 266, 355}) {
      for (double hour = 0.25; hour < 24.0; hour += 1.5) {
        const auto sun = sun_position(latitude, 12.0, day, hour);
        const double declination = climate::mean_declination_deg(day + (hour - 12.0) / 24.0);
        const double hour_angle = 15.0 * (solar_time_h(12.0, day, hour) - 12.0);
        const double up = cos_incidence(latitude, declination, hour_angle, {0.0, 0.0});
        const double east = cos_incidence(latitude, declination, hour_angle, {90.0, 90.0});
        const double north = cos_incidence(latitude, declination, hour_angle, {90.0, 0.0});
        const double altitude = climate::radians(sun.altitude_deg);
        const double azimuth = climate::radians(sun.azimuth_deg);
        EXPECT_NEAR(std::sin(altitude), up, 1e-4);  // solar_time_h is of the same moment
        EXPECT_NEAR(std::cos(altitude) * std::sin(azimuth), east, 1e-4);
        EXPECT_NEAR(std::cos(altitude) * std::cos(azimuth), north, 1e-4);
      }
    }
  }
}

TEST(SolarPosition, NoonStandsOnTheMeridian) {
  for (const double latitude : {50.0, -50.0}) {
    const double noon_utc = 12.0 - equation_of_time_min(172) / 60.0;
    const auto sun = sun_position(latitude, 0.0, 172, noon_utc);
    const double declination = climate::mean_declination_deg(172.0);
    EXPECT_NEAR(sun.altitude_deg, 90.0 - std::abs(latitude - declination), 1e-3);
    const double off_meridian = std::remainder(sun.azimuth_deg - (latitude > 0.0 ? 180.0 : 0.0), 360.0);
    EXPECT_NEAR(off_meridian, 0.0, 0.02);
  }
}

TEST(SolarPosition, RisesInTheEastAndSetsInTheWestEverywhere) {
  for (const double latitude : {-55.0, -20.0, 20.0, 55.0}) {
    for (int day = 1; day <= 365; day += 13) {
      EXPECT_LT(sun_position(latitude, 0.0, day, 6.0).azimuth_deg, 180.0);
      EXPECT_GT(sun_position(latitude, 0.0, day, 18.0).azimuth_deg, 180.0);
    }
  }
}

TEST(SolarPosition, MidnightSunAndPolarNight) {
  for (int hour = 0; hour < 24; ++hour) {
    EXPECT_GT(sun_position(80.0, 0.0, 172, hour).altitude_deg, 13.0);
    EXPECT_LT(sun_position(80.0, 0.0, 355, hour).altitude_deg, -13.0);
    EXPECT_LT(sun_position(-80.0, 0.0, 172, hour).altitude_deg, -13.0);
    EXPECT_NEAR(sun_of_hour({80.0, 0.0, 0.0}, 172, hour).lit_share, 1.0, 1e-12);
    EXPECT_EQ(sun_of_hour({80.0, 0.0, 0.0}, 355, hour).lit_share, 0.0);
    EXPECT_EQ(sun_of_hour({80.0, 0.0, 0.0}, 355, hour).extraterrestrial_W_m2, 0.0);
    EXPECT_NEAR(sun_position(90.0, 0.0, 172, hour).altitude_deg, 23.44, 0.01);
  }
}

TEST(SolarPosition, HoursReachIntoNeighbouringDays) {
  const auto late = sun_position(48.0, 10.0, 100, 30.0);
  const auto next = sun_position(48.0, 10.0, 101, 6.0);
  EXPECT_NEAR(late.altitude_deg, next.altitude_deg, 1e-9);
  EXPECT_NEAR(late.azimuth_deg, next.azimuth_deg, 1e-9);
}

TEST(SolarPosition, HoursOfADayAddUpToTheDay) {
  for (double latitude = -90.0; latitude <= 90.0; latitude += 10.0) {
    for (const double offset_h : {-11.0, 0.0, 8.0}) {
      for (const int day : {17, 105, 198, 344}) {
        const SunSite site{latitude, 15.0 * offset_h + 9.0, offset_h};
        double sum_MJ_m2 = 0.0;
        double lit_h = 0.0;
        for (int hour = 0; hour < 24; ++hour) {
          const auto sun = sun_of_hour(site, day, hour);
          sum_MJ_m2 += 0.0036 * sun.extraterrestrial_W_m2;
          lit_h += sun.lit_share;
          EXPECT_TRUE(sun.lit_share == 0.0 || sun.position.altitude_deg >= 0.0);
        }
        const double declination = climate::mean_declination_deg(day - offset_h / 24.0);
        const double length_h = climate::sunset_hour_angle_rad(latitude, declination) / climate::pi * 24.0;
        // A night shorter than an hour may lie within one: then its shorter lit part is left out.
        const bool short_night = length_h > 23.0 && length_h < 24.0;
        EXPECT_NEAR(lit_h, length_h, short_night ? 0.5 : 1e-3);
        EXPECT_NEAR(sum_MJ_m2,
                    climate::extraterrestrial_at_declination_MJ_m2(latitude, declination, day, 1367.0),
                    short_night ? 1e-3 : 1e-6)
            << latitude << " day " << day;
      }
    }
  }
}

TEST(SolarPosition, RefusesBadInput) {
  EXPECT_THROW(equation_of_time_min(0), InvalidInput);
  EXPECT_THROW(equation_of_time_min(367), InvalidInput);
  EXPECT_THROW(solar_time_h(181.0, 1, 12.0), InvalidInput);
  EXPECT_THROW(solar_time_h(0.0, 0, 12.0), InvalidInput);
  EXPECT_THROW(solar_time_h(0.0, 1, test::not_a_number), InvalidInput);
  EXPECT_THROW(sun_position(91.0, 0.0, 1, 12.0), InvalidInput);
  EXPECT_THROW(sun_position(test::not_a_number, 0.0, 1, 12.0), InvalidInput);
  EXPECT_THROW(sun_position(0.0, test::not_a_number, 1, 12.0), InvalidInput);
  EXPECT_THROW(sun_position(0.0, 0.0, 367, 12.0), InvalidInput);
  EXPECT_THROW(sun_position(0.0, 0.0, 1, 48.1), InvalidInput);
  EXPECT_THROW(sun_of_hour({91.0, 0.0, 0.0}, 1, 0), InvalidInput);
  EXPECT_THROW(sun_of_hour({0.0, -181.0, 0.0}, 1, 0), InvalidInput);
  EXPECT_THROW(sun_of_hour({0.0, 0.0, 14.5}, 1, 0), InvalidInput);
  EXPECT_THROW(sun_of_hour({0.0, 0.0, test::not_a_number}, 1, 0), InvalidInput);
  EXPECT_THROW(sun_of_hour({}, 0, 0), InvalidInput);
  EXPECT_THROW(sun_of_hour({}, 1, 24), InvalidInput);
  EXPECT_THROW(sun_of_hour({}, 1, -1), InvalidInput);
  EXPECT_THROW(extraterrestrial_normal_W_m2(0), InvalidInput);
}

}  // namespace
}  // namespace dewgap
