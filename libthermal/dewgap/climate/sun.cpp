#include "dewgap/climate/sun.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/climate/sun_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr double ground_reflectance = 0.2;  // Liu and Jordan, from memory
constexpr double angstrom_a = 0.25;         // Angstrom and Prescott, FAO Paper 56 eq. 35, from memory
constexpr double angstrom_b = 0.50;
constexpr double default_clearness = 0.4;  // our convention
constexpr double MJ_per_kWh = 3.6;
constexpr int steps_per_day = 144;         // of the mean day between sunrise and sunset
constexpr double shortest_day_rad = 0.01;  // half-days under 2.3 minutes bring no beam

/// The global radiation of a month and where it comes from.
struct Global {
  double kWh_m2_day = 0.0;
  bool from_sunshine = false;
  bool from_latitude = false;
};

Global measured_global(double kWh_m2_day, double outside_kWh_m2_day) {
  require_in_range(kWh_m2_day, {0.0, outside_kWh_m2_day}, "global_kWh_m2_day", "kWh/(m2 day)");
  return {.kWh_m2_day = kWh_m2_day};
}

Global global_of_month(const Place& place, std::size_t month) {
  const auto& normals = place.months[month];
  const int day = climate::klein_mean_day[month];
  const double outside_kWh_m2_day = extraterrestrial_MJ_m2(place.latitude_deg, day) / MJ_per_kWh;
  if (normals.global_kWh_m2_day) {
    return measured_global(*normals.global_kWh_m2_day, outside_kWh_m2_day);
  }
  if (!normals.sunshine_h) {
    return {.kWh_m2_day = default_clearness * outside_kWh_m2_day, .from_latitude = true};
  }
  const double possible_h = day_length_h(place.latitude_deg, day) * days_of_month[month];
  require_in_range(*normals.sunshine_h, {0.0, possible_h}, "sunshine_h", "h");
  const double share = possible_h > 0.0 ? *normals.sunshine_h / possible_h : 0.0;
  // Angstrom-Prescott: H / H0 = a + b n/N.
  return {.kWh_m2_day = (angstrom_a + angstrom_b * share) * outside_kWh_m2_day, .from_sunshine = true};
}

double erbs_polynomial(double clearness, double sunset_hour_angle_rad) {
  const double k = clearness;
  // Erbs, Klein and Beckman 1982, monthly; winter below 81.4 degrees, else spring to autumn. From memory.
  return climate::degrees(sunset_hour_angle_rad) <= 81.4
             ? 1.391 - 3.560 * k + 4.189 * k * k - 2.137 * k * k * k
             : 1.311 - 3.022 * k + 3.427 * k * k - 1.821 * k * k * k;
}

climate::MeanDay mean_day(const Place& place, std::size_t month, double global_kWh_m2) {
  const int day = climate::klein_mean_day[month];
  const double declination = declination_deg(day);
  const double outside_kWh_m2 = extraterrestrial_MJ_m2(place.latitude_deg, day) / MJ_per_kWh;
  const double clearness = outside_kWh_m2 > 0.0 ? global_kWh_m2 / outside_kWh_m2 : 0.0;
  const double sunset = climate::sunset_hour_angle_rad(place.latitude_deg, declination);
  return {.latitude_deg = place.latitude_deg,
          .declination_deg = declination,
          .global_kWh_m2 = global_kWh_m2,
          .diffuse_share = climate::monthly_diffuse_share(clearness, sunset)};
}

/// Shares of the day's global and diffuse radiation that fall in each step, each adding up to 1.
struct DayShares {
  std::array<double, steps_per_day> hour_angle_rad{};
  std::array<double, steps_per_day> global{};
  std::array<double, steps_per_day> diffuse{};
};

std::array<double, steps_per_day> normalised(std::array<double, steps_per_day> shares) {
  double sum = 0.0;
  for (const double share : shares) {
    sum += share;
  }
  for (double& share : shares) {
    share /= sum;
  }
  return shares;
}

DayShares day_shares(double sunset) {
  // Collares-Pereira and Rabl 1979, global; Liu and Jordan 1960, diffuse. Both from memory.
  const double a = 0.409 + 0.5016 * std::sin(sunset - climate::radians(60.0));
  const double b = 0.6609 - 0.4767 * std::sin(sunset - climate::radians(60.0));
  DayShares shares;
  for (std::size_t i = 0; i < steps_per_day; ++i) {
    const double hour_angle = sunset * (2.0 * (static_cast<double>(i) + 0.5) / steps_per_day - 1.0);
    const double sine_of_altitude_shape = std::cos(hour_angle) - std::cos(sunset);
    shares.hour_angle_rad[i] = hour_angle;
    shares.diffuse[i] = sine_of_altitude_shape;
    shares.global[i] = (a + b * std::cos(hour_angle)) * sine_of_altitude_shape;
  }
  shares.global = normalised(shares.global);
  shares.diffuse = normalised(shares.diffuse);
  return shares;
}

}  // namespace

namespace climate {

double monthly_diffuse_share(double clearness, double sunset_hour_angle_rad) {
  require_in_range(clearness, {0.0, 1.0}, "clearness", "");
  if (clearness < 0.3) {
    const double at_edge = erbs_polynomial(0.3, sunset_hour_angle_rad);
    return 1.0 + (at_edge - 1.0) * clearness / 0.3;
  }
  return erbs_polynomial(std::min(clearness, 0.8), sunset_hour_angle_rad);
}

double plane_of_day_kWh_m2(const MeanDay& day, const PlaneFacing& plane) {
  const double cos_tilt = std::cos(radians(plane.tilt_deg));
  const double sky_view = 0.5 * (1.0 + cos_tilt);
  const double from_ground = 0.5 * (1.0 - cos_tilt) * ground_reflectance;
  const double sunset = sunset_hour_angle_rad(day.latitude_deg, day.declination_deg);
  if (sunset < shortest_day_rad) {
    return day.global_kWh_m2 * (sky_view + from_ground);  // polar night
  }
  const auto shares = day_shares(sunset);
  double sum_kWh_m2 = 0.0;
  for (std::size_t i = 0; i < steps_per_day; ++i) {
    const double global = day.global_kWh_m2 * shares.global[i];
    // Near sunset the two fits may cross: then all of the step's radiation is diffuse.
    const double diffuse = std::min(global, day.global_kWh_m2 * day.diffuse_share * shares.diffuse[i]);
    const double hour_angle_deg = degrees(shares.hour_angle_rad[i]);
    const double on_horizontal =
        cos_incidence(day.latitude_deg, day.declination_deg, hour_angle_deg, {0.0, 0.0});
    const double on_plane =
        std::max(0.0, cos_incidence(day.latitude_deg, day.declination_deg, hour_angle_deg, plane));
    // Liu and Jordan's isotropic sky, Duffie and Beckman eq. 2.15.1: beam, sky, ground.
    sum_kWh_m2 += (global - diffuse) * on_plane / on_horizontal + diffuse * sky_view + global * from_ground;
  }
  return sum_kWh_m2;
}

}  // namespace climate

MonthlySun monthly_sun(const Place& place, const PlaneFacing& plane) {
  require_valid(place);
  require_in_range(plane.tilt_deg, {0.0, 180.0}, "tilt_deg", "deg");
  require_in_range(plane.compass_deg, {0.0, 360.0}, "compass_deg", "deg");
  MonthlySun sun;
  for (std::size_t month = 0; month < place.months.size(); ++month) {
    const auto global = global_of_month(place, month);
    sun.horizontal_kWh_m2_day[month] = global.kWh_m2_day;
    sun.plane_kWh_m2_day[month] =
        climate::plane_of_day_kWh_m2(mean_day(place, month, global.kWh_m2_day), plane);
    sun.modelled = sun.modelled || global.from_sunshine || global.from_latitude;
    sun.from_latitude_alone = sun.from_latitude_alone || global.from_latitude;
  }
  return sun;
}

}  // namespace dewgap
