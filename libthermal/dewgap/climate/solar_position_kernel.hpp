// The sun over one day of a clock, in steps that tests check one by one. Private to the library.
#pragma once

#include "dewgap/climate/places_kernel.hpp"
#include "dewgap/climate/solar_position.hpp"

namespace dewgap::climate {

/// Declination, deg, of a mean year about 2020; `day` counts from 1 and carries the time of day, its noon UTC
/// being the whole number. Astronomical Almanac, low precision, from memory.
double mean_declination_deg(double day);
/// equation_of_time_min at a moment: Spencer 1971, Duffie and Beckman eq. 1.5.3, from memory.
double mean_equation_of_time_min(double day);

/// Throws InvalidInput unless the site is one.
void require_valid(const SunSite& site);

/// Part of an hour with the sun up, as hour angles in rad; empty when begin == end.
struct LitPart {
  double begin_rad = 0.0;
  double end_rad = 0.0;
  bool is_dark() const { return !(end_rad > begin_rad); }
  double middle_rad() const { return 0.5 * (begin_rad + end_rad); }
  double length_rad() const { return end_rad - begin_rad; }
  double share_of_hour() const;
};

/// The sun's path over one day of the clock: the sine of its altitude is constant_part + cosine_part cos(hour
/// angle).
struct SunPath {
  double latitude_rad = 0.0;
  double declination_rad = 0.0;
  double constant_part = 0.0;
  double cosine_part = 0.0;
  double sunset_rad = 0.0;          ///< 0 in polar night, pi in polar day
  double clock_midnight_rad = 0.0;  ///< hour angle as the clock's day begins, about -pi

  double sine_of_altitude(double hour_angle_rad) const;
  SunPosition position(double hour_angle_rad) const;
  LitPart lit_part(int hour) const;
  /// Mean of the sine of altitude over a lit part that is not empty.
  double mean_sine(const LitPart& lit) const;
};
/// Its path at a declination, by solar time.
SunPath sun_path_at_declination(double latitude_deg, double declination_deg);
SunPath sun_path(const SunSite& site, int day_of_year);

inline constexpr double hour_rad = pi / 12.0;

}  // namespace dewgap::climate
