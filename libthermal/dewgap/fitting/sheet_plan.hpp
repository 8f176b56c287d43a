// What to cut, mark and fix: sheet size, thickness, movement, fixings, tape and breaks.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "dewgap/fitting/practice.hpp"
#include "dewgap/materials/materials.hpp"

namespace dewgap {

/// The opening as measured: three widths (top, middle, bottom), three heights (left, middle, right), two
/// diagonals. For a sheet on a sash or a pane it is the visible glass: see visible_glass.
struct MeasuredOpening {
  std::array<double, 3> widths_m{};
  std::array<double, 3> heights_m{};
  std::optional<std::array<double, 2>> diagonals_m;
};

/// The visible glass of one sash or pane, measured once.
MeasuredOpening visible_glass(double width_m, double height_m);

enum class SheetSeat {
  overlapping,    ///< over the opening, on the frame
  inside_reveal,  ///< stands in the opening
  on_sash,        ///< over the visible glass of one sash, on the sash
  on_panes,       ///< over the visible glass of one pane, on its glazing bars
};

struct SheetPlanInput {
  MeasuredOpening opening;
  SheetSeat seat = SheetSeat::overlapping;
  SheetKind sheet = SheetKind::acrylic;
  FrameKind frame = FrameKind::softwood;  ///< what the fixings would enter; only timber is drilled
  int sheet_count = 1;                    ///< alike, one a sash or pane; 1 to 200
  /// 2 to 15 mm, a film 0.01 to 0.5 mm. Absent: 4 mm, 5 mm when a side exceeds 2 m (common practice, no
  /// source); a film its own.
  std::optional<double> sheet_thickness_m;
  double overlap_m = practice::overlap_m;  ///< a side, 0 to 0.2; not inside a reveal
  std::optional<double> fixing_face_m;     ///< width of the member that the fixings enter, 0.005 to 0.5
  std::optional<double> screw_depth_m;     ///< timber a screw may enter, 0 to 0.3
  std::optional<double> largest_width_m;   ///< of the recess that limits an overlapping sheet
  std::optional<double> largest_height_m;
  double temperature_range_K = 30.0;  ///< of the sheet over the year, 0 to 120
  double tape_thickness_m = 0.006;    ///< 0.0001 to 0.05
  double tape_width_m = 0.012;        ///< 0.002 to 0.06
};

enum class FixingKind {
  turn_clips,
  screws,
  tape_only,  ///< a film, a pane's sheet, no timber; also while a batten comes first
  beads,      ///< round a reveal: no hole in the sheet, no marks
};

/// Every figure is of one sheet.
struct SheetPlan {
  int sheet_count = 1;
  int width_mm = 0;
  int height_mm = 0;
  double thickness_mm = 0.0;
  double weight_kg = 0.0;
  double movement_mm = 0.0;  ///< thermal, of the longer side over temperature_range_K, before moisture
  FixingKind fixing = FixingKind::turn_clips;
  int fixings_per_width = 0;  ///< along each horizontal edge
  int fixings_per_height = 0;
  int fixing_count = 0;
  std::vector<int> width_marks_mm;   ///< from the left edge
  std::vector<int> height_marks_mm;  ///< from the bottom edge
  double fixing_offset_mm = 0.0;     ///< of the screw from the sheet's edge: clips outside it, screws inside
  double hole_diameter_mm = 0.0;     ///< screws only; grown by movement; where slots are needed, their width
  bool slots_needed = false;
  int fixed_mark_mm = 0;  ///< screws only: the one tight screw, on the bottom edge from its left end
  double pilot_diameter_mm = 0.0;
  double pilot_depth_mm = 0.0;       ///< limited by the measured timber; 0: none to give, not measured
  double screw_length_mm = 0.0;      ///< screws only: through sheet and tape to the pilot's end; 0 as above
  double tape_length_m = 0.0;        ///< once round, corners joined, no waste
  double out_of_square_mm = 0.0;     ///< shift of the head over the sill; 0 without diagonals
  bool batten_first = false;         ///< nothing here holds a fixing: none is given
  std::string batten_reason;         ///< why, one sentence; also among the reasons
  std::vector<std::string> reasons;  ///< where physics overrode common practice, one sentence each
  std::vector<std::string>
      notes;  ///< which measurement gave the size, which screw is tight, what limits a depth
};

/// Sets out a sheet, in whole millimetres, from common practice (practice.hpp) with movement and timber
/// taking precedence.
///
/// Size: an overlapping sheet is the largest opening and the overlap, to the nearest millimetre, but no more
/// than the fixing face and the recess (less the sheet's growth) allow; so is one on a sash, from its visible
/// glass; one on a pane overlaps its visible glass by at most 8 mm a side, since two share a glazing bar (our
/// convention, no source); one inside a reveal is the smallest opening less the sheet's movement and the
/// width lost to an opening out of square (as a parallelogram), rounded down.
///
/// Fixings: turn clips where the face is wide enough or not measured, otherwise screws, 12 mm inside the
/// sheet's edge and at least 8 mm inside the timber. Where they would land nearer its edge, at a skewed
/// opening's corner too, or the timber is under 15 mm deep, a batten comes first and no fixing is given.
/// Glass is never drilled and takes clips only. Film, sheets on panes and frames without timber are taped;
/// beads hold a sheet inside a reveal. A screw's hole is the shank and the movement of the hole farthest from
/// the one tight screw, by half millimetres up to 8 mm, beyond that slots. Spacing is 300-400 mm, less where
/// the length gives no other. A pilot is as deep as common practice or the timber; without a measured depth
/// it has no depth.
///
/// Leaves out: swelling by moisture (acrylic), deflection, whether tape carries the weight, and breaks in the
/// tape. Tape wider than the overlap counts at the overlap's width.
///
/// Throws InvalidInput for openings outside 0.1 to 4 m (visible glass from 0.02 m) or contradictory geometry
/// (diagonals that no parallelogram of the mean sides has within 5 %, a recess smaller than the opening or
/// that leaves no overlap).
SheetPlan plan_sheet(const SheetPlanInput& input);

}  // namespace dewgap
