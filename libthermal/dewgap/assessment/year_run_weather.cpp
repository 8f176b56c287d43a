#include "dewgap/assessment/year_run_weather_kernel.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "dewgap/dwelling/facade_wind.hpp"
#include "dewgap/dwelling/room_humidity.hpp"
#include "dewgap/dwelling/room_year.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/gap/hour_kernel.hpp"

namespace dewgap {
namespace {

constexpr double least_rise_K = 2.0;  // an unheated room over outdoors, as in setting.cpp: our convention
constexpr double strongest_wind_m_s = 40.0;       // where the pressure's and the wind film's ranges end
constexpr double strongest_film_W_m2K = 200.0;    // beyond it the pane follows the air anyway
constexpr std::size_t curtain_drawn_from_h = 18;  // by the clock: our convention
constexpr std::size_t curtain_drawn_to_h = 7;
constexpr std::uint64_t wind_seed = 1;  // one course of days for all samples
constexpr PermittedRange sample_weather_C{-60.0, 48.0};

bool curtain_hour(std::size_t hour_of_day) {
  return hour_of_day >= curtain_drawn_from_h || hour_of_day < curtain_drawn_to_h;
}

}  // namespace

bool in_cold_half(const YearSetting& year, std::size_t month) {
  // The sheet goes up a month before the cold half begins: October north, April south.
  const std::size_t first = (year.month.front() + 1) % 12;
  return (month + 12 - first) % 12 < 6;
}

double sky_scale(double cloud_cover, double belief_share) {
  static const double middle = prior_of(Unknown::cloud_cover).p50;
  return 1.0 + belief_share * ((1.0 - cloud_cover) / (1.0 - middle) - 1.0);
}

SampleWeather::SampleWeather(const YearSetting& year, const UnknownValues& sample, double excess_scale)
    : year_(year),
      setting_(*year.setting),
      sample_(sample),
      saturation_(air_kernel::saturation_table()),
      excess_scale_(excess_scale),
      offset_K_(sample[Unknown::climate_offset]),
      sky_scale_(sky_scale(sample[Unknown::cloud_cover], year.cloud_belief_share)),
      sky_view_(sky_view_of(setting_)),
      window_wind_ratio_(wind_ratio_at_window(setting_, sample)),
      highest_wind_m_s_(strongest_wind_m_s / std::max(1.0, window_wind_ratio_)),
      absorbed_(absorbed_sun_shares(setting_, sample)),
      // Mean coefficient over winter's winds as a prevailing angle: 1 windward, -1 leeward.
      prevailing_angle_deg_(std::acos(std::clamp(sample[Unknown::wind_pressure], -1.0, 1.0)) * 180.0 /
                            std::numbers::pi) {
  require_in_range(year.lowest_outdoor_C + offset_K_, sample_weather_C, "outdoor_C", "C");
  require_in_range(year.highest_outdoor_C + offset_K_, sample_weather_C, "outdoor_C", "C");
}

double SampleWeather::facade_coefficient(std::size_t hour) {
  if (year_.has_wind_direction) {
    return facade_pressure_coefficient(setting_.shelter, year_.wind_angle_deg[hour]);
  }
  const std::size_t day = year_.hour_of_year[hour] / 24;
  if (day != day_) {
    day_ = day;
    day_coefficient_ = facade_pressure_coefficient(setting_.shelter, wind_angle_deg(hour));
  }
  return day_coefficient_;
}

double SampleWeather::station_wind_m_s(std::size_t hour) const {
  return std::min(year_.wind_m_s[hour], highest_wind_m_s_);
}

double SampleWeather::wind_angle_deg(std::size_t hour) const {
  return year_.has_wind_direction
             ? year_.wind_angle_deg[hour]
             : modelled_wind_angle_deg(prevailing_angle_deg_, year_.hour_of_year[hour] / 24, wind_seed);
}

Moment SampleWeather::moment_at(std::size_t hour) const {
  Moment moment;
  moment.outdoor_C = year_.outdoor_C[hour] + offset_K_;
  moment.outdoor_vapour_Pa =
      std::min(year_.outdoor_vapour_Pa[hour], saturation_.over_water_at(moment.outdoor_C).pressure_Pa);
  moment.station_wind_m_s = station_wind_m_s(hour);
  moment.room_C = std::max(sample_[Unknown::room_temperature], moment.outdoor_C + least_rise_K);
  return moment;
}

OutdoorClimate SampleWeather::outdoors_at(std::size_t hour, const Moment& moment) const {
  const double wind_film = outdoor_convection_W_m2K(moment.station_wind_m_s * window_wind_ratio_) *
                           sample_[Unknown::outdoor_convection];
  return {.air_temperature_C = moment.outdoor_C,
          .sky_temperature_C = moment.outdoor_C - sky_scale_ * year_.sky_depression_K[hour],
          .ground_temperature_C = moment.outdoor_C,
          .sky_view_factor = sky_view_,
          .convection_W_m2K = std::min(wind_film, strongest_film_W_m2K)};
}

void SampleWeather::add_room(std::size_t hour, SampleHour& now) const {
  const double room_saturation_Pa = saturation_.over_water_at(now.given.room_C).pressure_Pa;
  const double running_C = year_.running_outdoor_C[hour] + offset_K_;
  now.highest_room_Pa = room_saturation_share * room_saturation_Pa;
  now.heating = running_C < sample_[Unknown::base_temperature];
  if (const auto& kept = setting_.survey->expert.room_relative_humidity) {
    now.running_vapour_Pa = *kept * room_saturation_Pa;
  } else {
    // ISO 13788 Annex A's shape on running means (room_year.hpp).
    now.running_vapour_Pa = year_.running_vapour_Pa[hour];
    now.excess_Pa = excess_scale_ * vapour_excess_Pa(sample_[Unknown::vapour_excess], running_C);
  }
  now.given.room_vapour_Pa = now.room_vapour_Pa(1.0);
}

SampleHour SampleWeather::at(std::size_t hour) {
  const Moment moment = moment_at(hour);
  const double sun_W_m2 = year_.sun_W_m2[hour];
  SampleHour now;
  now.month = year_.month[hour];
  now.hour_of_day = year_.hour_of_year[hour] % 24;
  now.cold_half = in_cold_half(year_, now.month);
  now.given = {
      .outdoors = outdoors_at(hour, moment),
      .room_C = moment.room_C,
      .room_film_factor = sample_[Unknown::room_film],
      .outdoor_vapour_Pa = moment.outdoor_vapour_Pa,
      .pressure = pressure_under(setting_, sample_, moment, facade_coefficient(hour)),
      .absorbed_sun_W_m2 = {absorbed_.glass * sun_W_m2, absorbed_.sheet * sun_W_m2},
      .curtain_drawn = setting_.survey->sheet.curtain_gap_m.has_value() && curtain_hour(now.hour_of_day)};
  add_room(hour, now);
  gap_kernel::require_valid(now.given);
  return now;
}

double SampleWeather::fitted_timber_kg_kg() {
  // Looked at and felt: our convention.
  switch (setting_.survey->timber.bottom_rail.value_or(TimberFeel::firm)) {
    case TimberFeel::wet_now:
      return 0.30;
    case TimberFeel::soft:
      return 0.24;
    case TimberFeel::firm:
      break;
  }
  // In equilibrium with the fitting month's room air, half way between room and outdoors.
  double middle_C = 0.0;
  double vapour_Pa = 0.0;
  std::size_t hours = 0;
  for (; hours < year_.month.size() && year_.month[hours] == year_.month.front(); ++hours) {
    const auto now = at(hours);
    middle_C += 0.5 * (now.given.room_C + now.given.outdoors.air_temperature_C);
    vapour_Pa += now.given.room_vapour_Pa;
  }
  middle_C /= static_cast<double>(hours);
  vapour_Pa /= static_cast<double>(hours);
  const double humidity =
      std::min(room_saturation_share, vapour_Pa / saturation_.over_water_at(middle_C).pressure_Pa);
  return wood_moisture_kg_kg(std::max(middle_C, -30.0), humidity);
}

}  // namespace dewgap
