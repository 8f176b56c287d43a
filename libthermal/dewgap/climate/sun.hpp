// Monthly mean sun on a plane of any tilt and facing, from monthly data or a marked model.
#pragma once

#include <array>

#include "dewgap/climate/places.hpp"

namespace dewgap {

/// Facing of a plane: degrees clockwise from true north as on a compass (0 N, 90 E, 180 S, 270 W).
struct PlaneFacing {
  double tilt_deg = 90.0;
  double compass_deg = 180.0;
};

struct MonthlySun {
  std::array<double, 12> plane_kWh_m2_day{};
  std::array<double, 12> horizontal_kWh_m2_day{};
  bool modelled = false;  ///< true when global radiation was estimated (from sunshine, or from latitude alone)
  bool from_latitude_alone = false;
};

/// Declination, deg, Cooper 1969; n is the day of the year 1..366.
double declination_deg(int day_of_year);
/// Daily extraterrestrial irradiation on the horizontal, MJ/m2, with the solar constant given (W/m2).
double extraterrestrial_MJ_m2(double latitude_deg, int day_of_year, double solar_constant_W_m2 = 1367.0);
/// Day length, h (geometric).
double day_length_h(double latitude_deg, int day_of_year);
/// cosine of the angle of incidence on a plane at an hour angle (deg, afternoon positive), Duffie and Beckman 1.6.2.
double cos_incidence(double latitude_deg, double declination_deg, double hour_angle_deg, const PlaneFacing& plane);

/// Monthly mean irradiation on a plane: global from the data, else Angstrom-Prescott from sunshine (a 0.25, b 0.50),
/// else a clearness index of 0.4 (all from memory); diffuse share by Collares-Pereira and Rabl's monthly fit,
/// hour by hour over Klein's mean day, isotropic sky, ground reflectance 0.2.
MonthlySun monthly_sun(const Place& place, const PlaneFacing& plane);

}  // namespace dewgap
