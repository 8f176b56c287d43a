// Where the sun stands and how much of it there is outside the atmosphere.
#include <cmath>

#include "dewgap/climate/sun_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

void require_latitude_and_day(double latitude_deg, int day_of_year) {
  require_in_range(latitude_deg, {-90.0, 90.0}, "latitude_deg", "deg");
  require_in_range(day_of_year, {1.0, 366.0}, "day_of_year", "");
}

}  // namespace

namespace climate {

double sunset_hour_angle_rad(double latitude_deg, double declination_deg) {
  // cos ws = -tan(latitude) tan(declination), Duffie and Beckman eq. 1.6.10.
  const double cosine = -std::tan(radians(latitude_deg)) * std::tan(radians(declination_deg));
  if (cosine >= 1.0) {
    return 0.0;  // polar night
  }
  return cosine <= -1.0 ? pi : std::acos(cosine);
}

double extraterrestrial_at_declination_MJ_m2(double latitude_deg, double declination_deg, int day_of_year,
                                             double solar_constant_W_m2) {
  const double sunset = sunset_hour_angle_rad(latitude_deg, declination_deg);
  const double latitude = radians(latitude_deg);
  const double declination = radians(declination_deg);
  // Duffie and Beckman eq. 1.10.3: distance of the sun, then the day's integral of the sine of altitude.
  const double normal_W_m2 =
      solar_constant_W_m2 * (1.0 + 0.033 * std::cos(radians(360.0 * day_of_year / 365.0)));
  const double integral = std::cos(latitude) * std::cos(declination) * std::sin(sunset) +
                          sunset * std::sin(latitude) * std::sin(declination);
  return 86400.0 / pi * normal_W_m2 * integral * 1e-6;
}

std::array<double, 5> incidence_terms(double latitude_deg, double declination_deg, double hour_angle_deg,
                                      const PlaneFacing& plane) {
  const double sin_lat = std::sin(radians(latitude_deg));
  const double cos_lat = std::cos(radians(latitude_deg));
  const double sin_dec = std::sin(radians(declination_deg));
  const double cos_dec = std::cos(radians(declination_deg));
  const double sin_tilt = std::sin(radians(plane.tilt_deg));
  const double cos_tilt = std::cos(radians(plane.tilt_deg));
  // Surface azimuth of the source: from south, west positive.
  const double sin_azimuth = std::sin(radians(plane.compass_deg - 180.0));
  const double cos_azimuth = std::cos(radians(plane.compass_deg - 180.0));
  const double sin_hour = std::sin(radians(hour_angle_deg));
  const double cos_hour = std::cos(radians(hour_angle_deg));
  return {sin_dec * sin_lat * cos_tilt, -sin_dec * cos_lat * sin_tilt * cos_azimuth,
          cos_dec * cos_lat * cos_tilt * cos_hour, cos_dec * sin_lat * sin_tilt * cos_azimuth * cos_hour,
          cos_dec * sin_tilt * sin_azimuth * sin_hour};
}

}  // namespace climate

double declination_deg(int day_of_year) {
  require_in_range(day_of_year, {1.0, 366.0}, "day_of_year", "");
  // Cooper 1969, Duffie and Beckman eq. 1.6.1a.
  return 23.45 * std::sin(climate::radians(360.0 * (284 + day_of_year) / 365.0));
}

double extraterrestrial_MJ_m2(double latitude_deg, int day_of_year, double solar_constant_W_m2) {
  require_latitude_and_day(latitude_deg, day_of_year);
  require_in_range(solar_constant_W_m2, {1300.0, 1450.0}, "solar_constant_W_m2", "W/m2");
  return climate::extraterrestrial_at_declination_MJ_m2(latitude_deg, declination_deg(day_of_year),
                                                        day_of_year, solar_constant_W_m2);
}

double day_length_h(double latitude_deg, int day_of_year) {
  require_latitude_and_day(latitude_deg, day_of_year);
  // Duffie and Beckman eq. 1.6.11.
  return 24.0 / climate::pi * climate::sunset_hour_angle_rad(latitude_deg, declination_deg(day_of_year));
}

double cos_incidence(double latitude_deg, double declination_deg, double hour_angle_deg,
                     const PlaneFacing& plane) {
  require_in_range(latitude_deg, {-90.0, 90.0}, "latitude_deg", "deg");
  require_in_range(declination_deg, {-24.0, 24.0}, "declination_deg", "deg");
  require_in_range(hour_angle_deg, {-180.0, 180.0}, "hour_angle_deg", "deg");
  require_in_range(plane.tilt_deg, {0.0, 180.0}, "tilt_deg", "deg");
  require_in_range(plane.compass_deg, {0.0, 360.0}, "compass_deg", "deg");
  double sum = 0.0;
  for (const double term : climate::incidence_terms(latitude_deg, declination_deg, hour_angle_deg, plane)) {
    sum += term;
  }
  return sum;
}

}  // namespace dewgap
