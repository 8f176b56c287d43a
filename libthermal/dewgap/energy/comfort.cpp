#include "dewgap/energy/comfort.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "dewgap/air/constants.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr PermittedRange radiant_C{-60.0, 80.0};

/// Of a corner straight before an element that looks at the plane; odd in both.
double facing_corner(double x_m, double y_m, double distance_m) {
  const double a = x_m / distance_m;
  const double b = y_m / distance_m;
  const double root_a = std::sqrt(1.0 + a * a);
  const double root_b = std::sqrt(1.0 + b * b);
  // Differential element to a parallel rectangle with its corner on the normal, from memory
  return (a / root_a * std::atan(b / root_a) + b / root_b * std::atan(a / root_b)) / (2.0 * std::numbers::pi);
}

/// Of a strip from 0 to `along_m` in the direction in which an element at a right angle to the plane looks,
/// 0 to `across_m` beside; odd in the second.
double sideways_corner(double along_m, double across_m, double distance_m) {
  const double slant_m = std::hypot(along_m, distance_m);
  // Differential element to a rectangle at a right angle, from memory
  return (std::atan(across_m / distance_m) - distance_m / slant_m * std::atan(across_m / slant_m)) /
         (2.0 * std::numbers::pi);
}

/// Extents along the way that the element looks, and across it.
struct Extents {
  double near_m;
  double far_m;
  double first_m;
  double last_m;
};

double sideways(const Extents& at, double distance_m) {
  const double near_m = std::max(0.0, at.near_m);  // an element sees nothing behind its own plane
  const double far_m = std::max(0.0, at.far_m);
  const auto corner = [&](double along_m, double across_m) {
    return sideways_corner(along_m, across_m, distance_m);
  };
  return corner(far_m, at.last_m) - corner(near_m, at.last_m) - corner(far_m, at.first_m) +
         corner(near_m, at.first_m);
}

double facing(const RectangleSeen& r) {
  const auto corner = [&](double x_m, double y_m) { return facing_corner(x_m, y_m, r.distance_m); };
  return corner(r.right_m, r.high_m) - corner(r.left_m, r.high_m) - corner(r.right_m, r.low_m) +
         corner(r.left_m, r.low_m);
}

void validate(const RectangleSeen& r) {
  constexpr PermittedRange extent_m{-100.0, 100.0};
  require_in_range(r.left_m, extent_m, "left_m", "m");
  require_in_range(r.right_m, extent_m, "right_m", "m");
  require_in_range(r.low_m, extent_m, "low_m", "m");
  require_in_range(r.high_m, extent_m, "high_m", "m");
  require_in_range(r.distance_m, {0.001, 100.0}, "distance_m", "m");
  if (r.left_m >= r.right_m || r.low_m >= r.high_m) {
    throw InvalidInput("rectangle", "has no area: left must lie left of right and low below high");
  }
}

double fourth_power_K4(double temperature_C) {
  const double kelvin = constants::kelvin(temperature_C);
  return kelvin * kelvin * kelvin * kelvin;
}

/// Shares of the projected area that a person shows to each of two opposite directions.
struct ProjectedAreas {
  double up_and_down;
  double sides;
  double front_and_back;
};
ProjectedAreas projected_areas(Posture posture) {
  // ISO 7726 Annex C, from memory
  return posture == Posture::seated ? ProjectedAreas{0.18, 0.22, 0.30} : ProjectedAreas{0.08, 0.23, 0.35};
}

}  // namespace

double view_factor(const RectangleSeen& r, ElementFaces faces) {
  validate(r);
  switch (faces) {
    case ElementFaces::rectangle:
      return facing(r);
    case ElementFaces::away:
      return 0.0;
    case ElementFaces::right:
      return sideways({r.left_m, r.right_m, r.low_m, r.high_m}, r.distance_m);
    case ElementFaces::left:
      return sideways({-r.right_m, -r.left_m, r.low_m, r.high_m}, r.distance_m);
    case ElementFaces::up:
      return sideways({r.low_m, r.high_m, r.left_m, r.right_m}, r.distance_m);
    case ElementFaces::down:
      return sideways({-r.high_m, -r.low_m, r.left_m, r.right_m}, r.distance_m);
  }
  throw InvalidInput("faces", "is not a direction");
}

double plane_radiant_temperature_C(double view_factor, double rectangle_C, double rest_C) {
  require_in_range(view_factor, {0.0, 1.0}, "view_factor", "");
  require_in_range(rectangle_C, radiant_C, "rectangle_C", "C");
  require_in_range(rest_C, radiant_C, "rest_C", "C");
  // ISO 7726 eq. for t_pr: sum of F T^4, black surfaces, from memory
  const double sum =
      view_factor * fourth_power_K4(rectangle_C) + (1.0 - view_factor) * fourth_power_K4(rest_C);
  return std::sqrt(std::sqrt(sum)) - constants::celsius_zero_K;
}

RadiantView radiant_view(const RectangleSeen& window, double window_C, double rest_C, Posture posture) {
  const auto plane_C = [&](ElementFaces faces) {
    return plane_radiant_temperature_C(view_factor(window, faces), window_C, rest_C);
  };
  RadiantView view;
  view.view_factor = view_factor(window, ElementFaces::rectangle);
  view.plane_facing_window_C = plane_C(ElementFaces::rectangle);
  view.plane_facing_room_C = plane_C(ElementFaces::away);
  view.asymmetry_K = view.plane_facing_room_C - view.plane_facing_window_C;
  // ISO 7726: mean radiant temperature from six plane ones, from memory
  const auto areas = projected_areas(posture);
  const double sum = areas.up_and_down * (plane_C(ElementFaces::up) + plane_C(ElementFaces::down)) +
                     areas.sides * (plane_C(ElementFaces::left) + plane_C(ElementFaces::right)) +
                     areas.front_and_back * (view.plane_facing_window_C + view.plane_facing_room_C);
  view.mean_radiant_C = sum / (2.0 * (areas.up_and_down + areas.sides + areas.front_and_back));
  return view;
}

double operative_temperature_C(double air_C, double mean_radiant_C, double air_speed_m_s) {
  require_in_range(air_C, {-30.0, 60.0}, "air_C", "C");
  require_in_range(mean_radiant_C, {-30.0, 60.0}, "mean_radiant_C", "C");
  require_in_range(air_speed_m_s, {0.0, 1.0}, "air_speed_m_s", "m/s");
  // ISO 7730, from memory
  const double air_share = air_speed_m_s < 0.2 ? 0.5 : air_speed_m_s < 0.6 ? 0.6 : 0.7;
  return air_share * air_C + (1.0 - air_share) * mean_radiant_C;
}

Dissatisfied dissatisfied_by_cool_wall(double asymmetry_K) {
  constexpr double validated_K = 15.0;
  require_in_range(asymmetry_K, {-100.0, 100.0}, "asymmetry_K", "K");
  Dissatisfied result;
  if (asymmetry_K <= 0.0) {
    return result;  // the curve itself keeps 0.13 % here: no wall is cool
  }
  // ISO 7730:2005, cool wall, from memory
  result.per_cent = 100.0 / (1.0 + std::exp(6.61 - 0.345 * asymmetry_K));
  if (asymmetry_K >= validated_K) {
    result.flags.raise(ValidityFlag::radiant_asymmetry_range);
  }
  return result;
}

Downdraught downdraught(double height_m, double difference_K, double distance_m, double sill_m) {
  constexpr double near_m = 0.4;
  constexpr double far_m = 2.0;
  require_in_range(height_m, {0.1, 20.0}, "height_m", "m");
  require_in_range(difference_K, {-60.0, 60.0}, "difference_K", "K");
  require_in_range(distance_m, {0.0, 10.0}, "distance_m", "m");
  require_in_range(sill_m, {0.0, 10.0}, "sill_m", "m");
  Downdraught air;
  if (difference_K <= 0.0) {
    return air;
  }
  // Heiselberg 1994: highest speed, from memory
  const double root = std::sqrt(height_m * difference_K);
  air.speed_m_s = distance_m < near_m   ? 0.055 * root
                  : distance_m <= far_m ? 0.095 * root / (distance_m + 1.32)
                                        : 0.028 * root;
  // Heiselberg 1994: coldest air, from memory
  air.cooler_K = difference_K * (distance_m <= far_m ? 0.30 - 0.034 * distance_m : 0.23);
  if (height_m < 1.0 || height_m > 4.0 || difference_K < 2.0 || difference_K > 20.0) {
    air.flags.raise(ValidityFlag::downdraught_range);
  }
  if (sill_m > 0.0) {
    air.flags.raise(ValidityFlag::downdraught_over_sill);
  }
  return air;
}

Dissatisfied draught_rating(double air_C, double air_speed_m_s, double turbulence_per_cent) {
  constexpr double still_m_s = 0.05;
  require_in_range(air_C, {-30.0, 34.0}, "air_C", "C");
  require_in_range(air_speed_m_s, {0.0, 2.0}, "air_speed_m_s", "m/s");
  require_in_range(turbulence_per_cent, {0.0, 100.0}, "turbulence_per_cent", "%");
  // ISO 7730 eq. 6, from memory
  const double speed_m_s = std::max(still_m_s, air_speed_m_s);
  const double rating = (34.0 - air_C) * std::pow(speed_m_s - still_m_s, 0.62) *
                        (0.37 * speed_m_s * turbulence_per_cent + 3.14);
  Dissatisfied result{.per_cent = std::min(100.0, rating), .flags = {}};
  const bool validated = air_C >= 20.0 && air_C <= 26.0 && air_speed_m_s < 0.5 &&
                         turbulence_per_cent >= 10.0 && turbulence_per_cent <= 60.0;
  if (!validated) {
    result.flags.raise(ValidityFlag::draught_rating_range);
  }
  return result;
}

}  // namespace dewgap
