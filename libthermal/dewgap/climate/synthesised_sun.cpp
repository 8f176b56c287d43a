// Sun and cloud of the synthesised year.
#include <algorithm>
#include <cmath>
#include <numeric>

#include "dewgap/climate/solar_position_kernel.hpp"
#include "dewgap/climate/synthesised_year_kernel.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/numerics/root_finding.hpp"

namespace dewgap::climate {
namespace {

constexpr double clearness_lag_one = 0.40;     // our convention
constexpr double clearness_without_sun = 0.4;  // our convention, for the cloud of dark months
constexpr double W_per_kWh_a_day = 1000.0 / 24.0;

/// Range and shape of the days' clearness: density proportional to exp(exponent k).
struct ClearnessSpread {
  double least;
  double most;
};

ClearnessSpread clearness_spread(double mean) {
  // Duffie and Beckman eq. 2.9.6c for the clearest day, from memory; below 0.3 as at 0.3 (our convention).
  const double k = std::max(mean, 0.3);
  return {std::min(0.05, 0.5 * mean), 0.6313 + 0.267 * k - 11.9 * std::pow(k - 0.75, 8)};
}

// Inverse of Bendt's cumulative distribution, from whichever end keeps the exponentials small.
double clearness_quantile(const ClearnessSpread& spread, double exponent, double u) {
  const double steepness = exponent * (spread.most - spread.least);
  if (std::abs(steepness) < 1e-9) {
    return spread.least + u * (spread.most - spread.least);
  }
  return steepness < 0.0 ? spread.least + std::log1p(u * std::expm1(steepness)) / exponent
                         : spread.most + std::log1p((1.0 - u) * std::expm1(-steepness)) / exponent;
}

/// Extraterrestrial and unscaled global energy of each hour of a day.
struct DayOfSun {
  SunPath path;
  double normal_W_m2 = 0.0;
  std::array<double, hours_per_day> outside_W_m2{};
  std::array<double, hours_per_day> shape{};
  double outside_day_W_m2() const {
    return std::accumulate(outside_W_m2.begin(), outside_W_m2.end(), 0.0) / 24.0;
  }
};

// Integral of (a + b cos w)(constant + cosine cos w): Collares-Pereira and Rabl's share of an hour.
double shape_integral(const SunPath& path, double a, double b, double w) {
  return a * path.constant_part * w + (a * path.cosine_part + b * path.constant_part) * std::sin(w) +
         b * path.cosine_part * (0.5 * w + 0.25 * std::sin(2.0 * w));
}

DayOfSun day_of_sun(const SunSite& site, int day_of_year) {
  DayOfSun day{.path = sun_path(site, day_of_year), .normal_W_m2 = extraterrestrial_normal_W_m2(day_of_year)};
  // Collares-Pereira and Rabl 1979, from memory.
  const double a = 0.409 + 0.5016 * std::sin(day.path.sunset_rad - radians(60.0));
  const double b = 0.6609 - 0.4767 * std::sin(day.path.sunset_rad - radians(60.0));
  for (std::size_t hour = 0; hour < hours_per_day; ++hour) {
    const auto lit = day.path.lit_part(static_cast<int>(hour));
    if (lit.is_dark()) {
      continue;
    }
    day.outside_W_m2[hour] = day.normal_W_m2 * lit.share_of_hour() * day.path.mean_sine(lit);
    day.shape[hour] =
        shape_integral(day.path, a, b, lit.end_rad) - shape_integral(day.path, a, b, lit.begin_rad);
  }
  const double whole = std::accumulate(day.shape.begin(), day.shape.end(), 0.0);
  for (double& share : day.shape) {
    share = whole > 0.0 ? share / whole : 0.0;
  }
  return day;
}

std::vector<DayOfSun> days_of_year(const SunSite& site) {
  std::vector<DayOfSun> days;
  for (std::size_t day = 0; day < hours_of_common_year / hours_per_day; ++day) {
    days.push_back(day_of_sun(site, static_cast<int>(day) + 1));
  }
  return days;
}

// Clearness of a month's days, whose extraterrestrial means are given, for its mean global irradiance.
std::vector<double> clearness_of_month(double global_W_m2, std::span<const double> outside_W_m2,
                                       std::span<const double> quantiles) {
  if (global_W_m2 == 0.0) {
    const std::vector<double> alike(quantiles.size(), 1.0);
    return clearness_of_days(clearness_without_sun, quantiles, alike);
  }
  const double mean_outside_W_m2 = std::accumulate(outside_W_m2.begin(), outside_W_m2.end(), 0.0) /
                                   static_cast<double>(outside_W_m2.size());
  if (mean_outside_W_m2 <= 0.0) {
    throw InvalidInput("global_kWh_m2_day", "there is radiation in a month without sun");
  }
  return clearness_of_days(global_W_m2 / mean_outside_W_m2, quantiles, outside_W_m2);
}

// Beam and diffuse of each hour: Liu and Jordan's shares of the day's diffuse, as in sun.cpp; where the fits
// cross, near sunset, all is diffuse.
void append_day(SunCourse& course, const DayOfSun& day, double clearness, double outside_day_W_m2) {
  const double share = daily_diffuse_share(clearness, day.path.sunset_rad);
  for (std::size_t hour = 0; hour < hours_per_day; ++hour) {
    const double global_W_m2 = 24.0 * clearness * outside_day_W_m2 * day.shape[hour];
    const double diffuse_W_m2 = std::min(global_W_m2, share * clearness * day.outside_W_m2[hour]);
    const auto lit = day.path.lit_part(static_cast<int>(hour));
    course.global_W_m2.push_back(global_W_m2);
    course.diffuse_W_m2.push_back(diffuse_W_m2);
    course.beam_normal_W_m2.push_back(lit.is_dark() ? 0.0
                                                    : (global_W_m2 - diffuse_W_m2) / day.path.mean_sine(lit));
  }
}

}  // namespace

std::vector<double> clearness_of_days(double mean, std::span<const double> quantiles,
                                      std::span<const double> weights) {
  require_in_range(mean, {1e-9, 0.8}, "clearness of a month", "");
  const auto spread = clearness_spread(mean);
  const double total = std::accumulate(weights.begin(), weights.end(), 0.0);
  const auto days = [&](double exponent) {
    std::vector<double> clearness(quantiles.size());
    std::transform(quantiles.begin(), quantiles.end(), clearness.begin(),
                   [&](double u) { return clearness_quantile(spread, exponent, u); });
    return clearness;
  };
  const auto weighted_mean = [&](const std::vector<double>& clearness) {
    return std::inner_product(clearness.begin(), clearness.end(), weights.begin(), 0.0) / total;
  };
  // The mean rises with the exponent. Far out the days crowd within a tenth of the mean of either end.
  const auto excess = [&](double exponent) { return weighted_mean(days(exponent)) - mean; };
  const double low = -50.0 - 40.0 / mean;
  const double high = 50.0 + 40.0 / (spread.most - mean);
  const auto found = numerics::find_root(excess, low, high, {.absolute_tolerance = 1e-13 * (high - low)});
  if (found.status != SolveStatus::converged) {
    throw InvalidInput("clearness of a month", "no spread of days has this mean");
  }
  auto clearness = days(found.root);
  const double exactly = mean / weighted_mean(clearness);  // 1 but for the root's tolerance
  for (double& day : clearness) {
    day *= exactly;
  }
  return clearness;
}

double daily_diffuse_share(double clearness, double sunset_hour_angle_rad) {
  require_in_range(clearness, {0.0, 1.0}, "clearness", "");
  const double k = clearness;
  // Erbs, Klein and Duffie 1982, daily; Duffie and Beckman eq. 2.11.1. From memory.
  if (degrees(sunset_hour_angle_rad) <= 81.4) {
    return k < 0.715 ? 1.0 + k * (-0.2727 + k * (2.4495 + k * (-11.9514 + k * 9.3879))) : 0.143;
  }
  return k < 0.722 ? 1.0 + k * (0.2832 + k * (-2.5557 + k * 0.8448)) : 0.175;
}

double cloud_cover_of_clearness(double clearness) {
  // Angstrom and Prescott solved for the share of sunshine; cloud is what it lacks (our convention).
  return std::clamp(1.0 - (clearness - 0.25) / 0.50, 0.0, 1.0);
}

SunCourse sun_course(const SunSite& site, const MonthlyValues& global_kWh_m2_day, std::uint64_t seed) {
  const auto calendar = calendar_of(hours_of_common_year);
  const auto days = days_of_year(site);
  const auto quantiles = day_quantiles(seed, DaySeries::clearness, clearness_lag_one);
  std::vector<double> outside_W_m2(days.size());
  std::transform(days.begin(), days.end(), outside_W_m2.begin(),
                 [](const DayOfSun& day) { return day.outside_day_W_m2(); });
  SunCourse course;
  for (std::size_t month = 0; month < 12; ++month) {
    const double global_W_m2 = W_per_kWh_a_day * global_kWh_m2_day[month];
    const auto first = calendar.first_day[month];
    const auto count = calendar.days_in(month);
    const auto clearness = clearness_of_month(global_W_m2, std::span(outside_W_m2).subspan(first, count),
                                              std::span(quantiles).subspan(first, count));
    for (std::size_t i = 0; i < count; ++i) {
      append_day(course, days[first + i], clearness[i], global_W_m2 > 0.0 ? outside_W_m2[first + i] : 0.0);
      course.cloud_cover.insert(course.cloud_cover.end(), hours_per_day,
                                cloud_cover_of_clearness(clearness[i]));
    }
  }
  return course;
}

}  // namespace dewgap::climate
