// Thermal movement of a sheet and the holes that let it move.
#pragma once

#include "dewgap/materials/materials.hpp"

namespace dewgap {

/// Change of a length of sheet over a range of its temperature, m: expansion x length x range, with the
/// material's best value. length 0 to 10 m, range 0 to 150 K. Leaves out swelling by moisture, which adds to
/// it for acrylic.
double thermal_movement_m(SheetKind sheet, double length_m, double temperature_range_K);

/// Diameter of a hole round a screw's shank that allows a movement between its two extremes, m: shank +
/// movement, the screw in the middle of the hole at the middle temperature. movement 0 to 0.1 m, shank 1 to
/// 20 mm.
double hole_diameter_for_movement_m(double movement_m, double shank_diameter_m);

/// The inverse question: the length of sheet, from its fixed point, that a hole of given diameter serves, m.
/// Throws InvalidInput when the hole is no wider than the shank or the range is not above zero.
double length_served_by_hole_m(SheetKind sheet, double hole_diameter_m, double shank_diameter_m,
                               double temperature_range_K);

}  // namespace dewgap
