// The synthesised wind: days as they were drawn, joined without steps.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numeric>

#include "dewgap/climate/places_kernel.hpp"
#include "dewgap/climate/synthesised_year.hpp"
#include "dewgap/climate/synthesised_year_kernel.hpp"

namespace dewgap {
namespace {

constexpr std::uint64_t seeds = 10;
constexpr double wind_lag_one = 0.25;  // as the header has it

climate::MonthlyValues winds_of(const Place& place) {
  climate::MonthlyValues winds{};
  for (std::size_t month = 0; month < winds.size(); ++month)
    winds[month] = place.months[month].wind_m_s.value_or(default_wind_m_s);
  return winds;
}

/// Daily means as they are drawn: Rayleigh's quantiles over their month's mean, times the normal.
std::vector<double> drawn_days(const climate::MonthlyValues& winds, std::uint64_t seed) {
  auto days = climate::day_quantiles(seed, climate::DaySeries::wind, wind_lag_one);
  for (auto& day : days) day = std::sqrt(-std::log(1.0 - day));
  const auto calendar = climate::calendar_of(8760);
  for (std::size_t month = 0; month < 12; ++month) {
    const auto first = days.begin() + static_cast<std::ptrdiff_t>(calendar.first_day[month]);
    const auto end = days.begin() + static_cast<std::ptrdiff_t>(calendar.first_day[month + 1]);
    const double mean = std::accumulate(first, end, 0.0) / static_cast<double>(end - first);
    std::for_each(first, end, [&](double& day) { day *= winds[month] / mean; });
  }
  return days;
}

double mean_of(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

double spread_of(const std::vector<double>& values) {
  const double mean = mean_of(values);
  double squares = 0.0;
  for (const double value : values) squares += (value - mean) * (value - mean);
  return std::sqrt(squares / static_cast<double>(values.size()));
}

double largest_step_of(const std::vector<double>& hours) {
  double largest = 0.0;
  for (std::size_t i = 0; i < hours.size(); ++i)
    largest = std::max(largest, std::abs(hours[(i + 1) % hours.size()] - hours[i]));
  return largest;
}

TEST(SynthesisedWind, KeepsTheDaysThatWereDrawn) {
  for (const auto& place : places())
    for (std::uint64_t seed = 1; seed <= seeds; ++seed) {
      const auto winds = winds_of(place);
      const auto days = climate::daily_means_of(climate::wind_course(winds, seed));
      const auto drawn = drawn_days(winds, seed);
      ASSERT_EQ(days.size(), drawn.size());
      for (std::size_t day = 0; day < days.size(); ++day)
        ASSERT_NEAR(days[day], drawn[day], 1e-12 * drawn[day] + 1e-12) << place.key << day;
    }
}

TEST(SynthesisedWind, HoursLieBetweenCalmAndTwiceTheirDay) {
  for (const auto& place : places())
    for (std::uint64_t seed = 1; seed <= seeds; ++seed) {
      const auto hours = climate::wind_course(winds_of(place), seed);
      const auto days = climate::daily_means_of(hours);
      for (std::size_t hour = 0; hour < hours.size(); ++hour) {
        ASSERT_GT(hours[hour], 0.0) << place.key << hour;
        ASSERT_LE(hours[hour], 2.0 * days[hour / 24]) << place.key << hour;
      }
    }
}

// Constant days would step by up to two and a half times the mean at midnight, and by half of it on average.
TEST(SynthesisedWind, RunsOnWithoutSteps) {
  double widest = 0.0;
  double largest_step = 0.0;
  for (const auto& place : places())
    for (std::uint64_t seed = 1; seed <= seeds; ++seed) {
      const auto hours = climate::wind_course(winds_of(place), seed);
      widest = std::max(widest, spread_of(hours) / spread_of(climate::daily_means_of(hours)));
      largest_step = std::max(largest_step, largest_step_of(hours) / mean_of(hours));
    }
  std::printf("spread of hours over that of days: at most %.3f; largest step over the mean: %.3f\n", widest,
              largest_step);
  EXPECT_GE(widest, 1.0);
  EXPECT_LT(widest, 1.07);  // the header's figures
  EXPECT_LT(largest_step, 0.45);
}

TEST(SynthesisedWind, AStillMonthIsStill) {
  climate::MonthlyValues winds{};
  winds.fill(4.0);
  winds[5] = 0.0;
  const auto hours = climate::wind_course(winds, 1);
  const auto calendar = climate::calendar_of(8760);
  for (std::size_t hour = 24 * calendar.first_day[5]; hour < 24 * calendar.first_day[6]; ++hour)
    EXPECT_EQ(hours[hour], 0.0) << hour;
}

}  // namespace
}  // namespace dewgap
