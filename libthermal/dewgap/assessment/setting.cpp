#include <algorithm>
#include <cmath>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/assessment/edge_of_window_kernel.hpp"
#include "dewgap/assessment/scenario_kernel.hpp"
#include "dewgap/climate/degree_days.hpp"
#include "dewgap/dwelling/room_humidity.hpp"

namespace dewgap {
namespace {

constexpr double storey_height_m = 2.6;          // our convention
constexpr double sill_height_m = 0.8;            // our convention
constexpr double chimney_lift_m = 1.0;           // a working chimney draws from high up: our convention
constexpr double highest_room_humidity = 0.95;   // walls and panes take the rest
constexpr double frost_night_cloud_share = 0.3;  // frost nights are clear: our convention
constexpr double least_rise_K = 2.0;  // an unheated room stays this much above outdoors: our convention
constexpr double least_winter_difference_K = 8.0;  // at which a U-value still means something: our convention
constexpr double frost_night_wind_share = 0.5;     // and calm: our convention

/// Height of the neutral level of the space the window belongs to: its middle, higher with a working chimney.
void place_in_building(const Survey& survey, Setting& setting) {
  const auto& building = survey.building;
  const double middle_m = sill_height_m + 0.5 * setting.window.height_m;
  const bool joined = building.open_stairwell.value_or(true);
  const int floor = joined ? building.floor.value_or(0) : 0;
  const int floors = joined ? building.floors.value_or(2) : 1;
  setting.window_above_ground_m = floor * storey_height_m + middle_m;
  setting.neutral_level_m = 0.5 * floors * storey_height_m;
  if (!building.floor && joined) {
    setting.window_above_ground_m = setting.neutral_level_m;  // unknown floor: the wide prior takes over
  }
  if (building.working_chimney.value_or(false)) {
    setting.neutral_level_m += chimney_lift_m;
  }
}

MonthlySun sun_for(const Survey& survey, const Place& place) {
  if (survey.window.facing_compass_deg) {
    return monthly_sun(place, {.tilt_deg = 90.0, .compass_deg = *survey.window.facing_compass_deg});
  }
  // Facing not known: the mean of the four quarters.
  MonthlySun mean = monthly_sun(place, {.tilt_deg = 90.0, .compass_deg = 0.0});
  for (const double compass : {90.0, 180.0, 270.0}) {
    const auto quarter = monthly_sun(place, {.tilt_deg = 90.0, .compass_deg = compass});
    for (std::size_t m = 0; m < 12; ++m) {
      mean.plane_kWh_m2_day[m] += quarter.plane_kWh_m2_day[m];
    }
  }
  for (auto& day : mean.plane_kWh_m2_day) {
    day *= 0.25;
  }
  return mean;
}

/// Share of the modelled sun that reaches the window past what stands opposite: our convention, no source.
double sun_seen_share(const std::optional<Shelter>& outlook) {
  switch (outlook.value_or(Shelter::suburb)) {
    case Shelter::open:
      return 1.0;
    case Shelter::fields:
      return 0.95;
    case Shelter::suburb:
      return 0.85;
    case Shelter::facing_wall:
      return 0.5;
  }
  return 0.85;
}

/// The design condition moved by the sample's weather offset; vapour at most saturation over water there.
Moment moved(const DesignCondition& condition, const UnknownValues& sample) {
  Moment moment;
  moment.outdoor_C = condition.outdoor_temperature_C + sample[Unknown::climate_offset];
  moment.outdoor_vapour_Pa = std::min(condition.outdoor_vapour_Pa, vapour_pressure_Pa(moment.outdoor_C, 1.0));
  moment.station_wind_m_s = condition.wind_m_s;
  moment.cloud_cover = sample[Unknown::cloud_cover];
  moment.room_C = std::max(sample[Unknown::room_temperature], moment.outdoor_C + least_rise_K);
  return moment;
}

}  // namespace

Setting setting_for(const Survey& survey) {
  Setting setting;
  setting.survey = &survey;
  const Place& station = *find_place(survey.place.nearest);
  setting.place = survey.place.elevation_m ? at_elevation(station, *survey.place.elevation_m) : station;
  setting.window = window_model(survey);
  setting.month = coldest_month_mean(setting.place);
  setting.frost = frost_night(setting.place);
  setting.sun = sun_for(survey, setting.place);
  setting.sun_seen_share = sun_seen_share(survey.building.outlook);
  setting.glass_solar_transmittance = glass_properties().solar_transmittance.best;
  setting.sheet_solar_transmittance = setting.window.sheet.solar_transmittance.best;
  setting.shelter = pressure_coefficients(survey.building.outlook.value_or(Shelter::suburb));
  place_in_building(survey, setting);
  if (const auto edge = edge_of_window(setting)) {
    use_edge(*edge, setting);
  }
  return setting;
}

Beliefs beliefs_for(const Setting& setting) {
  Beliefs beliefs = beliefs_for(*setting.survey);
  if (setting.edge) {
    auto& frame = beliefs[static_cast<std::size_t>(Unknown::frame_u_factor)];
    frame.prior = narrowed_frame_factor(*setting.edge, *setting.survey, frame.prior);
    frame.basis = Basis::archetype;
  }
  return beliefs;
}

double room_vapour_Pa(const Setting& setting, const UnknownValues& sample, double outdoor_C,
                      double outdoor_vapour_Pa, double excess_factor) {
  const double room_C = sample[Unknown::room_temperature];
  const double highest = vapour_pressure_Pa(room_C, highest_room_humidity);
  if (setting.survey->expert.room_relative_humidity) {
    return std::min(highest, vapour_pressure_Pa(room_C, *setting.survey->expert.room_relative_humidity));
  }
  const double excess = vapour_excess_Pa(sample[Unknown::vapour_excess], outdoor_C);
  return std::min(highest, outdoor_vapour_Pa + excess_factor * excess);
}

Moment month_moment(const Setting& setting, const UnknownValues& sample, double excess_factor) {
  Moment moment = moved(setting.month, sample);
  moment.room_vapour_Pa =
      room_vapour_Pa(setting, sample, moment.outdoor_C, moment.outdoor_vapour_Pa, excess_factor);
  return moment;
}

Moment frost_moment(const Setting& setting, const UnknownValues& sample, double excess_factor) {
  Moment moment = moved(setting.frost, sample);
  // Room humidity follows the monthly mean outdoors, not the hour.
  moment.room_vapour_Pa = month_moment(setting, sample, excess_factor).room_vapour_Pa;
  moment.cloud_cover *= frost_night_cloud_share;
  moment.station_wind_m_s *= frost_night_wind_share;
  return moment;
}

Moment winter_moment(const Setting& setting, const UnknownValues& sample) {
  const double base_C = sample[Unknown::base_temperature] - sample[Unknown::climate_offset];
  const auto degree_days = degree_days_Kd(setting.place, base_C, DegreeDayMethod::schoenau_kehrig);
  double weight = 0.0;
  double mean_C = 0.0;
  for (std::size_t m = 0; m < 12; ++m) {
    weight += degree_days[m];
    mean_C += degree_days[m] * setting.place.months[m].mean_C;
  }
  Moment moment = moved(setting.month, sample);
  if (weight > 0.0) {
    moment.outdoor_C = mean_C / weight + sample[Unknown::climate_offset];
  }
  // The window's own property, also for a room that is hardly heated.
  moment.room_C = std::max(sample[Unknown::room_temperature], moment.outdoor_C + least_winter_difference_K);
  moment.room_vapour_Pa = room_vapour_Pa(setting, sample, moment.outdoor_C, moment.outdoor_vapour_Pa, 1.0);
  return moment;
}

}  // namespace dewgap
