// A year of weather, hour by hour, as plain values.
#pragma once

#include <string>
#include <vector>

#include "dewgap/climate/places.hpp"
#include "dewgap/climate/plane_irradiance.hpp"
#include "dewgap/climate/solar_position.hpp"

namespace dewgap {

/// Columns that a model supplied instead of a measurement.
struct ModelledColumns {
  bool air_temperature = false;
  bool vapour_pressure = false;
  bool wind = false;
  bool wind_direction = false;
  bool sun = false;        ///< global irradiance
  bool sun_split = false;  ///< its parts, beam and diffuse
  bool cloud_cover = false;
  bool sky_temperature = false;
};

/// Entry i is the mean of the hour that begins i hours after the year does, by the clock of `site`: 8760
/// entries, or 8784 with a 29 February. Columns marked optional may be empty.
struct HourlyYear {
  SunSite site;
  double elevation_m = 0.0;                ///< -430 to 5000
  std::vector<double> air_temperature_C;   ///< -80 to 60
  std::vector<double> vapour_pressure_Pa;  ///< 0 to 10000, and at most 1.05 of saturation over water
  std::vector<double> wind_m_s;            ///< 0 to 120, at the station, about 10 m up
  std::vector<double> wind_direction_deg;  ///< optional; from where it blows, compass, 0 to 360
  std::vector<double> global_W_m2;         ///< on the horizontal, 0 to 1500
  std::vector<double> beam_normal_W_m2;    ///< on a plane that faces the sun, 0 to 1450
  std::vector<double> diffuse_W_m2;        ///< on the horizontal, 0 to 1500
  std::vector<double> cloud_cover;         ///< optional; 0 to 1
  std::vector<double> sky_temperature_C;   ///< optional; effective radiant, -100 to 60
  ModelledColumns modelled;
  std::string source;  ///< citation
};

/// Throws InvalidInput, which names the column and the hour (from 0), for a year of another length, a column
/// of another length than the year, a value outside its range or NaN, and air that holds more than 1.05 of
/// saturation over water (our convention: hygrometers and rounding). It does not ask whether
/// global = diffuse + beam sin(altitude): measured hours and their time stamps seldom keep to it.
void require_valid(const HourlyYear& year);

/// The year's means as a place: mean temperature, mean of the daily maxima and minima (of the hours, days by
/// the year's clock), vapour pressure, wind, global radiation. Sunshine is left out: hours of it cannot be
/// told from hourly means. `status` says which columns were modelled. A month outside what a place may be
/// (require_valid in places.hpp) throws.
Place monthly_means(const HourlyYear& year);

/// Irradiance on a plane through the year, hour by hour: the sun where sun_of_hour puts it.
std::vector<PlaneIrradiance> plane_irradiance_of_year(const HourlyYear& year, const PlaneFacing& plane,
                                                      double ground_reflectance = default_ground_reflectance);

}  // namespace dewgap
