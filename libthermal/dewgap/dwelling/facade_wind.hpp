// Wind on a facade: its pressure coefficient by the angle, and the angle by compass or from a model.
#pragma once

#include <cstddef>
#include <cstdint>

#include "dewgap/dwelling/pressure.hpp"

namespace dewgap {

/// Mean pressure coefficient of the facade: windward at 0, side at 90, leeward at 180 degrees between the
/// wind's origin and the facade's outward normal (-360 to 360, even). Coefficients -1.5 to 1.2.
///
/// C = a + b cos(angle) + c cos(2 angle) through the three: our convention, smooth everywhere. Its shape, as
/// the share of the way from side to windward at 45 degrees, is 0.62 to 0.64 for the four shelters: between
/// Liddament's low-rise walls (AIVC; 0.57 semi-sheltered, 0.71 exposed), and less than Swami and Chandra's
/// (ASHRAE Trans. 1988, 0.73) and Walker and Wilson's (1994, 0.72 to 0.75). It lies within 0.13 of Walker and
/// Wilson's at every angle and shelter. All of these from memory. Towards the lee it may dip below both side
/// and leeward, by up to 0.025 for the four shelters; published walls do so too.
double facade_pressure_coefficient(const PressureCoefficients& coefficients, double angle_from_normal_deg);

/// Angle between where the wind comes from and what the facade faces, both compass 0 to 360: 0 to 180.
double angle_from_normal_deg(double wind_from_compass_deg, double facing_compass_deg);

/// Spread of a day's mean wind direction about the prevailing one, standard deviation: our convention.
inline constexpr double modelled_wind_spread_deg = 60.0;

/// The angle where the weather tells no direction: the prevailing angle (0 to 180) plus a normal deviate of
/// modelled_wind_spread_deg, one value a day, folded to 0..180. Days are independent of each other and of the
/// wind's speed; the same seed and day always give the same. Our convention.
double modelled_wind_angle_deg(double prevailing_angle_deg, std::size_t day, std::uint64_t seed);

}  // namespace dewgap
