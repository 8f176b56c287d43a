// Movement of a sheet with temperature and moisture, and the holes and clearances that let it move.
#pragma once

#include "dewgap/materials/materials.hpp"

namespace dewgap {

/// Change of a length of sheet over a range of its temperature, m: expansion x length x range, with the
/// material's best value. length 0 to 10 m, range 0 to 150 K. Leaves out swelling by moisture, which adds to
/// it for acrylic.
double thermal_movement_m(SheetKind sheet, double length_m, double temperature_range_K);

/// The same from the swelling of the material between two room humidities held for weeks, m. Linear in
/// relative humidity (0 to 1), which sorption is not quite. The value, with its range, is recalled, not
/// transcribed: materials.csv, 'moisture swelling'.
double moisture_movement_m(SheetKind sheet, double length_m, double relative_humidity_range);

/// What a sheet goes through over a year. Our convention, no source: 30 K of the sheet's own temperature, and
/// three tenths of relative humidity between a heated winter's room and a damp summer's.
struct MovementConditions {
  double temperature_range_K = 30.0;     ///< 0 to 150
  double relative_humidity_range = 0.3;  ///< 0 to 1
};

/// Movement of a length of sheet from end to end of the year's conditions, m. Warm and humid coincide in
/// summer, so the two add.
struct SheetMovement {
  double thermal_m = 0.0;
  double moisture_m = 0.0;
  double total_m = 0.0;
  double low_m = 0.0;   ///< total with the low ends of the material's ranges
  double high_m = 0.0;  ///< with the high ends
};
SheetMovement sheet_movement(SheetKind sheet, double length_m, const MovementConditions& conditions = {});

/// Width to take off a sheet in a reveal in one direction, both ends together, m: its total movement, since
/// nobody knows the state in which it is cut.
double reveal_clearance_m(SheetKind sheet, double length_m, const MovementConditions& conditions = {});

/// Diameter of a hole round a screw's shank that allows a movement between its two extremes, m: shank +
/// movement, the screw in the middle of the hole at the middle temperature. movement 0 to 0.1 m, shank 1 to
/// 20 mm.
double hole_diameter_for_movement_m(double movement_m, double shank_diameter_m);

/// Length of a slot of given width (1 to 20 mm) that allows a movement, m: width + movement, to whole
/// millimetres upwards.
double slot_length_for_movement_m(double movement_m, double slot_width_m);

/// Diameter of the hole of the fixing at a distance (0 to 10 m) from the fixed point, m.
double hole_diameter_at_m(SheetKind sheet, double distance_from_fixed_m, double shank_diameter_m,
                          const MovementConditions& conditions = {});

/// The inverse question: the length of sheet, from its fixed point, that a hole of given diameter serves, m.
/// Throws InvalidInput when the hole is no wider than the shank or the range is not above zero.
double length_served_by_hole_m(SheetKind sheet, double hole_diameter_m, double shank_diameter_m,
                               double temperature_range_K);
/// The same with moisture.
double length_served_by_hole_m(SheetKind sheet, double hole_diameter_m, double shank_diameter_m,
                               const MovementConditions& conditions);

}  // namespace dewgap
