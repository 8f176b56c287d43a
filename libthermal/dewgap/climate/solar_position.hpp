// Where the sun stands at a moment, and over an hour of a clock.
//
// No year is asked for, so the sun is that of a mean year about 2020. Declination: the low-precision formula
// of the Astronomical Almanac (from memory) in the middle of the leap cycle, within 0.2 deg of the same
// formula with the year known, 2008 to 2027. Equation of time: Spencer's series as the textbook prints it,
// within 1 min of the almanac's. Of sixteen published times of sunrise and sunset ten are met to the printed
// minute, all within 1.2 min (reference/sun_geometry/sunrise.csv). sun.hpp keeps Cooper's declination for the
// monthly method; the two differ by up to 1.1 deg, most in October.
#pragma once

namespace dewgap {

/// The sun's centre, geometric: refraction is left out (it lifts a rising sun by about 0.57 deg).
struct SunPosition {
  double altitude_deg = 0.0;  ///< above the horizon, -90 to 90
  double azimuth_deg = 0.0;   ///< compass degrees, clockwise from true north, 0 to 360
};

/// A place on the globe and the clock that its hours are told by. At a pole the azimuth is told as just
/// beside it on the meridian given.
struct SunSite {
  double latitude_deg = 0.0;   ///< -90 to 90, north positive
  double longitude_deg = 0.0;  ///< -180 to 180, east positive
  double utc_offset_h = 0.0;   ///< clock less UTC, -14 to 14
};

/// Solar time less mean solar time, minutes, at noon of a day 1 to 366. Spencer 1971, Duffie and Beckman eq.
/// 1.5.3, from memory.
double equation_of_time_min(int day_of_year);

/// Solar time, h, 0 to 24 (12: the sun crosses the meridian), at an hour UTC, -24 to 48: hours beyond the day
/// reach into its neighbours. Four minutes a degree of longitude and the equation of time (Duffie and Beckman
/// eq. 1.5.2).
double solar_time_h(double longitude_deg, int day_of_year, double hour_utc);

/// Altitude and azimuth of the sun at an hour UTC, -24 to 48.
SunPosition sun_position(double latitude_deg, double longitude_deg, int day_of_year, double hour_utc);

/// The sun over the hour that begins at `hour` of the clock, 0 to 23. Declination and equation of time stand
/// for the whole of the clock's day as at its noon, so that the hours of a day add up to the day.
struct SunOfHour {
  /// Azimuth in the middle of the hour's lit part, altitude whose sine is the mean of that part; the middle
  /// of the hour when it is dark.
  SunPosition position;
  double lit_share = 0.0;  ///< of the hour with the sun above the horizon, 0 to 1
  /// On the horizontal outside the atmosphere, mean of the whole hour:
  /// extraterrestrial_normal_W_m2 lit_share sin(altitude).
  double extraterrestrial_W_m2 = 0.0;
};
/// Where the sun sets and rises within one hour, the longer of the two lit parts counts. Less than 0.4 s of
/// sun count as dark.
SunOfHour sun_of_hour(const SunSite& site, int day_of_year, int hour);

/// Outside the atmosphere on a plane that faces the sun, W/m2: 1367 (1 + 0.033 cos(360 n / 365)), Duffie and
/// Beckman eq. 1.4.1, from memory.
double extraterrestrial_normal_W_m2(int day_of_year);

}  // namespace dewgap
