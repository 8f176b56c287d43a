// The size to cut, from the opening as measured. Private to the room.
#pragma once

#include <string>
#include <vector>

#include "dewgap/fitting/movement.hpp"
#include "dewgap/fitting/sheet_plan.hpp"

namespace dewgap::fitting {

struct CutSize {
  int width_mm = 0;
  int height_mm = 0;
  double least_overlap_m = 0.0;   ///< of the two directions, after limits; overlapping sheets only
  double corner_overlap_m = 0.0;  ///< the same where an opening out of square takes most of it
  double out_of_square_m = 0.0;
  std::vector<std::string> notes;
};

/// What the sheet goes through over a year.
MovementConditions conditions_of(const SheetPlanInput& input);

/// The face that limits the overlap: the one measured, and half a glazing bar for a sheet on a pane.
double permitted_overlap_m(const SheetPlanInput& input);

/// Throws InvalidInput for the opening, its diagonals and its recess; the other fields are checked by
/// plan_sheet.
CutSize cut_size(const SheetPlanInput& input);

}  // namespace dewgap::fitting
