// Vapour pressure of the synthesised year, never above saturation over water.
#include <algorithm>
#include <cmath>
#include <numeric>

#include "dewgap/air/saturation.hpp"
#include "dewgap/climate/synthesised_year_kernel.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap::climate {
namespace {

constexpr double humidity_lag_one = 0.50;  // our convention
constexpr double humidity_spread = 0.65;   // relative standard deviation over (1 - relative humidity)

std::vector<double> saturation_over_water_Pa(std::span<const double> temperatures_C) {
  std::vector<double> saturation_Pa(temperatures_C.size());
  std::transform(temperatures_C.begin(), temperatures_C.end(), saturation_Pa.begin(),
                 [](double temperature_C) {
                   return saturation_pressure_Pa(temperature_C, SaturationFormula::murphy_koop, Phase::water);
                 });
  return saturation_Pa;
}

// Vapour pressure of each day but for the month's factor: relative humidity times saturation at its mean.
std::vector<double> unscaled_days_Pa(const MonthlyValues& mean_Pa, std::span<const double> hourly_C,
                                     std::uint64_t seed) {
  const MonthLine line;
  auto days_Pa = saturation_over_water_Pa(daily_means_of(hourly_C));
  auto humidity = monthly_means_of_days(days_Pa, calendar_of(hourly_C.size()));
  for (std::size_t month = 0; month < 12; ++month) {
    humidity[month] = std::min(1.0, mean_Pa[month] / humidity[month]);
  }
  const auto quantiles = day_quantiles(seed, DaySeries::humidity, humidity_lag_one);
  for (std::size_t day = 0; day < days_Pa.size(); ++day) {
    const double of_season = line.at_hour(humidity, hours_per_day * day + hours_per_day / 2);
    const double spread = humidity_spread * (1.0 - of_season);
    days_Pa[day] *= of_season * std::exp(spread * numerics::normal_quantile(quantiles[day]));
  }
  return days_Pa;
}

// Scales a month's hours to the mean wanted, none above its saturation. Each round holds more hours at
// saturation and scales the rest; it ends when no further hour exceeds it.
std::vector<double> limited_month_Pa(std::span<const double> unscaled_Pa, std::span<const double> most_Pa,
                                     double wanted_Pa) {
  const double total_Pa = wanted_Pa * static_cast<double>(unscaled_Pa.size());
  std::vector<double> hours_Pa(unscaled_Pa.begin(), unscaled_Pa.end());
  std::vector<bool> held(hours_Pa.size(), false);
  for (bool changed = true; changed;) {
    double held_Pa = 0.0;
    double free_Pa = 0.0;
    for (std::size_t i = 0; i < hours_Pa.size(); ++i) {
      (held[i] ? held_Pa : free_Pa) += held[i] ? most_Pa[i] : unscaled_Pa[i];
    }
    changed = false;
    for (std::size_t i = 0; i < hours_Pa.size(); ++i) {
      const double scaled_Pa = held[i] ? most_Pa[i] : unscaled_Pa[i] * (total_Pa - held_Pa) / free_Pa;
      const bool exceeds = !held[i] && scaled_Pa > most_Pa[i];
      held[i] = held[i] || exceeds;
      changed = changed || exceeds;
      hours_Pa[i] = exceeds ? most_Pa[i] : scaled_Pa;
    }
  }
  return hours_Pa;
}

}  // namespace

VapourCourse vapour_course(const MonthlyValues& mean_Pa, std::span<const double> hourly_C,
                           std::uint64_t seed) {
  const auto calendar = calendar_of(hourly_C.size());
  const auto unscaled_Pa = through_days(unscaled_days_Pa(mean_Pa, hourly_C, seed));
  const auto most_Pa = saturation_over_water_Pa(hourly_C);
  VapourCourse course;
  course.hourly_Pa.reserve(hourly_C.size());
  for (std::size_t month = 0; month < 12; ++month) {
    const auto first = hours_per_day * calendar.first_day[month];
    const auto count = hours_per_day * calendar.days_in(month);
    const auto hours_Pa = limited_month_Pa(std::span(unscaled_Pa).subspan(first, count),
                                           std::span(most_Pa).subspan(first, count), mean_Pa[month]);
    course.hourly_Pa.insert(course.hourly_Pa.end(), hours_Pa.begin(), hours_Pa.end());
  }
  const auto reached_Pa = monthly_means_of(course.hourly_Pa, calendar);
  for (std::size_t month = 0; month < 12; ++month) {
    course.largest_deviation =
        std::max(course.largest_deviation, std::abs(reached_Pa[month] / mean_Pa[month] - 1.0));
  }
  return course;
}

}  // namespace dewgap::climate
