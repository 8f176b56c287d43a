#include "dewgap/climate/solar_position.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "dewgap/climate/solar_position_kernel.hpp"
#include "dewgap/climate/sun_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr double solar_constant_W_m2 = 1367.0;  // as sun.hpp; Duffie and Beckman, from memory
constexpr double least_lit_rad = 1e-4 * climate::hour_rad;

void require_day(int day_of_year) {
  require_in_range(day_of_year, {1.0, 366.0}, "day_of_year", "");
}

void require_moment(double longitude_deg, int day_of_year, double hour_utc) {
  require_in_range(longitude_deg, {-180.0, 180.0}, "longitude_deg", "deg");
  require_day(day_of_year);
  require_in_range(hour_utc, {-24.0, 48.0}, "hour_utc", "h");
}

// Angle of the year, rad: nought at noon of the first of January.
double year_angle(double day) {
  return 2.0 * climate::pi * (day - 1.0) / 365.0;
}

double day_of_moment(int day_of_year, double hour_utc) {
  return day_of_year + (hour_utc - 12.0) / 24.0;
}

// Solar time of a moment without wrapping: UTC, four minutes a degree, equation of time. Eq. 1.5.2.
double unwrapped_solar_time_h(double longitude_deg, int day_of_year, double hour_utc) {
  return hour_utc + longitude_deg / 15.0 +
         climate::mean_equation_of_time_min(day_of_moment(day_of_year, hour_utc)) / 60.0;
}

}  // namespace

namespace climate {

double mean_declination_deg(double day) {
  // Days from noon of 1 January 2000 to that of 1 January 2020, and the middle of the leap cycle.
  const double days = 20.0 * 365.25 + 0.375 + (day - 1.0);
  // Astronomical Almanac, low precision: mean longitude, mean anomaly, ecliptic longitude, obliquity.
  const double longitude_deg = 280.460 + 0.9856474 * days;
  const double anomaly = radians(357.528 + 0.9856003 * days);
  const double ecliptic_deg = longitude_deg + 1.915 * std::sin(anomaly) + 0.020 * std::sin(2.0 * anomaly);
  const double obliquity_deg = 23.439 - 4e-7 * days;
  return degrees(std::asin(std::sin(radians(obliquity_deg)) * std::sin(radians(ecliptic_deg))));
}

double mean_equation_of_time_min(double day) {
  const double b = year_angle(day);
  // Spencer 1971, Duffie and Beckman eq. 1.5.3, from memory.
  return 229.2 * (0.000075 + 0.001868 * std::cos(b) - 0.032077 * std::sin(b) - 0.014615 * std::cos(2.0 * b) -
                  0.04089 * std::sin(2.0 * b));
}

void require_valid(const SunSite& site) {
  require_in_range(site.latitude_deg, {-90.0, 90.0}, "latitude_deg", "deg");
  require_in_range(site.longitude_deg, {-180.0, 180.0}, "longitude_deg", "deg");
  require_in_range(site.utc_offset_h, {-14.0, 14.0}, "utc_offset_h", "h");
}

double SunPath::sine_of_altitude(double hour_angle_rad) const {
  return constant_part + cosine_part * std::cos(hour_angle_rad);
}

SunPosition SunPath::position(double hour_angle_rad) const {
  // Components of the direction to the sun: Duffie and Beckman eq. 1.6.5 and its companions.
  const double up = std::clamp(sine_of_altitude(hour_angle_rad), -1.0, 1.0);
  const double east = -std::cos(declination_rad) * std::sin(hour_angle_rad);
  const double north = std::cos(latitude_rad) * std::sin(declination_rad) -
                       std::sin(latitude_rad) * std::cos(declination_rad) * std::cos(hour_angle_rad);
  const double azimuth_deg = degrees(std::atan2(east, north));
  return {degrees(std::asin(up)), azimuth_deg < 0.0 ? azimuth_deg + 360.0 : azimuth_deg};
}

LitPart SunPath::lit_part(int hour) const {
  const double begin = clock_midnight_rad + hour * hour_rad;
  const double end = begin + hour_rad;
  if (sunset_rad >= pi) {
    return {begin, end};
  }
  LitPart longest;
  for (const double turn : {-2.0 * pi, 0.0, 2.0 * pi}) {
    const LitPart part{std::max(begin, turn - sunset_rad), std::min(end, turn + sunset_rad)};
    if (part.length_rad() > longest.length_rad()) {
      longest = part;
    }
  }
  return longest.length_rad() < least_lit_rad ? LitPart{} : longest;
}

double LitPart::share_of_hour() const {
  return std::min(1.0,
                  length_rad() / hour_rad);  // rounding may pass a whole hour by a unit of the last place
}

double SunPath::mean_sine(const LitPart& lit) const {
  // Integral of constant + cosine cos(w).
  return constant_part + cosine_part * (std::sin(lit.end_rad) - std::sin(lit.begin_rad)) / lit.length_rad();
}

SunPath sun_path_at_declination(double latitude_deg, double declination_deg) {
  SunPath path;
  path.latitude_rad = radians(latitude_deg);
  path.declination_rad = radians(declination_deg);
  path.constant_part = std::sin(path.latitude_rad) * std::sin(path.declination_rad);
  path.cosine_part = std::cos(path.latitude_rad) * std::cos(path.declination_rad);
  path.sunset_rad = sunset_hour_angle_rad(latitude_deg, declination_deg);
  path.clock_midnight_rad = -pi;
  return path;
}

SunPath sun_path(const SunSite& site, int day_of_year) {
  const double noon_utc_h = 12.0 - site.utc_offset_h;
  auto path = sun_path_at_declination(site.latitude_deg,
                                      mean_declination_deg(day_of_moment(day_of_year, noon_utc_h)));
  // 15 degrees an hour from solar noon, at the clock's midnight before its noon.
  path.clock_midnight_rad =
      hour_rad * (unwrapped_solar_time_h(site.longitude_deg, day_of_year, noon_utc_h) - 24.0);
  // The clock may be far from the sun's: keep the day about its noon.
  path.clock_midnight_rad = std::remainder(path.clock_midnight_rad + pi, 2.0 * pi) - pi;
  return path;
}

}  // namespace climate

double equation_of_time_min(int day_of_year) {
  require_day(day_of_year);
  return climate::mean_equation_of_time_min(day_of_year);
}

double solar_time_h(double longitude_deg, int day_of_year, double hour_utc) {
  require_moment(longitude_deg, day_of_year, hour_utc);
  const double time_h = std::fmod(unwrapped_solar_time_h(longitude_deg, day_of_year, hour_utc) + 48.0, 24.0);
  return time_h;
}

SunPosition sun_position(double latitude_deg, double longitude_deg, int day_of_year, double hour_utc) {
  require_in_range(latitude_deg, {-90.0, 90.0}, "latitude_deg", "deg");
  require_moment(longitude_deg, day_of_year, hour_utc);
  const double declination = climate::mean_declination_deg(day_of_moment(day_of_year, hour_utc));
  const double hour_angle =
      climate::hour_rad * (unwrapped_solar_time_h(longitude_deg, day_of_year, hour_utc) - 12.0);
  return climate::sun_path_at_declination(latitude_deg, declination).position(hour_angle);
}

SunOfHour sun_of_hour(const SunSite& site, int day_of_year, int hour) {
  climate::require_valid(site);
  require_day(day_of_year);
  require_in_range(hour, {0.0, 23.0}, "hour", "");
  const auto path = climate::sun_path(site, day_of_year);
  const auto lit = path.lit_part(hour);
  if (lit.is_dark()) {
    return {.position = path.position(path.clock_midnight_rad + (hour + 0.5) * climate::hour_rad)};
  }
  const double sine = std::clamp(path.mean_sine(lit), 0.0, 1.0);
  return {.position = {climate::degrees(std::asin(sine)), path.position(lit.middle_rad()).azimuth_deg},
          .lit_share = lit.share_of_hour(),
          .extraterrestrial_W_m2 = extraterrestrial_normal_W_m2(day_of_year) * lit.share_of_hour() * sine};
}

double extraterrestrial_normal_W_m2(int day_of_year) {
  require_day(day_of_year);
  return solar_constant_W_m2 * (1.0 + 0.033 * std::cos(climate::radians(360.0 * day_of_year / 365.0)));
}

}  // namespace dewgap
