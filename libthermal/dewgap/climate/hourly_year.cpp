#include "dewgap/climate/hourly_year.hpp"

#include <span>

#include "dewgap/air/saturation.hpp"
#include "dewgap/climate/solar_position_kernel.hpp"
#include "dewgap/climate/year_calendar_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr double most_relative_humidity = 1.05;  // our convention

struct Column {
  std::span<const double> values;
  std::string_view name;
  PermittedRange permitted;
  std::string_view unit;
};

std::string at_hour(std::string_view name, std::size_t hour) {
  return std::string(name) + " of hour " + std::to_string(hour);
}

// The name of the hour is only made when it is needed: there are ten thousand of them.
void require_column(const Column& column, std::size_t hours) {
  if (column.values.size() != hours) {
    throw InvalidInput(column.name, "has " + std::to_string(column.values.size()) + " hours instead of " +
                                        std::to_string(hours));
  }
  for (std::size_t hour = 0; hour < hours; ++hour) {
    const double value = column.values[hour];
    if (!(value >= column.permitted.min && value <= column.permitted.max)) {
      require_in_range(value, column.permitted, at_hour(column.name, hour), column.unit);
    }
  }
}

void require_optional_column(const Column& column, std::size_t hours) {
  if (!column.values.empty()) {
    require_column(column, hours);
  }
}

void require_vapour_below_saturation(const HourlyYear& year) {
  for (std::size_t hour = 0; hour < year.vapour_pressure_Pa.size(); ++hour) {
    const double most_Pa =
        most_relative_humidity *
        saturation_pressure_Pa(year.air_temperature_C[hour], SaturationFormula::murphy_koop, Phase::water);
    if (year.vapour_pressure_Pa[hour] > most_Pa) {
      require_in_range(year.vapour_pressure_Pa[hour], {0.0, most_Pa}, at_hour("vapour_pressure_Pa", hour),
                       "Pa");
    }
  }
}

std::string modelled_words(const ModelledColumns& modelled) {
  std::string words;
  const auto add = [&](bool is_modelled, std::string_view name) {
    if (is_modelled) {
      words += words.empty() ? "; modelled: " : ", ";
      words += name;
    }
  };
  add(modelled.air_temperature, "air temperature");
  add(modelled.vapour_pressure, "vapour pressure");
  add(modelled.wind, "wind");
  add(modelled.sun, "sun");
  return words;
}

}  // namespace

void require_valid(const HourlyYear& year) {
  climate::require_valid(year.site);
  require_in_range(year.elevation_m, {-430.0, 5000.0}, "elevation_m", "m");
  const auto hours = climate::calendar_of(year.air_temperature_C.size()).hours();
  require_column({year.air_temperature_C, "air_temperature_C", {-80.0, 60.0}, "C"}, hours);
  require_column({year.vapour_pressure_Pa, "vapour_pressure_Pa", {0.0, 10000.0}, "Pa"}, hours);
  require_column({year.wind_m_s, "wind_m_s", {0.0, 120.0}, "m/s"}, hours);
  require_column({year.global_W_m2, "global_W_m2", {0.0, 1500.0}, "W/m2"}, hours);
  require_column({year.beam_normal_W_m2, "beam_normal_W_m2", {0.0, 1450.0}, "W/m2"}, hours);
  require_column({year.diffuse_W_m2, "diffuse_W_m2", {0.0, 1500.0}, "W/m2"}, hours);
  require_optional_column({year.wind_direction_deg, "wind_direction_deg", {0.0, 360.0}, "deg"}, hours);
  require_optional_column({year.cloud_cover, "cloud_cover", {0.0, 1.0}, ""}, hours);
  require_optional_column({year.sky_temperature_C, "sky_temperature_C", {-100.0, 60.0}, "C"}, hours);
  require_vapour_below_saturation(year);
}

Place monthly_means(const HourlyYear& year) {
  require_valid(year);
  const auto calendar = climate::calendar_of(year.air_temperature_C.size());
  const auto mean_C = climate::monthly_means_of(year.air_temperature_C, calendar);
  const auto max_C =
      climate::monthly_means_of_days(climate::daily_maxima_of(year.air_temperature_C), calendar);
  const auto min_C =
      climate::monthly_means_of_days(climate::daily_minima_of(year.air_temperature_C), calendar);
  const auto vapour_Pa = climate::monthly_means_of(year.vapour_pressure_Pa, calendar);
  const auto wind_m_s = climate::monthly_means_of(year.wind_m_s, calendar);
  const auto global_W_m2 = climate::monthly_means_of(year.global_W_m2, calendar);
  Place place{.latitude_deg = year.site.latitude_deg,
              .longitude_deg = year.site.longitude_deg,
              .elevation_m = year.elevation_m,
              .source = year.source,
              .status = "means of a year of hours" + modelled_words(year.modelled)};
  for (std::size_t month = 0; month < place.months.size(); ++month) {
    place.months[month] = {.mean_C = mean_C[month],
                           .max_C = max_C[month],
                           .min_C = min_C[month],
                           .vapour_pressure_Pa = vapour_Pa[month],
                           .wind_m_s = wind_m_s[month],
                           .sunshine_h = {},
                           .global_kWh_m2_day = 0.024 * global_W_m2[month]};
  }
  require_valid(place);
  return place;
}

std::vector<PlaneIrradiance> plane_irradiance_of_year(const HourlyYear& year, const PlaneFacing& plane,
                                                      double ground_reflectance) {
  require_valid(year);
  std::vector<PlaneIrradiance> on_plane;
  on_plane.reserve(year.global_W_m2.size());
  for (std::size_t i = 0; i < year.global_W_m2.size(); ++i) {
    const auto sun = sun_of_hour(year.site, static_cast<int>(i / climate::hours_per_day) + 1,
                                 static_cast<int>(i % climate::hours_per_day));
    on_plane.push_back(plane_irradiance({year.beam_normal_W_m2[i], year.diffuse_W_m2[i]}, sun.position, plane,
                                        ground_reflectance));
  }
  return on_plane;
}

}  // namespace dewgap
