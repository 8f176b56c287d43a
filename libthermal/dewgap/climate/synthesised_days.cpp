// The order and spread of the days, and the wind, which runs on from day to day.
#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "dewgap/climate/places_kernel.hpp"
#include "dewgap/climate/synthesised_year_kernel.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/numerics/sampling.hpp"
#include "dewgap/numerics/split_mix.hpp"

namespace dewgap::climate {
namespace {

constexpr double wind_lag_one = 0.25;  // our convention
constexpr double weibull_shape = 2.0;

// z[d] = r z[d-1] + sqrt(1 - r^2) e[d], round and round through the same year until it closes on itself.
std::vector<double> autoregressive_days(std::uint64_t seed, DaySeries series, double lag_one) {
  numerics::SplitMix64 random(numerics::SplitMix64(seed).next() + static_cast<std::uint64_t>(series));
  std::vector<double> days(hours_of_common_year / hours_per_day);
  for (double& day : days) {
    day = std::sqrt(1.0 - lag_one * lag_one) * numerics::normal_quantile(random.inside_unit_interval());
  }
  // The day before the first, from the whole year's innovations: r^365 is nothing for any r here.
  double before = 0.0;
  for (const double innovation : days) {
    before = lag_one * before + innovation;
  }
  for (double& day : days) {
    before = lag_one * before + day;
    day = before;
  }
  return days;
}

}  // namespace

std::vector<double> day_quantiles(std::uint64_t seed, DaySeries series, double lag_one) {
  require_in_range(lag_one, {0.0, 0.95}, "lag_one", "");
  const auto calendar = calendar_of(hours_of_common_year);
  const auto days = autoregressive_days(seed, series, lag_one);
  std::vector<double> quantiles(days.size());
  for (std::size_t month = 0; month < 12; ++month) {
    std::vector<std::size_t> order(calendar.days_in(month));
    std::iota(order.begin(), order.end(), calendar.first_day[month]);
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return days[a] < days[b]; });
    for (std::size_t rank = 0; rank < order.size(); ++rank) {
      quantiles[order[rank]] = (static_cast<double>(rank) + 0.5) / static_cast<double>(order.size());
    }
  }
  return quantiles;
}

namespace {

/// At the midnight between two days: their geometric mean, at most twice the calmer day's, so that the day's
/// parabola stays above 0.
double midnight_wind_m_s(double before_m_s, double after_m_s) {
  return std::min(std::sqrt(before_m_s * after_m_s), 2.0 * std::min(before_m_s, after_m_s));
}

/// A day's hourly means: the parabola through both midnights whose mean is the day's.
std::array<double, hours_per_day> hours_of_windy_day(double from_m_s, double mean_m_s, double to_m_s) {
  // f(x) = a + b x + c x^2, its integral from 0 to x is a x + b x^2 / 2 + c x^3 / 3.
  const double b = 6.0 * mean_m_s - 4.0 * from_m_s - 2.0 * to_m_s;
  const double c = 3.0 * (from_m_s + to_m_s) - 6.0 * mean_m_s;
  const auto integral = [&](double x) { return x * (from_m_s + x * (b / 2.0 + x * c / 3.0)); };
  std::array<double, hours_per_day> hours{};
  constexpr double day_h = hours_per_day;
  for (std::size_t hour = 0; hour < hours.size(); ++hour) {
    const double start = static_cast<double>(hour) / day_h;
    const double end = static_cast<double>(hour + 1) / day_h;
    hours[hour] = std::max(0.0, day_h * (integral(end) - integral(start)));  // rounding
  }
  return hours;
}

}  // namespace

std::vector<double> wind_course(const MonthlyValues& mean_m_s, std::uint64_t seed) {
  const auto calendar = calendar_of(hours_of_common_year);
  const auto quantiles = day_quantiles(seed, DaySeries::wind, wind_lag_one);
  std::vector<double> factors(quantiles.size());
  for (std::size_t day = 0; day < factors.size(); ++day) {
    // Quantile of the Weibull distribution; its scale falls out below.
    factors[day] = std::pow(-std::log1p(-quantiles[day]), 1.0 / weibull_shape);
  }
  const auto means = monthly_means_of_days(factors, calendar);
  std::vector<double> daily_m_s;
  daily_m_s.reserve(factors.size());
  for (std::size_t month = 0; month < 12; ++month) {
    for (std::size_t day = calendar.first_day[month]; day < calendar.first_day[month + 1]; ++day) {
      daily_m_s.push_back(mean_m_s[month] * factors[day] / means[month]);
    }
  }
  std::vector<double> hourly_m_s;
  hourly_m_s.reserve(hours_of_common_year);
  for (std::size_t day = 0; day < daily_m_s.size(); ++day) {
    const double before_m_s = daily_m_s[day == 0 ? daily_m_s.size() - 1 : day - 1];
    const double after_m_s = daily_m_s[day + 1 == daily_m_s.size() ? 0 : day + 1];
    const auto hours = hours_of_windy_day(midnight_wind_m_s(before_m_s, daily_m_s[day]), daily_m_s[day],
                                          midnight_wind_m_s(daily_m_s[day], after_m_s));
    hourly_m_s.insert(hourly_m_s.end(), hours.begin(), hours.end());
  }
  return hourly_m_s;
}

}  // namespace dewgap::climate
