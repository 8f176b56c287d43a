#include "dewgap/climate/plane_irradiance.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/climate/places_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

void require_position(const SunPosition& sun) {
  require_in_range(sun.altitude_deg, {-90.0, 90.0}, "altitude_deg", "deg");
  require_in_range(sun.azimuth_deg, {0.0, 360.0}, "azimuth_deg", "deg");
}

void require_plane(const PlaneFacing& plane) {
  require_in_range(plane.tilt_deg, {0.0, 180.0}, "tilt_deg", "deg");
  require_in_range(plane.compass_deg, {0.0, 360.0}, "compass_deg", "deg");
}

// Cosine of the angle between the sun and the plane's normal, from altitude and azimuth (Duffie and Beckman
// eq. 1.6.3 with the sun's own angles).
double cos_to_plane(const SunPosition& sun, const PlaneFacing& plane) {
  const double altitude = climate::radians(sun.altitude_deg);
  const double tilt = climate::radians(plane.tilt_deg);
  return std::sin(altitude) * std::cos(tilt) +
         std::cos(altitude) * std::sin(tilt) *
             std::cos(climate::radians(sun.azimuth_deg - plane.compass_deg));
}

}  // namespace

PlaneIrradiance plane_irradiance(const SkyIrradiance& sky, const SunPosition& sun, const PlaneFacing& plane,
                                 double ground_reflectance) {
  require_in_range(sky.beam_normal_W_m2, {0.0, 1450.0}, "beam_normal_W_m2", "W/m2");
  require_in_range(sky.diffuse_horizontal_W_m2, {0.0, 1500.0}, "diffuse_horizontal_W_m2", "W/m2");
  require_position(sun);
  require_plane(plane);
  require_in_range(ground_reflectance, {0.0, 1.0}, "ground_reflectance", "");
  const double beam_W_m2 = sun.altitude_deg > 0.0 ? sky.beam_normal_W_m2 : 0.0;
  const double global_W_m2 =
      sky.diffuse_horizontal_W_m2 + beam_W_m2 * std::sin(climate::radians(sun.altitude_deg));
  const double cos_tilt = std::cos(climate::radians(plane.tilt_deg));
  // Duffie and Beckman eq. 2.15.1: beam, sky, ground.
  return {.beam_W_m2 = beam_W_m2 * std::max(0.0, cos_to_plane(sun, plane)),
          .sky_W_m2 = sky.diffuse_horizontal_W_m2 * 0.5 * (1.0 + cos_tilt),
          .ground_W_m2 = global_W_m2 * ground_reflectance * 0.5 * (1.0 - cos_tilt)};
}

double hourly_diffuse_share(double clearness) {
  require_in_range(clearness, {0.0, 1.0}, "clearness", "");
  const double k = clearness;
  // Erbs, Klein and Duffie 1982, hourly; Duffie and Beckman eq. 2.10.1. From memory.
  if (k <= 0.22) {
    return 1.0 - 0.09 * k;
  }
  if (k <= 0.80) {
    return 0.9511 + k * (-0.1604 + k * (4.388 + k * (-16.638 + k * 12.336)));
  }
  return 0.165;
}

SkyIrradiance split_global(double global_W_m2, const SunOfHour& sun) {
  require_in_range(global_W_m2, {0.0, 1500.0}, "global_W_m2", "W/m2");
  require_in_range(sun.extraterrestrial_W_m2, {0.0, 1450.0}, "extraterrestrial_W_m2", "W/m2");
  require_position(sun.position);
  const double sine = std::sin(climate::radians(sun.position.altitude_deg));
  if (sun.extraterrestrial_W_m2 <= 0.0 || sine <= 0.0) {
    return {.diffuse_horizontal_W_m2 = global_W_m2};
  }
  const double through_W_m2 = std::min(global_W_m2, sun.extraterrestrial_W_m2);
  const double share = hourly_diffuse_share(through_W_m2 / sun.extraterrestrial_W_m2);
  const double direct_W_m2 = through_W_m2 * (1.0 - share);
  return {.beam_normal_W_m2 = direct_W_m2 / sine, .diffuse_horizontal_W_m2 = global_W_m2 - direct_W_m2};
}

}  // namespace dewgap
