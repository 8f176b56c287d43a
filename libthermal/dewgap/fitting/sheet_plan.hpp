// What to cut, mark and fix: sheet size, thickness, movement, fixings, tape and breaks.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "dewgap/materials/materials.hpp"

namespace dewgap {

/// The opening as measured: three widths (top, middle, bottom), three heights (left, middle, right), two diagonals.
struct MeasuredOpening {
  std::array<double, 3> widths_m{};
  std::array<double, 3> heights_m{};
  std::optional<std::array<double, 2>> diagonals_m;
};

enum class SheetSeat { overlapping, inside_reveal };

struct SheetPlanInput {
  MeasuredOpening opening;
  SheetSeat seat = SheetSeat::overlapping;
  SheetKind sheet = SheetKind::acrylic;
  std::optional<double> sheet_thickness_m;  ///< absent: 4 mm, 5 mm when a side exceeds 2 m (common practice, no source)
  double overlap_m = 0.020;                 ///< a side (common practice, no source)
  double fixing_face_m = 0.040;             ///< width of the member that the fixings enter
  std::optional<double> screw_depth_m;      ///< timber a screw may enter
  std::optional<double> largest_width_m;    ///< of the recess that limits an overlapping sheet
  std::optional<double> largest_height_m;
  double temperature_range_K = 30.0;        ///< of the sheet over the year
  double tape_thickness_m = 0.006;
  double tape_width_m = 0.012;
};

enum class FixingKind { turn_clips, screws };

struct SheetPlan {
  int width_mm = 0;
  int height_mm = 0;
  int thickness_mm = 0;
  double weight_kg = 0.0;
  double movement_mm = 0.0;          ///< thermal, of the longer side over temperature_range_K
  FixingKind fixing = FixingKind::turn_clips;
  int fixings_per_width = 0;         ///< along each horizontal edge
  int fixings_per_height = 0;
  int fixing_count = 0;
  std::vector<int> width_marks_mm;   ///< from the left edge
  std::vector<int> height_marks_mm;  ///< from the bottom edge
  double hole_diameter_mm = 0.0;     ///< screws only; grown by movement, else slots
  bool slots_needed = false;
  double pilot_diameter_mm = 0.0;
  double pilot_depth_mm = 0.0;       ///< limited by the measured timber
  double tape_length_m = 0.0;
  double out_of_square_mm = 0.0;     ///< from the diagonals, 0 when not measured
  std::vector<std::string> reasons;  ///< where physics overrode common practice, and other notes, one sentence each
};

/// Whole millimetres. Throws InvalidInput for sizes outside 0.1 to 4 m or contradictory geometry (diagonals that no
/// quadrilateral of these sides has within 5 %, a recess smaller than the opening).
SheetPlan plan_sheet(const SheetPlanInput& input);

}  // namespace dewgap
