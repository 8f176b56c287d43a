// Sun on a plane of any tilt and facing at one hour, and the parts of a global irradiance.
#pragma once

#include "dewgap/climate/solar_position.hpp"
#include "dewgap/climate/sun.hpp"

namespace dewgap {

/// What comes from the sky.
struct SkyIrradiance {
  double beam_normal_W_m2 = 0.0;         ///< on a plane that faces the sun, 0 to 1450
  double diffuse_horizontal_W_m2 = 0.0;  ///< 0 to 1500
};

struct PlaneIrradiance {
  double beam_W_m2 = 0.0;
  double sky_W_m2 = 0.0;
  double ground_W_m2 = 0.0;
  double total_W_m2() const { return beam_W_m2 + sky_W_m2 + ground_W_m2; }
};

inline constexpr double default_ground_reflectance = 0.2;  ///< Liu and Jordan, bare ground, from memory

/// Irradiance on a plane: beam by the cosine of its angle, an isotropic sky (Liu and Jordan 1960; Duffie and
/// Beckman eq. 2.15.1, from memory), ground of reflectance 0 to 1 that the global irradiance lights evenly. A
/// sun on or below the horizon, or behind the plane, gives no beam. Leaves out: horizon, reveal, neighbours,
/// the brighter sky round the sun and along the horizon, which make a plane towards the sun get more and one
/// away from it less. How far that goes has not been measured here: no measured vertical irradiance was at
/// hand.
PlaneIrradiance plane_irradiance(const SkyIrradiance& sky, const SunPosition& sun, const PlaneFacing& plane,
                                 double ground_reflectance = default_ground_reflectance);

/// Diffuse over global of an hour of clearness 0 to 1: Erbs, Klein and Duffie 1982, hourly, from memory.
/// Their pieces meet within 0.0005 at clearness 0.22 and 0.80. A mean: single hours of one clearness spread
/// widely about it.
double hourly_diffuse_share(double clearness);

/// Beam and diffuse of an hour of which only the global irradiance is known, 0 to 1500 W/m2, so that
/// global = diffuse + beam sin(altitude of sun.position). Global beyond the extraterrestrial of the hour
/// (twilight, bright cloud edges, clocks that are off) counts as diffuse.
SkyIrradiance split_global(double global_W_m2, const SunOfHour& sun);

}  // namespace dewgap
