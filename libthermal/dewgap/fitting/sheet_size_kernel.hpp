// The size to cut, from the opening as measured. Private to the room.
#pragma once

#include <string>
#include <vector>

#include "dewgap/fitting/sheet_plan.hpp"

namespace dewgap::fitting {

struct CutSize {
  int width_mm = 0;
  int height_mm = 0;
  double least_overlap_m = 0.0;  ///< of the two directions, after limits; overlapping sheets only
  double out_of_square_m = 0.0;
  std::vector<std::string> notes;
};

/// Throws InvalidInput for the opening, its diagonals and its recess; the other fields are checked by
/// plan_sheet.
CutSize cut_size(const SheetPlanInput& input);

}  // namespace dewgap::fitting
