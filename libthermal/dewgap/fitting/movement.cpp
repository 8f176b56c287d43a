#include "dewgap/fitting/movement.hpp"

#include <cmath>

#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr PermittedRange shank_range_m{0.001, 0.020};
constexpr PermittedRange length_range_m{0.0, 10.0};
constexpr PermittedRange movement_range_m{0.0, 0.1};

double play_m(double hole_diameter_m, double shank_diameter_m) {
  require_in_range(shank_diameter_m, shank_range_m, "shank_diameter_m", "m");
  require_in_range(hole_diameter_m, {shank_diameter_m, 0.1}, "hole_diameter_m", "m");
  if (!(hole_diameter_m > shank_diameter_m)) {
    throw InvalidInput("hole_diameter_m", "is no wider than the shank, so the sheet cannot move");
  }
  return hole_diameter_m - shank_diameter_m;
}

}  // namespace

double thermal_movement_m(SheetKind sheet, double length_m, double temperature_range_K) {
  require_in_range(length_m, length_range_m, "length_m", "m");
  require_in_range(temperature_range_K, {0.0, 150.0}, "temperature_range_K", "K");
  // linear expansion, definition of the coefficient
  return sheet_properties(sheet).expansion_per_K.best * length_m * temperature_range_K;
}

double moisture_movement_m(SheetKind sheet, double length_m, double relative_humidity_range) {
  require_in_range(length_m, length_range_m, "length_m", "m");
  require_in_range(relative_humidity_range, {0.0, 1.0}, "relative_humidity_range", "");
  // strain from dry to saturated, linear in relative humidity
  return moisture_swelling(sheet).best * length_m * relative_humidity_range;
}

SheetMovement sheet_movement(SheetKind sheet, double length_m, const MovementConditions& conditions) {
  SheetMovement movement{
      .thermal_m = thermal_movement_m(sheet, length_m, conditions.temperature_range_K),
      .moisture_m = moisture_movement_m(sheet, length_m, conditions.relative_humidity_range)};
  const auto expansion = sheet_properties(sheet).expansion_per_K;
  const auto swelling = moisture_swelling(sheet);
  movement.total_m = movement.thermal_m + movement.moisture_m;
  movement.low_m = length_m * (expansion.low * conditions.temperature_range_K +
                               swelling.low * conditions.relative_humidity_range);
  movement.high_m = length_m * (expansion.high * conditions.temperature_range_K +
                                swelling.high * conditions.relative_humidity_range);
  return movement;
}

double reveal_clearance_m(SheetKind sheet, double length_m, const MovementConditions& conditions) {
  return sheet_movement(sheet, length_m, conditions).total_m;
}

double hole_diameter_for_movement_m(double movement_m, double shank_diameter_m) {
  require_in_range(movement_m, movement_range_m, "movement_m", "m");
  require_in_range(shank_diameter_m, shank_range_m, "shank_diameter_m", "m");
  return shank_diameter_m + movement_m;
}

double slot_length_for_movement_m(double movement_m, double slot_width_m) {
  require_in_range(movement_m, movement_range_m, "movement_m", "m");
  require_in_range(slot_width_m, shank_range_m, "slot_width_m", "m");
  return std::ceil((slot_width_m + movement_m) * 1e3 - 1e-6) * 1e-3;
}

double hole_diameter_at_m(SheetKind sheet, double distance_from_fixed_m, double shank_diameter_m,
                          const MovementConditions& conditions) {
  return hole_diameter_for_movement_m(sheet_movement(sheet, distance_from_fixed_m, conditions).total_m,
                                      shank_diameter_m);
}

double length_served_by_hole_m(SheetKind sheet, double hole_diameter_m, double shank_diameter_m,
                               double temperature_range_K) {
  require_in_range(shank_diameter_m, shank_range_m, "shank_diameter_m", "m");
  require_in_range(temperature_range_K, {0.0, 150.0}, "temperature_range_K", "K");
  return length_served_by_hole_m(sheet, hole_diameter_m, shank_diameter_m,
                                 MovementConditions{temperature_range_K, 0.0});
}

double length_served_by_hole_m(SheetKind sheet, double hole_diameter_m, double shank_diameter_m,
                               const MovementConditions& conditions) {
  const double free_m = play_m(hole_diameter_m, shank_diameter_m);
  const double strain = sheet_movement(sheet, 1.0, conditions).total_m;
  if (!(strain > 0.0)) {
    throw InvalidInput("temperature_range_K", "is zero, so any length is served");
  }
  return free_m / strain;
}

}  // namespace dewgap
