#include "dewgap/climate/hourly_year.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "dewgap/climate/year_calendar_kernel.hpp"
#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

HourlyYear steady_year(std::size_t hours = 8760) {
  HourlyYear year{.site = {51.5, 0.0, 0.0}, .source = "made for a test"};
  year.air_temperature_C.assign(hours, 10.0);
  year.vapour_pressure_Pa.assign(hours, 900.0);
  year.wind_m_s.assign(hours, 3.0);
  year.global_W_m2.assign(hours, 100.0);
  year.beam_normal_W_m2.assign(hours, 0.0);
  year.diffuse_W_m2.assign(hours, 100.0);
  return year;
}

TEST(HourlyYear, SteadyYearReturnsItsValues) {
  for (const std::size_t hours : {8760u, 8784u}) {
    const auto place = monthly_means(steady_year(hours));
    for (const auto& month : place.months) {
      EXPECT_NEAR(month.mean_C, 10.0, 1e-12);
      EXPECT_EQ(month.max_C, 10.0);
      EXPECT_EQ(month.min_C, 10.0);
      EXPECT_NEAR(*month.vapour_pressure_Pa, 900.0, 1e-9);
      EXPECT_NEAR(*month.wind_m_s, 3.0, 1e-12);
      EXPECT_NEAR(*month.global_kWh_m2_day, 2.4, 1e-12);
      EXPECT_FALSE(month.sunshine_h.has_value());
    }
    EXPECT_EQ(place.latitude_deg, 51.5);
    EXPECT_EQ(place.source, "made for a test");
    EXPECT_EQ(place.status, "means of a year of hours");
  }
}

TEST(HourlyYear, ADaysExtremesAreItsOwn) {
  auto year = steady_year();
  year.vapour_pressure_Pa.assign(8760, 500.0);
  // 31 January, first and last hour; 1 February, first hour.
  year.air_temperature_C[24 * 30] = 13.1;
  year.air_temperature_C[24 * 30 + 23] = 3.8;
  year.air_temperature_C[24 * 31] = 38.0;
  const auto place = monthly_means(year);
  EXPECT_NEAR(place.months[0].max_C, 10.0 + 3.1 / 31.0, 1e-12);
  EXPECT_NEAR(place.months[0].min_C, 10.0 - 6.2 / 31.0, 1e-12);
  EXPECT_NEAR(place.months[1].max_C, 11.0, 1e-12);
  EXPECT_EQ(place.months[1].min_C, 10.0);
}

TEST(HourlyYear, ALeapDayBelongsToFebruary) {
  auto year = steady_year(8784);
  for (std::size_t hour = 24 * 59; hour < 24 * 60; ++hour) {
    year.wind_m_s[hour] = 3.0 + 29.0;
  }
  const auto place = monthly_means(year);
  EXPECT_NEAR(*place.months[1].wind_m_s, 4.0, 1e-12);
  EXPECT_NEAR(*place.months[2].wind_m_s, 3.0, 1e-12);
}

TEST(HourlyYear, StatusSaysWhatWasModelled) {
  auto year = steady_year();
  year.modelled.wind = true;
  year.modelled.sun = true;
  EXPECT_EQ(monthly_means(year).status, "means of a year of hours; modelled: wind, sun");
}

TEST(HourlyYear, PlaneThroughTheYear) {
  auto year = steady_year();
  year.beam_normal_W_m2[24 * 171 + 12] = 500.0;
  const auto flat = plane_irradiance_of_year(year, {0.0, 180.0});
  const auto north = plane_irradiance_of_year(year, {90.0, 0.0}, 0.0);
  ASSERT_EQ(flat.size(), 8760u);
  const double sine =
      std::sin(sun_of_hour(year.site, 172, 12).position.altitude_deg * std::numbers::pi / 180.0);
  EXPECT_NEAR(flat[24 * 171 + 12].total_W_m2(), 100.0 + 500.0 * sine, 1e-10);
  EXPECT_NEAR(flat[0].total_W_m2(), 100.0, 1e-12);
  EXPECT_NEAR(north[24 * 171 + 12].total_W_m2(), 50.0, 1e-10);  // noon's sun stands behind it
  EXPECT_THROW(plane_irradiance_of_year(year, {181.0, 0.0}), InvalidInput);
  EXPECT_THROW(plane_irradiance_of_year(year, {}, -0.1), InvalidInput);
  EXPECT_THROW(plane_irradiance_of_year(HourlyYear{}, {}), InvalidInput);
}

// One wrong value in one hour of each column is found.
TEST(HourlyYear, RefusesAWrongHourInAnyColumn) {
  struct Fault {
    std::vector<double> HourlyYear::*column;
    double value;
  };
  for (const auto& fault :
       {Fault{&HourlyYear::air_temperature_C, 60.1}, Fault{&HourlyYear::air_temperature_C, -80.1},
        Fault{&HourlyYear::vapour_pressure_Pa, -1.0}, Fault{&HourlyYear::vapour_pressure_Pa, 1300.0},
        Fault{&HourlyYear::wind_m_s, -0.1}, Fault{&HourlyYear::wind_m_s, 121.0},
        Fault{&HourlyYear::global_W_m2, 1501.0}, Fault{&HourlyYear::beam_normal_W_m2, 1451.0},
        Fault{&HourlyYear::diffuse_W_m2, -0.1}}) {
    for (const double value : {fault.value, test::not_a_number}) {
      auto year = steady_year();
      (year.*fault.column)[4000] = value;
      EXPECT_THROW(require_valid(year), InvalidInput) << value;
      EXPECT_THROW(monthly_means(year), InvalidInput);
    }
    auto short_column = steady_year();
    (short_column.*fault.column).pop_back();
    EXPECT_THROW(require_valid(short_column), InvalidInput);
  }
}

TEST(HourlyYear, RefusesAWrongOptionalColumn) {
  for (const auto column :
       {&HourlyYear::wind_direction_deg, &HourlyYear::cloud_cover, &HourlyYear::sky_temperature_C}) {
    auto year = steady_year();
    (year.*column).assign(8760, 0.5);
    EXPECT_NO_THROW(require_valid(year));
    (year.*column)[8759] = 361.0;
    EXPECT_THROW(require_valid(year), InvalidInput);
    (year.*column).assign(12, 0.5);
    EXPECT_THROW(require_valid(year), InvalidInput);
  }
}

TEST(HourlyYear, MessageNamesColumnAndHour) {
  auto year = steady_year();
  year.wind_m_s[17] = test::not_a_number;
  try {
    require_valid(year);
    FAIL();
  } catch (const InvalidInput& error) {
    EXPECT_EQ(error.field(), "wind_m_s of hour 17");
  }
}

TEST(HourlyYear, RefusesOtherYearsAndPlaces) {
  EXPECT_THROW(require_valid(HourlyYear{}), InvalidInput);
  EXPECT_THROW(require_valid(steady_year(8761)), InvalidInput);
  auto year = steady_year();
  year.site.latitude_deg = 95.0;
  EXPECT_THROW(require_valid(year), InvalidInput);
  year = steady_year();
  year.elevation_m = test::not_a_number;
  EXPECT_THROW(require_valid(year), InvalidInput);
}

TEST(MonthLine, HasTheMeansItWasMadeFor) {
  const climate::MonthLine line;
  const climate::MonthlyValues means{-3.0, -2.0, 2.0, 8.0, 13.0, 17.0, 20.0, 19.0, 14.0, 9.0, 3.0, -1.0};
  const auto hourly = line.hourly(line.nodes_with_means(means));
  const auto back = climate::monthly_means_of(hourly, climate::calendar_of(hourly.size()));
  double largest_step = std::abs(hourly.front() - hourly.back());
  for (std::size_t hour = 1; hour < hourly.size(); ++hour) {
    largest_step = std::max(largest_step, std::abs(hourly[hour] - hourly[hour - 1]));
  }
  for (std::size_t month = 0; month < 12; ++month) {
    EXPECT_NEAR(back[month], means[month], 1e-12);
  }
  EXPECT_LT(largest_step, 0.02);  // no steps: at most 10 K a month
}

TEST(ThroughDays, IsStraightAndJoinsTheEnds) {
  std::vector<double> days(365, 1.0);
  days[364] = 25.0;
  const auto hourly = climate::through_days(days);
  ASSERT_EQ(hourly.size(), 8760u);
  EXPECT_NEAR(hourly[8759] - hourly[0], 1.0, 1e-12);
  EXPECT_NEAR(hourly[8747] + hourly[8748], 2.0 * 24.5, 1e-12);
  EXPECT_EQ(hourly[4000], 1.0);
}

}  // namespace
}  // namespace dewgap
