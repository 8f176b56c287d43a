#include "dewgap/fitting/movement.hpp"

#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr PermittedRange shank_range_m{0.001, 0.020};

}  // namespace

double thermal_movement_m(SheetKind sheet, double length_m, double temperature_range_K) {
  require_in_range(length_m, {0.0, 10.0}, "length_m", "m");
  require_in_range(temperature_range_K, {0.0, 150.0}, "temperature_range_K", "K");
  // linear expansion, definition of the coefficient
  return sheet_properties(sheet).expansion_per_K.best * length_m * temperature_range_K;
}

double hole_diameter_for_movement_m(double movement_m, double shank_diameter_m) {
  require_in_range(movement_m, {0.0, 0.1}, "movement_m", "m");
  require_in_range(shank_diameter_m, shank_range_m, "shank_diameter_m", "m");
  return shank_diameter_m + movement_m;
}

double length_served_by_hole_m(SheetKind sheet, double hole_diameter_m, double shank_diameter_m,
                               double temperature_range_K) {
  require_in_range(shank_diameter_m, shank_range_m, "shank_diameter_m", "m");
  require_in_range(hole_diameter_m, {shank_diameter_m, 0.1}, "hole_diameter_m", "m");
  require_in_range(temperature_range_K, {0.0, 150.0}, "temperature_range_K", "K");
  if (!(hole_diameter_m > shank_diameter_m)) {
    throw InvalidInput("hole_diameter_m", "is no wider than the shank, so the sheet cannot move");
  }
  if (!(temperature_range_K > 0.0)) {
    throw InvalidInput("temperature_range_K", "is zero, so any length is served");
  }
  const double play_m = hole_diameter_m - shank_diameter_m;
  return play_m / (sheet_properties(sheet).expansion_per_K.best * temperature_range_K);
}

}  // namespace dewgap
