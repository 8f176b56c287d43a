#include "dewgap/climate/weather_columns.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "dewgap/air/constants.hpp"
#include "dewgap/air/saturation.hpp"
#include "dewgap/climate/solar_position_kernel.hpp"
#include "dewgap/climate/synthesised_year_kernel.hpp"
#include "dewgap/climate/year_calendar_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

using Hours = std::vector<double>;

constexpr double darkest_day_W_m2 = 10.0;        // our convention
constexpr double clearness_of_a_dark_day = 0.4;  // our convention, as in synthesised_year.hpp

std::vector<SunOfHour> sun_of_year(const SunSite& site, std::size_t hours) {
  std::vector<SunOfHour> sun;
  sun.reserve(hours);
  for (std::size_t i = 0; i < hours; ++i) {
    sun.push_back(sun_of_hour(site, static_cast<int>(i / climate::hours_per_day) + 1,
                              static_cast<int>(i % climate::hours_per_day)));
  }
  return sun;
}

double saturation_Pa(double temperature_C) {
  return saturation_pressure_Pa(temperature_C, SaturationFormula::murphy_koop, Phase::water);
}

void require_hours(const Hours& column, std::size_t hours, std::string_view name) {
  if (column.size() != hours) {
    throw InvalidInput(name,
                       "has " + std::to_string(column.size()) + " hours instead of " + std::to_string(hours));
  }
}

/// One value of an hour into another, checked first.
template <class Convert>
Hours converted(const Hours& column, PermittedRange permitted, std::string_view name, std::string_view unit,
                Convert&& convert) {
  Hours result(column.size());
  for (std::size_t i = 0; i < column.size(); ++i) {
    require_in_range(column[i], permitted, name, unit);
    result[i] = convert(column[i], i);
  }
  return result;
}

Hours vapour_pressure(const WeatherColumns& measured) {
  const auto hours = measured.air_temperature_C.size();
  const int given = (measured.relative_humidity.empty() ? 0 : 1) + (measured.dew_point_C.empty() ? 0 : 1) +
                    (measured.vapour_pressure_Pa.empty() ? 0 : 1);
  if (given != 1) {
    throw InvalidInput("humidity",
                       "exactly one of relative humidity, dew point and vapour pressure is needed");
  }
  if (!measured.relative_humidity.empty()) {
    require_hours(measured.relative_humidity, hours, "relative_humidity");
    return converted(
        measured.relative_humidity, {0.0, 1.05}, "relative_humidity", "",
        [&](double share, std::size_t hour) {
          require_in_range(measured.air_temperature_C[hour], {-80.0, 60.0}, "air_temperature_C", "C");
          return share * saturation_Pa(measured.air_temperature_C[hour]);
        });
  }
  if (!measured.dew_point_C.empty()) {
    return converted(measured.dew_point_C, {-80.0, 45.0}, "dew_point_C", "C",
                     [](double dew_point_C, std::size_t) { return saturation_Pa(dew_point_C); });
  }
  return measured.vapour_pressure_Pa;
}

Hours sky_temperature(const WeatherColumns& measured) {
  if (measured.long_wave_W_m2.empty()) {
    return measured.sky_temperature_C;
  }
  if (!measured.sky_temperature_C.empty()) {
    throw InvalidInput("sky", "sky temperature and long-wave are both given; one says it");
  }
  // Stefan and Boltzmann: L = sigma T^4.
  return converted(measured.long_wave_W_m2, {55.0, 690.0}, "long_wave_W_m2", "W/m2",
                   [](double long_wave_W_m2, std::size_t) {
                     return std::sqrt(std::sqrt(long_wave_W_m2 / constants::stefan_boltzmann_W_m2K4)) -
                            constants::celsius_zero_K;
                   });
}

// global = diffuse + beam sin(altitude).
Hours global_of_parts(const WeatherColumns& measured, const std::vector<SunOfHour>& sun) {
  Hours global_W_m2(sun.size());
  for (std::size_t i = 0; i < sun.size(); ++i) {
    const double sine = std::sin(climate::radians(sun[i].position.altitude_deg));
    global_W_m2[i] = measured.diffuse_W_m2[i] + measured.beam_normal_W_m2[i] * std::max(0.0, sine);
  }
  return global_W_m2;
}

void split_into_parts(HourlyYear& year, const std::vector<SunOfHour>& sun) {
  year.beam_normal_W_m2.reserve(sun.size());
  year.diffuse_W_m2.reserve(sun.size());
  for (std::size_t i = 0; i < sun.size(); ++i) {
    const auto sky = split_global(year.global_W_m2[i], sun[i]);
    year.beam_normal_W_m2.push_back(sky.beam_normal_W_m2);
    year.diffuse_W_m2.push_back(sky.diffuse_horizontal_W_m2);
  }
  year.modelled.sun_split = true;
}

void complete_sun(HourlyYear& year, const WeatherColumns& measured) {
  const auto hours = measured.air_temperature_C.size();
  const bool has_global = !measured.global_W_m2.empty();
  const bool has_parts = !measured.beam_normal_W_m2.empty() && !measured.diffuse_W_m2.empty();
  const bool has_one_part = measured.beam_normal_W_m2.empty() != measured.diffuse_W_m2.empty();
  if (has_one_part || (!has_global && !has_parts)) {
    throw InvalidInput("sun", "global alone, beam and diffuse, or all three are needed");
  }
  year.global_W_m2 = measured.global_W_m2;
  year.beam_normal_W_m2 = measured.beam_normal_W_m2;
  year.diffuse_W_m2 = measured.diffuse_W_m2;
  if (has_global && has_parts) {
    return;
  }
  const auto sun = sun_of_year(measured.site, hours);
  if (has_global) {
    require_hours(year.global_W_m2, hours, "global_W_m2");
    split_into_parts(year, sun);
  } else {
    require_hours(year.beam_normal_W_m2, hours, "beam_normal_W_m2");
    require_hours(year.diffuse_W_m2, hours, "diffuse_W_m2");
    year.global_W_m2 = global_of_parts(measured, sun);
  }
}

/// Solar day of each hour and the sums that make its clearness.
struct SolarDays {
  std::vector<std::size_t> of_hour;
  Hours global;
  Hours outside;

  double clearness(std::size_t day) const {
    const bool is_dark = outside[day] < darkest_day_W_m2 * static_cast<double>(climate::hours_per_day);
    return is_dark ? clearness_of_a_dark_day : global[day] / outside[day];
  }
};

// A solar day begins at the sun's mean midnight, so that no clock cuts a day in two. The year is closed.
SolarDays solar_days(const SunSite& site, const std::vector<SunOfHour>& sun, const Hours& global_W_m2) {
  const auto hours = static_cast<int>(sun.size());
  const int ahead_h = static_cast<int>(std::lround(site.longitude_deg / 15.0 - site.utc_offset_h));
  SolarDays days{.of_hour = std::vector<std::size_t>(sun.size()),
                 .global = Hours(sun.size() / climate::hours_per_day),
                 .outside = Hours(sun.size() / climate::hours_per_day)};
  for (int i = 0; i < hours; ++i) {
    const auto hour = static_cast<std::size_t>(i);
    days.of_hour[hour] = static_cast<std::size_t>((i + ahead_h + hours) % hours) / climate::hours_per_day;
    if (sun[hour].lit_share > 0.0) {
      days.global[days.of_hour[hour]] += global_W_m2[hour];
      days.outside[days.of_hour[hour]] += sun[hour].extraterrestrial_W_m2;
    }
  }
  return days;
}

}  // namespace

std::vector<double> cloud_cover_from_sun(const SunSite& site, const std::vector<double>& global_W_m2) {
  climate::require_valid(site);
  const auto hours = climate::calendar_of(global_W_m2.size()).hours();
  for (const double global : global_W_m2) {
    require_in_range(global, {0.0, 1500.0}, "global_W_m2", "W/m2");
  }
  const auto sun = sun_of_year(site, hours);
  const auto days = solar_days(site, sun, global_W_m2);
  const std::size_t count = days.global.size();
  std::vector<double> cloud(hours);
  std::vector<std::uint8_t> has_begun(count, 0);
  // From an hour whose solar day begins, so that each day's hours come in their order.
  std::size_t first = 0;
  while (days.of_hour[first] == days.of_hour[(first + hours - 1) % hours]) {
    ++first;
  }
  for (std::size_t step = 0; step < hours; ++step) {
    const std::size_t hour = (first + step) % hours;
    const std::size_t day = days.of_hour[hour];
    const bool never_lit = days.outside[day] <= 0.0;
    has_begun[day] = has_begun[day] != 0 || never_lit || sun[hour].lit_share > 0.0 ? 1 : 0;
    const std::size_t holds = has_begun[day] != 0 ? day : (day + count - 1) % count;
    cloud[hour] = climate::cloud_cover_of_clearness(days.clearness(holds));
  }
  return cloud;
}

HourlyYear completed_year(const WeatherColumns& measured) {
  climate::require_valid(measured.site);
  const auto hours = climate::calendar_of(measured.air_temperature_C.size()).hours();
  HourlyYear year{.site = measured.site,
                  .elevation_m = measured.elevation_m,
                  .air_temperature_C = measured.air_temperature_C,
                  .vapour_pressure_Pa = vapour_pressure(measured),
                  .wind_m_s = measured.wind_m_s,
                  .wind_direction_deg = measured.wind_direction_deg,
                  .global_W_m2 = {},
                  .beam_normal_W_m2 = {},
                  .diffuse_W_m2 = {},
                  .cloud_cover = measured.cloud_cover,
                  .sky_temperature_C = sky_temperature(measured),
                  .modelled = {},
                  .source = measured.source};
  complete_sun(year, measured);
  if (year.wind_m_s.empty()) {
    year.wind_m_s.assign(hours, default_wind_m_s);
    year.modelled.wind = true;
  }
  if (year.cloud_cover.empty() && year.sky_temperature_C.empty()) {
    year.cloud_cover = cloud_cover_from_sun(year.site, year.global_W_m2);
    year.modelled.cloud_cover = true;
  }
  require_valid(year);
  return year;
}

}  // namespace dewgap
