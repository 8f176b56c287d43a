// Monthly mean sun on a plane of any tilt and facing, from monthly data or a marked model.
#pragma once

#include <array>

#include "dewgap/climate/places.hpp"

namespace dewgap {

/// Facing of a plane: degrees clockwise from true north as on a compass (0 N, 90 E, 180 S, 270 W).
struct PlaneFacing {
  double tilt_deg = 90.0;      ///< from the horizontal, 0 to 180
  double compass_deg = 180.0;  ///< 0 to 360
};

struct MonthlySun {
  std::array<double, 12> plane_kWh_m2_day{};
  std::array<double, 12> horizontal_kWh_m2_day{};
  bool modelled = false;  ///< any month's global radiation was estimated, from sunshine or latitude
  bool from_latitude_alone = false;  ///< any month's, for want of both radiation and sunshine
};

/// Declination, deg, Cooper 1969: 23.45 sin(360 (284 + n) / 365); n is the day of the year 1..366.
double declination_deg(int day_of_year);
/// Daily extraterrestrial irradiation on the horizontal, MJ/m2, with the solar constant given (W/m2, 1300 to
/// 1450). Latitude -90 to 90. Zero in polar night. Duffie and Beckman eq. 1.10.3, from memory.
double extraterrestrial_MJ_m2(double latitude_deg, int day_of_year, double solar_constant_W_m2 = 1367.0);
/// Day length, h (geometric: the sun's centre, no refraction): 2/15 of the sunset hour angle; 0 in polar
/// night, 24 in polar day.
double day_length_h(double latitude_deg, int day_of_year);
/// cosine of the angle of incidence on a plane at an hour angle (deg, -180 to 180, afternoon positive),
/// Duffie and Beckman eq. 1.6.2; negative when the sun is behind the plane. Declination -24 to 24.
double cos_incidence(double latitude_deg, double declination_deg, double hour_angle_deg,
                     const PlaneFacing& plane);

/// Monthly mean irradiation on a plane: global from the data, else Angstrom-Prescott from sunshine (a 0.25, b
/// 0.50), else a clearness index of 0.4 (our convention; Dublin's measured months lie at 0.32 to 0.46);
/// diffuse share by Erbs, Klein and Beckman's monthly fit (1982), through the mean day of each month (Klein
/// 1977) in small steps, hourly shares by Liu and Jordan and Collares-Pereira and Rabl, isotropic sky, ground
/// reflectance 0.2. Formulas from memory.
///
/// Measured against two hourly years (45 N and 36 N, 24 months): the diffuse share differs by 0.036 r.m.s.,
/// -0.022 on average. Collares-Pereira and Rabl's monthly fit differs by 0.039 and -0.012 there, but falls to
/// 0.42 in Dublin's December of clearness 0.32 (here 0.61), too clear for so dull a month, so it is not used.
/// On vertical planes the year comes out within 8 % (south +2, north +1, east +7, west +4 %), a month within
/// 20 % but for two of 96, which are up to 21 % high: the model's days are symmetric about noon, the files'
/// are not. Dublin's measured year is met within 2 % from sunshine and 5 % from latitude alone.
///
/// Leaves out: horizon, reveal, neighbours, the brighter sky round the sun, snow. Throws when a month's
/// sunshine is longer than its days or its radiation more than outside the atmosphere.
MonthlySun monthly_sun(const Place& place, const PlaneFacing& plane);

}  // namespace dewgap
