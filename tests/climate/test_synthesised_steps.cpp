// The steps of the synthesised year, and its days against two typical years.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <functional>
#include <map>
#include <numeric>
#include <stdexcept>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/climate/degree_days.hpp"
#include "dewgap/climate/places_kernel.hpp"
#include "dewgap/climate/spread_of_days_kernel.hpp"
#include "dewgap/climate/synthesised_year.hpp"
#include "dewgap/climate/synthesised_year_kernel.hpp"
#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

constexpr int seeds = 10;

// A typical year's monthly means as a place.
Place typical_year(std::string_view site) {
  const auto temperatures = test::read_reference("hourly_years/monthly.csv");
  const auto air = test::read_reference("hourly_years/air.csv");
  Place place;
  for (std::size_t row = 0; row < temperatures.row_count(); ++row) {
    if (temperatures.text(row, "site") == site) {
      place.latitude_deg = temperatures.number(row, "latitude_deg");
      place.months.at(static_cast<std::size_t>(temperatures.number(row, "month")) - 1) = {
          .mean_C = temperatures.number(row, "mean_C"),
          .max_C = temperatures.number(row, "max_C"),
          .min_C = temperatures.number(row, "min_C"),
          .global_kWh_m2_day = temperatures.number(row, "global_kWh_m2_day")};
    }
  }
  for (std::size_t row = 0; row < air.row_count(); ++row) {
    if (air.text(row, "site") == site) {
      auto& month = place.months.at(static_cast<std::size_t>(air.number(row, "month")) - 1);
      month.vapour_pressure_Pa = air.number(row, "vapour_pressure_Pa");
      month.wind_m_s = air.number(row, "wind_m_s");
    }
  }
  return place;
}

// Root mean square departure of a year's days from their months' means; relative to it when so wanted.
enum class Departure { absolute, relative };
double spread(const std::vector<double>& days, Departure departure) {
  const auto calendar = climate::calendar_of(24 * days.size());
  const auto means = climate::monthly_means_of_days(days, calendar);
  double squares = 0.0;
  for (std::size_t month = 0; month < 12; ++month) {
    for (std::size_t day = calendar.first_day[month]; day < calendar.first_day[month + 1]; ++day) {
      const double off = days[day] - means[month];
      squares += std::pow(departure == Departure::relative ? off / means[month] : off, 2);
    }
  }
  return std::sqrt(squares / static_cast<double>(days.size()));
}

double sum(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0);
}

double mean_step(const std::vector<double>& days) {
  double steps = 0.0;
  for (std::size_t day = 1; day < days.size(); ++day) {
    steps += std::abs(days[day] - days[day - 1]);
  }
  return steps / static_cast<double>(days.size() - 1);
}

std::vector<double> humidity_of_days(const HourlyYear& year) {
  const auto temperature_C = climate::daily_means_of(year.air_temperature_C);
  auto humidity = climate::daily_means_of(year.vapour_pressure_Pa);
  for (std::size_t day = 0; day < humidity.size(); ++day) {
    humidity[day] = relative_humidity(temperature_C[day], humidity[day]);
  }
  return humidity;
}

double damp_hours(const HourlyYear& year) {
  double hours = 0.0;
  for (std::size_t i = 0; i < year.air_temperature_C.size(); ++i) {
    hours += relative_humidity(year.air_temperature_C[i], year.vapour_pressure_Pa[i]) >= 0.98 ? 1.0 : 0.0;
  }
  return hours;
}

double figure(const HourlyYear& year, const std::string& quantity) {
  if (quantity == "temperature_sd_K") {
    return spread(climate::daily_means_of(year.air_temperature_C), Departure::absolute);
  }
  if (quantity == "temperature_step_K") {
    return mean_step(climate::daily_means_of(year.air_temperature_C));
  }
  if (quantity == "sun_relative_sd") {
    return spread(climate::daily_means_of(year.global_W_m2), Departure::relative);
  }
  if (quantity == "wind_relative_sd") {
    return spread(climate::daily_means_of(year.wind_m_s), Departure::relative);
  }
  if (quantity == "humidity_relative_sd") {
    return spread(humidity_of_days(year), Departure::relative);
  }
  if (quantity == "diffuse_share") {
    return sum(year.diffuse_W_m2) / sum(year.global_W_m2);
  }
  throw std::runtime_error("no such quantity: " + quantity);
}

// A figure's mean over the seeds of a site's synthesised years.
double mean_figure(std::string_view site, const std::function<double(const HourlyYear&)>& figure_of) {
  static std::map<std::string, std::vector<HourlyYear>, std::less<>> years;
  auto& of_site = years[std::string(site)];
  for (std::uint64_t seed = of_site.size() + 1; seed <= seeds; ++seed) {
    of_site.push_back(synthesised_year(typical_year(site), seed).hours);
  }
  double sum_of_figures = 0.0;
  for (const auto& year : of_site) {
    sum_of_figures += figure_of(year);
  }
  return sum_of_figures / seeds;
}

TEST(SynthesisedSteps, DaysAgainstTwoTypicalYears) {
  test::check_reference(
      "hourly_years/spread_of_days.csv",
      [](const test::ReferenceRow& row) {
        const auto& quantity = row.text("quantity");
        const double mean =
            mean_figure(row.text("site"), [&](const HourlyYear& year) { return figure(year, quantity); });
        std::printf("%s %s: %.3g, measured %.3g\n", row.text("site").c_str(), quantity.c_str(), mean,
                    row.number("expected"));
        return mean;
      },
      2.2);
}

TEST(SynthesisedSteps, DampHoursAgainstTwoTypicalYears) {
  test::check_reference(
      "hourly_years/damp_hours.csv",
      [](const test::ReferenceRow& row) {
        const double mean = mean_figure(row.text("site"), damp_hours);
        std::printf("%s damp hours: %.0f, measured %.0f\n", row.text("site").c_str(), mean,
                    row.number("expected"));
        return mean;
      },
      800.0);
}

TEST(SynthesisedSteps, MeanDayHasTheSwingOfOne) {
  double highest = -1.0;
  double lowest = 1.0;
  double sum_of_hours = 0.0;
  for (int i = 0; i < 24; ++i) {
    const double value = climate::mean_day_shape(i + 0.5);
    highest = std::max(highest, value);
    lowest = std::min(lowest, value);
    sum_of_hours += value;
  }
  EXPECT_NEAR(highest - lowest, 1.0, 0.03);
  EXPECT_NEAR(sum_of_hours, 0.0, 1e-12);
  EXPECT_EQ(climate::mean_day_shape(15.5), highest);
  EXPECT_EQ(climate::mean_day_shape(5.5), lowest);
}

// Schoenau and Kehrig's degree-days to the mean itself are N s / sqrt(2 pi): both files have the same spread.
TEST(SynthesisedSteps, SpreadOfDaysIsThatOfTheDegreeDays) {
  for (const auto& place : places()) {
    const double yearly_K = yearly_sd_K(place);
    for (std::size_t i = 0; i < 12; ++i) {
      const auto& month = place.months[i];
      const double degree_days = monthly_degree_days_Kd(month, days_of_month[i], month.mean_C, yearly_K,
                                                        DegreeDayMethod::schoenau_kehrig);
      EXPECT_NEAR(climate::spread_of_days_K(month.mean_C, days_of_month[i], yearly_K),
                  degree_days * std::sqrt(2.0 * climate::pi) / days_of_month[i], 1e-12);
    }
  }
}

TEST(SynthesisedSteps, EachMonthHasAllQuantilesInCorrelatedOrder) {
  const auto calendar = climate::calendar_of(8760);
  for (const double lag_one : {0.0, 0.75}) {
    double product = 0.0;
    double square = 0.0;
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
      const auto u = climate::day_quantiles(seed, climate::DaySeries::temperature, lag_one);
      for (std::size_t month = 0; month < 12; ++month) {
        std::vector<double> sorted(u.begin() + static_cast<std::ptrdiff_t>(calendar.first_day[month]),
                                   u.begin() + static_cast<std::ptrdiff_t>(calendar.first_day[month + 1]));
        for (std::size_t i = 0; i + 1 < sorted.size(); ++i) {
          product += (sorted[i] - 0.5) * (sorted[i + 1] - 0.5);
          square += (sorted[i] - 0.5) * (sorted[i] - 0.5);
        }
        std::sort(sorted.begin(), sorted.end());
        for (std::size_t i = 0; i < sorted.size(); ++i) {
          ASSERT_NEAR(sorted[i], (static_cast<double>(i) + 0.5) / static_cast<double>(sorted.size()), 1e-15);
        }
      }
    }
    // Removing a month's mean takes some of the correlation: up to a tenth at 0.75.
    EXPECT_LT(product / square, lag_one + 0.02);
    EXPECT_GT(product / square, lag_one - 0.15);
  }
  EXPECT_THROW(climate::day_quantiles(1, climate::DaySeries::wind, 1.0), InvalidInput);
}

TEST(SynthesisedSteps, ClearnessOfDaysKeepsMeanAndBounds) {
  std::vector<double> u;
  std::vector<double> weights;
  for (int i = 0; i < 30; ++i) {
    u.push_back((i + 0.5) / 30.0);
    weights.push_back(1.0 + 0.02 * i);
  }
  for (const double mean : {1e-6, 0.02, 0.1, 0.3, 0.45, 0.6, 0.75, 0.8}) {
    const auto clearness = climate::clearness_of_days(mean, u, weights);
    const double weighted = std::inner_product(clearness.begin(), clearness.end(), weights.begin(), 0.0);
    EXPECT_NEAR(weighted / sum(weights), mean, 1e-14);
    EXPECT_GT(clearness.front(), 0.0);
    EXPECT_LT(clearness.back(), 0.86);
    EXPECT_TRUE(std::is_sorted(clearness.begin(), clearness.end()));
  }
  for (const double bad : {0.0, -0.1, 0.81, test::not_a_number}) {
    EXPECT_THROW(climate::clearness_of_days(bad, u, weights), InvalidInput);
  }
}

TEST(SynthesisedSteps, DailyDiffuseShare) {
  EXPECT_NEAR(climate::daily_diffuse_share(0.715 - 1e-9, 1.2), climate::daily_diffuse_share(0.715, 1.2),
              0.002);
  EXPECT_NEAR(climate::daily_diffuse_share(0.722 - 1e-9, 1.7), climate::daily_diffuse_share(0.722, 1.7),
              0.016);
  for (const double sunset : {1.2, 1.7}) {
    EXPECT_EQ(climate::daily_diffuse_share(0.0, sunset), 1.0);
    for (double k = 0.2; k < 0.70; k += 0.01) {
      EXPECT_GT(climate::daily_diffuse_share(k, sunset), climate::daily_diffuse_share(k + 0.01, sunset));
    }
    EXPECT_THROW(climate::daily_diffuse_share(1.1, sunset), InvalidInput);
  }
}

TEST(SynthesisedSteps, CloudFromClearness) {
  EXPECT_EQ(climate::cloud_cover_of_clearness(0.75), 0.0);
  EXPECT_EQ(climate::cloud_cover_of_clearness(0.25), 1.0);
  EXPECT_EQ(climate::cloud_cover_of_clearness(0.1), 1.0);
  EXPECT_NEAR(climate::cloud_cover_of_clearness(0.5), 0.5, 1e-15);
}

// Rayleigh: standard deviation over mean sqrt(4 / pi - 1) = 0.523; thirty mid-quantiles lack the tail.
TEST(SynthesisedSteps, WindHasRayleighsSpread) {
  climate::MonthlyValues calm{};
  calm.fill(4.0);
  calm[5] = 0.0;
  const auto hourly = climate::wind_course(calm, 1);
  EXPECT_EQ(*std::max_element(hourly.begin() + 24 * 151, hourly.begin() + 24 * 181), 0.0);
  calm[5] = 4.0;
  EXPECT_NEAR(spread(climate::daily_means_of(climate::wind_course(calm, 1)), Departure::relative), 0.523,
              0.015);
}

}  // namespace
}  // namespace dewgap
