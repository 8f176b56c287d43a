// Where the fixings go and the holes that let the sheet move. Private to the room.
#pragma once

#include <string>
#include <vector>

#include "dewgap/fitting/sheet_plan.hpp"
#include "dewgap/fitting/sheet_size_kernel.hpp"

namespace dewgap::fitting {

struct Fixings {
  FixingKind kind = FixingKind::turn_clips;
  double offset_m = 0.0;
  std::vector<int> width_marks_mm;
  std::vector<int> height_marks_mm;
  double hole_diameter_m = 0.0;
  bool slots_needed = false;
  double slot_length_m = 0.0;
  int fixed_mark_mm = 0;
  double pilot_diameter_m = 0.0;
  double pilot_depth_m = 0.0;
  std::string batten_reason;     ///< not empty: a batten first, and no fixings
  std::vector<Refusal> refused;  ///< why a batten comes first, all reasons; and glass on tape
  std::vector<std::string> reasons;
  std::vector<std::string> notes;
};

/// Fixings of a sheet of the given size.
Fixings fixings_for(const SheetPlanInput& input, const CutSize& size);

/// Each of them by its number and place; see Hole.
std::vector<Hole> holes_of(const Fixings& fixings, int width_mm, int height_mm);

}  // namespace dewgap::fitting
