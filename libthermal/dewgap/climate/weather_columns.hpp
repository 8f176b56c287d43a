// A year of hours from the columns that a station measured: what is missing is converted or modelled.
#pragma once

#include <string>
#include <vector>

#include "dewgap/climate/hourly_year.hpp"

namespace dewgap {

/// Hour by hour what was measured, in the order of HourlyYear: 8760 or 8784 entries, empty where nothing was.
/// Ranges as HourlyYear has them where no other is stated.
struct WeatherColumns {
  SunSite site;
  double elevation_m = 0.0;
  std::vector<double> air_temperature_C;
  /// Exactly one of the three.
  std::vector<double> relative_humidity;  ///< over water, also below 0 C; 0 to 1.05
  std::vector<double> dew_point_C;        ///< over water, also below 0 C; -80 to 45
  std::vector<double> vapour_pressure_Pa;
  std::vector<double> wind_m_s;            ///< optional
  std::vector<double> wind_direction_deg;  ///< optional
  /// Global alone, beam and diffuse, or all three.
  std::vector<double> global_W_m2;
  std::vector<double> beam_normal_W_m2;
  std::vector<double> diffuse_W_m2;
  std::vector<double> cloud_cover;  ///< optional
  /// Optional, at most one of the two.
  std::vector<double> sky_temperature_C;
  std::vector<double> long_wave_W_m2;  ///< from the whole sky on the horizontal, 55 to 690
  std::string source;
};

/// The year that the columns make. `modelled` marks what a model supplied; what follows from measured columns
/// by a law (the first three below) counts as measured.
///  - Vapour pressure from relative humidity or dew point: saturation over water, Murphy and Koop 2005.
///  - Sky temperature from long-wave: (L / sigma)^(1/4), the sky as a black surface.
///  - Global from beam and diffuse: diffuse + beam sin(altitude), the sun where sun_of_hour puts it.
///  - Beam and diffuse from global alone: split_global. Marked.
///  - Wind, when missing: default_wind_m_s in every hour. Marked. Without direction there is none.
///  - Cloud cover, when neither cloud nor sky temperature nor long-wave is there: that of each day's
///  clearness
///    (cloud_cover_from_sun). Marked.
/// Throws InvalidInput for another choice of columns, and as require_valid does for the year.
HourlyYear completed_year(const WeatherColumns& measured);

/// Cloud cover, 0 to 1, by the sun of each solar day: its clearness k is global over extraterrestrial, both
/// summed over the day; cloud is 1 - (k - 0.25) / 0.5 within 0 and 1, as in synthesised_year.hpp. It holds
/// from the day's first lit hour until the next day's, so through the night that follows. A day whose
/// extraterrestrial mean is below 10 W/m2 takes clearness 0.4. All our convention.
///
/// Leaves out: cloud that comes and goes within a day, night cloud that the day does not know of, haze and
/// low winter sun, which look like cloud. 8760 or 8784 hours of global irradiance, 0 to 1500 W/m2.
std::vector<double> cloud_cover_from_sun(const SunSite& site, const std::vector<double>& global_W_m2);

}  // namespace dewgap
