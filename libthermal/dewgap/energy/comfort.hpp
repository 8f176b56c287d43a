// Comfort at a point in a room: what the body loses to a cold window by radiation, what falls off it as cold
// air, and how many are dissatisfied.
//
// Formulas of ISO 7726, ISO 7730 and Heiselberg are recalled, not read: each says 'from memory'. Temperatures
// in C. Values outside a stated range throw InvalidInput; inside it, use beyond the range in which a
// correlation was validated raises a flag of validity.hpp.
#pragma once

#include "dewgap/validity.hpp"

namespace dewgap {

// ---- radiation

/// A rectangle before a small element, seen along the normal from the element to the rectangle's plane: its
/// edges are distances from the foot of that normal. left < right and low < high, each -100 to 100 m.
struct RectangleSeen {
  double left_m = -0.5;
  double right_m = 0.5;
  double low_m = -0.5;
  double high_m = 0.5;
  double distance_m = 1.0;  ///< of the plane from the element, 0.001 to 100
};

/// Which way the small element faces. All but the first stand at a right angle to the rectangle.
enum class ElementFaces { rectangle, away, right, left, up, down };

/// View factor from a small flat element to a rectangle, 0 to 1. Parallel: sum over the corners of
/// 1/(2 pi) [A/sqrt(1+A2) atan(B/sqrt(1+A2)) + B/sqrt(1+B2) atan(A/sqrt(1+B2))], A and B a corner's sides
/// over the distance; at a right angle: 1/(2 pi) [atan(b/c) - c/sqrt(a2+c2) atan(b/sqrt(a2+c2))]
/// (heat-transfer handbooks, ISO 7726 Annex C; from memory, checked by the sums over a closed room). Exact.
double view_factor(const RectangleSeen& rectangle, ElementFaces faces);

/// Plane radiant temperature: that of an even black hemisphere which sends a small element as much as
/// `rectangle_C` through the view factor and `rest_C` through what is left (ISO 7726, from memory). Surfaces
/// count as black: give the temperature that belongs to what a surface sends and reflects. -60 to 80 C.
double plane_radiant_temperature_C(double view_factor, double rectangle_C, double rest_C);

enum class Posture { seated, standing };

/// A window at one temperature, the rest of the room at another, seen from one point.
struct RadiantView {
  double plane_facing_window_C = 20.0;
  double plane_facing_room_C = 20.0;
  double asymmetry_K = 0.0;  ///< facing the room less facing the window: positive beside a cold window
  double mean_radiant_C = 20.0;
  double view_factor = 0.0;  ///< of a small element that faces the window
};

/// Six plane radiant temperatures about a person who faces the window or has it at the back, and their mean
/// weighted by projected areas (ISO 7726: seated 0.18 up and down, 0.22 at the sides, 0.30 front and back;
/// standing 0.08, 0.23, 0.35; from memory). -60 to 80 C.
RadiantView radiant_view(const RectangleSeen& window, double window_C, double rest_C,
                         Posture posture = Posture::seated);

/// Weighted mean of air and mean radiant temperature: 0.5 up to 0.2 m/s, 0.6 to 0.6 m/s, 0.7 to 1 m/s for
/// the air (ISO 7730, from memory). -30 to 60 C, 0 to 1 m/s.
double operative_temperature_C(double air_C, double mean_radiant_C, double air_speed_m_s);

/// Of a hundred, those whom the radiant asymmetry of a cool wall disturbs: 100 / (1 + exp(6.61 - 0.345 dT))
/// (ISO 7730:2005, from memory), 0 for no asymmetry or a warmer wall. Validated under 15 K, for people else
/// neutral. dT -100 to 100 K.
struct Dissatisfied {
  double per_cent = 0.0;
  ValidityFlags flags;
};
Dissatisfied dissatisfied_by_cool_wall(double asymmetry_K);

// ---- cold air

/// Highest speed and lowest temperature of the air that falls off a cold surface and runs out over the floor.
struct Downdraught {
  double speed_m_s = 0.0;
  double cooler_K = 0.0;  ///< than the room's air, of the coldest air in that layer
  ValidityFlags flags;
};

/// Heiselberg, Building and Environment 29 (1994) 297 (from memory), a surface of `height_m` (0.1 to 20) that
/// reaches the floor and is `difference_K` (0 to 60; below 0 there is no downdraught) colder than the room:
/// speed 0.055 sqrt(H dT) nearer than 0.4 m, 0.095 sqrt(H dT) / (x + 1.32) to 2 m, 0.028 sqrt(H dT) beyond;
/// coldest air (0.30 - 0.034 x) dT below the room's to 2 m, 0.23 dT beyond. Distance 0 to 10 m. Our flags,
/// since his range is not at hand: heights outside 1 to 4 m, differences outside 2 to 20 K. A sill and what
/// stands below it take up part of the fall: then `sill_m` > 0, the figure is an upper bound, flagged too.
Downdraught downdraught(double height_m, double difference_K, double distance_m, double sill_m = 0.0);

/// Draught rating, per cent: (34 - ta)(v - 0.05)^0.62 (0.37 v Tu + 3.14), v under 0.05 m/s as that, at most
/// 100 (ISO 7730 eq. 6, from memory). For sedentary people near neutral, at the neck; at the ankles it
/// overstates. Validated for 20 to 26 C, under 0.5 m/s, turbulence 10 to 60 %: else flagged. Air -30 to 34 C,
/// 0 to 2 m/s, turbulence 0 to 100 %; 40 % where nobody measured it (ISO 7730, from memory).
Dissatisfied draught_rating(double air_C, double air_speed_m_s, double turbulence_per_cent = 40.0);

// ---- thermal sensation

struct Person {
  double metabolic_met = 1.2;  ///< 58.15 W/m2 each, 0.5 to 8; 1.2 seated, quiet work
  double clothing_clo = 1.0;   ///< 0.155 m2 K/W each, 0 to 4; 1.0 indoors in winter
  double work_met = 0.0;       ///< external work, 0 to metabolic_met
};

struct RoomAt {
  double air_C = 20.0;           ///< 0 to 45
  double mean_radiant_C = 20.0;  ///< 0 to 60
  double air_speed_m_s = 0.1;    ///< relative to the body, 0 to 2
  double vapour_Pa = 1000.0;     ///< 0 to 6000
};

struct ThermalSensation {
  SolveStatus status = SolveStatus::iteration_limit;
  double mean_vote = 0.0;  ///< PMV: -3 cold to 3 hot
  double dissatisfied_per_cent = 0.0;
  double clothing_C = 0.0;  ///< surface of the clothing
  ValidityFlags flags;
};

/// Predicted mean vote and percentage dissatisfied, ISO 7730 eqs 1 to 5 (from memory). Validated for votes
/// within 2, 0.8 to 4 met, 0 to 2 clo, air 10 to 30 C, radiant 10 to 40 C, up to 1 m/s, up to 2700 Pa: else
/// flagged.
ThermalSensation thermal_sensation(const Person& person, const RoomAt& room);

}  // namespace dewgap
