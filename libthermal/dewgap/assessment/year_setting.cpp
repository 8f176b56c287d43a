#include <algorithm>
#include <array>
#include <functional>
#include <span>
#include <utility>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/assessment/year_run_kernel.hpp"
#include "dewgap/climate/synthesised_year.hpp"
#include "dewgap/climate/weather_columns.hpp"
#include "dewgap/climate/year_calendar_kernel.hpp"
#include "dewgap/dwelling/facade_wind.hpp"
#include "dewgap/dwelling/room_year.hpp"
#include "dewgap/glazing/stack.hpp"

namespace dewgap {
namespace {

constexpr double lapse_K_m = 0.0065;  // ICAO standard atmosphere, as at_elevation
constexpr double driest_dew_point_C =
    -60.0;  // where sky_temperature_C's range ends: drier air counts as this
// How much of a sample's own cloud is believed over the year's: our convention.
constexpr double belief_beside_modelled_cloud = 0.5;
constexpr double belief_beside_measured_cloud = 0.2;

/// Months, 0 to 11: our convention.
struct SheetSeason {
  std::size_t fitted;
  std::size_t off;
};
SheetSeason season_of(double latitude_deg) {
  return latitude_deg >= 0.0 ? SheetSeason{.fitted = 8, .off = 3} : SheetSeason{.fitted = 2, .off = 9};
}

std::vector<double> rotated(std::vector<double> column, std::size_t first) {
  std::rotate(column.begin(), column.begin() + static_cast<std::ptrdiff_t>(first), column.end());
  return column;
}

/// Moved from the modelled station's height to the window's.
std::vector<double> temperature_at_window(const Setting& setting, const HourlyYear& year) {
  auto outdoor_C = year.air_temperature_C;
  if (year.modelled.air_temperature) {
    const double shift_K = lapse_K_m * (year.elevation_m - setting.place.elevation_m);
    for (auto& value : outdoor_C) {
      value += shift_K;
    }
  }
  return outdoor_C;
}

std::vector<double> sky_depression(const HourlyYear& year) {
  std::vector<double> depression_K(year.air_temperature_C.size());
  if (!year.sky_temperature_C.empty()) {
    std::transform(year.air_temperature_C.begin(), year.air_temperature_C.end(),
                   year.sky_temperature_C.begin(), depression_K.begin(), std::minus<>());
    return depression_K;
  }
  const auto cloud =
      year.cloud_cover.empty() ? cloud_cover_from_sun(year.site, year.global_W_m2) : year.cloud_cover;
  const double driest_Pa =
      saturation_pressure_Pa(driest_dew_point_C, SaturationFormula::murphy_koop, Phase::water);
  for (std::size_t i = 0; i < depression_K.size(); ++i) {
    const double air_C = year.air_temperature_C[i];
    const double vapour_Pa = std::max(driest_Pa, year.vapour_pressure_Pa[i]);
    const double dew_C = std::clamp(dew_point_C(vapour_Pa, SaturationFormula::murphy_koop, Phase::water),
                                    driest_dew_point_C, std::max(air_C, driest_dew_point_C));
    depression_K[i] = air_C - sky_temperature_C(air_C, dew_C, cloud[i]);
  }
  return depression_K;
}

std::vector<double> sun_on(const HourlyYear& year, std::span<const double> compass_deg) {
  std::vector<double> sun_W_m2(year.air_temperature_C.size(), 0.0);
  for (const double compass : compass_deg) {
    const auto plane = plane_irradiance_of_year(year, {.tilt_deg = 90.0, .compass_deg = compass});
    for (std::size_t i = 0; i < sun_W_m2.size(); ++i) {
      sun_W_m2[i] += plane[i].total_W_m2() / static_cast<double>(compass_deg.size());
    }
  }
  return sun_W_m2;
}

std::vector<double> sun_on_window(const Setting& setting, const HourlyYear& year) {
  constexpr std::array<double, 4> quarters_deg{0.0, 90.0, 180.0, 270.0};
  const auto& facing = setting.survey->window.facing_compass_deg;
  auto sun_W_m2 = facing ? sun_on(year, std::span(&*facing, 1)) : sun_on(year, quarters_deg);
  for (auto& value : sun_W_m2) {
    value *= setting.sun_seen_share;
  }
  return sun_W_m2;
}

std::vector<double> wind_angles(const Setting& setting, const HourlyYear& year) {
  std::vector<double> angles_deg;
  const auto& facing = setting.survey->window.facing_compass_deg;
  if (facing) {
    for (const double from_deg : year.wind_direction_deg) {
      angles_deg.push_back(angle_from_normal_deg(from_deg, *facing));
    }
  }
  return angles_deg;
}

std::string source_of(const HourlyYear& year) {
  return year.modelled.air_temperature ? "modelled from monthly normals: " + year.source : year.source;
}

void add_calendar(const climate::YearCalendar& calendar, std::size_t first_hour, YearSetting& columns) {
  const std::size_t hours = calendar.hours();
  columns.hour_of_year.resize(hours);
  columns.month.resize(hours);
  for (std::size_t i = 0; i < hours; ++i) {
    const std::size_t hour = (first_hour + i) % hours;
    const std::size_t day = hour / climate::hours_per_day;
    const auto after = std::upper_bound(calendar.first_day.begin(), calendar.first_day.end(), day);
    columns.hour_of_year[i] = hour;
    columns.month[i] = static_cast<std::size_t>(std::distance(calendar.first_day.begin(), after)) - 1;
  }
}

void add_temperatures(const Setting& setting, const HourlyYear& year, std::size_t first,
                      YearSetting& columns) {
  columns.outdoor_C = rotated(temperature_at_window(setting, year), first);
  columns.outdoor_vapour_Pa = rotated(year.vapour_pressure_Pa, first);
  columns.running_outdoor_C = running_mean(columns.outdoor_C, room_running_mean_h);
  columns.running_vapour_Pa = running_mean(columns.outdoor_vapour_Pa, room_running_mean_h);
  const auto [lowest, highest] = std::minmax_element(columns.outdoor_C.begin(), columns.outdoor_C.end());
  columns.lowest_outdoor_C = *lowest;
  columns.highest_outdoor_C = *highest;
}

}  // namespace

YearSetting year_setting(const Setting& setting, const HourlyYear& year) {
  require_valid(year);
  const auto calendar = climate::calendar_of(year.air_temperature_C.size());
  const auto season = season_of(year.site.latitude_deg);
  const std::size_t hours = calendar.hours();
  const std::size_t first = climate::hours_per_day * calendar.first_day[season.fitted];
  const std::size_t off = climate::hours_per_day * calendar.first_day[season.off];
  YearSetting columns;
  columns.setting = &setting;
  add_temperatures(setting, year, first, columns);
  columns.sky_depression_K = rotated(sky_depression(year), first);
  columns.wind_m_s = rotated(year.wind_m_s, first);
  columns.wind_angle_deg = wind_angles(setting, year);
  columns.has_wind_direction = !columns.wind_angle_deg.empty();
  if (columns.has_wind_direction) {
    columns.wind_angle_deg = rotated(std::move(columns.wind_angle_deg), first);
  }
  columns.sun_W_m2 = rotated(sun_on_window(setting, year), first);
  add_calendar(calendar, first, columns);
  const bool sky_known =
      year.sky_temperature_C.empty() ? !year.modelled.cloud_cover : !year.modelled.sky_temperature;
  columns.cloud_belief_share = sky_known ? belief_beside_measured_cloud : belief_beside_modelled_cloud;
  columns.off_hour = (off + hours - first) % hours;
  columns.source = source_of(year);
  columns.modelled = year.modelled;
  return columns;
}

HourlyYear weather_of(const Setting& setting, const std::optional<HourlyYear>& given) {
  return given ? *given : synthesised_year(setting.place).hours;
}

}  // namespace dewgap
