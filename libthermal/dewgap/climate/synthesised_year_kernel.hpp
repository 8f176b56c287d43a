// Steps of the synthesised year. Private to the library; tests check them one by one.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "dewgap/climate/places.hpp"
#include "dewgap/climate/solar_position.hpp"
#include "dewgap/climate/year_calendar_kernel.hpp"

namespace dewgap::climate {

/// Which of the independent random series.
enum class DaySeries : std::uint64_t { temperature = 1, humidity = 2, clearness = 3, wind = 4 };

/// For each day of a common year a cumulative probability: each month's days take its mid-quantiles in the
/// order of an autoregressive series, 0 <= lag_one < 1.
std::vector<double> day_quantiles(std::uint64_t seed, DaySeries series, double lag_one);

/// Erbs, Klein and Beckman's mean day: departure from the daily mean over the swing, at a clock hour.
double mean_day_shape(double clock_h);

struct TemperatureCourse {
  std::vector<double> hourly_C;
  double largest_max_min_deviation_K = 0.0;
};
TemperatureCourse temperature_course(const Place& place, std::uint64_t seed);

struct VapourCourse {
  std::vector<double> hourly_Pa;
  double largest_deviation = 0.0;  ///< of a month's mean, over the mean wanted
};
/// Mean vapour pressures of the months, on hours of the temperatures given.
VapourCourse vapour_course(const MonthlyValues& mean_Pa, std::span<const double> hourly_C,
                           std::uint64_t seed);

/// Days of a month: clearness at cumulative probabilities, so that its mean, weighted, is `mean` (0 < mean <=
/// 0.8). Weights >= 0, not all zero.
std::vector<double> clearness_of_days(double mean, std::span<const double> quantiles,
                                      std::span<const double> weights);

/// Diffuse over global of a day of clearness 0 to 1, Erbs, Klein and Duffie 1982; the sunset's hour angle
/// tells winter (at most 81.4 degrees) from the rest of the year. Their pieces meet within 0.002 in winter
/// and 0.016 in the rest of the year.
double daily_diffuse_share(double clearness, double sunset_hour_angle_rad);

double cloud_cover_of_clearness(double clearness);

struct SunCourse {
  std::vector<double> global_W_m2;
  std::vector<double> beam_normal_W_m2;
  std::vector<double> diffuse_W_m2;
  std::vector<double> cloud_cover;
};
SunCourse sun_course(const SunSite& site, const MonthlyValues& global_kWh_m2_day, std::uint64_t seed);

std::vector<double> wind_course(const MonthlyValues& mean_m_s, std::uint64_t seed);

}  // namespace dewgap::climate
