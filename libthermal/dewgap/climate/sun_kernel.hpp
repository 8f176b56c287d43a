// Steps of the sun's geometry and of the monthly method. Private to the library; tests check them term by
// term.
#pragma once

#include <array>

#include "dewgap/climate/places_kernel.hpp"
#include "dewgap/climate/sun.hpp"

namespace dewgap::climate {

/// Day of the year whose extraterrestrial irradiation is nearest to the month's mean, Klein 1977, from
/// memory.
inline constexpr std::array<int, 12> klein_mean_day{17, 47, 75, 105, 135, 162, 198, 228, 258, 288, 318, 344};

/// Hour angle of sunset, rad: 0 in polar night, pi in polar day. Duffie and Beckman eq. 1.6.10.
double sunset_hour_angle_rad(double latitude_deg, double declination_deg);

/// extraterrestrial_MJ_m2 with the declination given.
double extraterrestrial_at_declination_MJ_m2(double latitude_deg, double declination_deg, int day_of_year,
                                             double solar_constant_W_m2);

/// The five terms of Duffie and Beckman eq. 1.6.2, in its order; cos_incidence is their sum.
std::array<double, 5> incidence_terms(double latitude_deg, double declination_deg, double hour_angle_deg,
                                      const PlaneFacing& plane);

/// Diffuse over global, monthly means, by clearness index 0..1: Erbs, Klein and Beckman 1982, fitted for 0.3
/// to 0.8. Below 0.3 straight to 1 at 0 (an overcast sky is all diffuse), above 0.8 as at 0.8: our
/// convention.
double monthly_diffuse_share(double clearness, double sunset_hour_angle_rad);

/// A mean day as the monthly method sees it.
struct MeanDay {
  double latitude_deg;
  double declination_deg;
  double global_kWh_m2;
  double diffuse_share;
};

/// Irradiation on the plane over the mean day, kWh/m2.
double plane_of_day_kWh_m2(const MeanDay& day, const PlaneFacing& plane);

}  // namespace dewgap::climate
