// What to cut, mark and fix: sheet size, thickness, movement, fixings, tape and breaks.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "dewgap/fitting/deflection.hpp"
#include "dewgap/fitting/holes.hpp"
#include "dewgap/fitting/opening_shape.hpp"
#include "dewgap/fitting/practice.hpp"
#include "dewgap/fitting/sheet_seat.hpp"
#include "dewgap/fitting/tape_plan.hpp"
#include "dewgap/materials/materials.hpp"

namespace dewgap {

/// Largest sheet that can be bought, m, either way round.
struct StockSize {
  double width_m = 0.0;
  double height_m = 0.0;
};

/// What is commonly stocked: acrylic, polycarbonate and PETG 2.05 x 3.05 m, glass 2.25 x 3.21 m (a cut jumbo
/// pane), film off a roll 1.52 m wide. Common practice, no source.
StockSize usual_stock(SheetKind sheet);

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
  double temperature_range_K = 30.0;     ///< of the sheet over the year, 0 to 120
  double tape_thickness_m = 0.006;       ///< 0.0001 to 0.05
  double tape_width_m = 0.012;           ///< 0.002 to 0.06
  double relative_humidity_range = 0.3;  ///< of the room's, from season to season, 0 to 1: swelling
  std::vector<BreaksWanted> breaks;      ///< vent breaks in the tape; none: unbroken
  std::optional<StockSize> stock;        ///< absent: usual_stock
  /// What stands past the fixing face under the sheet and cannot come off, 0 to 0.3: see fit_check.
  std::optional<double> catch_stands_out_m;
  double batten_depth_m = 0.0;  ///< that brings the sheet forward, besides the tape, 0 to 0.2
  DesignLoad load;
};

enum class FixingKind {
  turn_clips,
  screws,
  tape_only,  ///< a film, a pane's sheet, no timber; also while a batten comes first
  beads,      ///< round a reveal: no hole in the sheet, no marks
};

/// Why a job cannot be done as it stands.
enum class RefusalKind {
  face_too_narrow,  ///< neither clips nor screws
  timber_too_thin,
  overlap_too_small,  ///< for a screw, also at the corner of an opening out of square
  catch_in_the_way,
  larger_than_stock,
  too_thin_for_span,  ///< or no stocked thickness is enough
  break_has_no_place,
  diagonals_wrong,  ///< no opening with these sides has them
  wrong_material,   ///< glass that tape alone would have to carry
};
struct Refusal {
  RefusalKind kind = RefusalKind::face_too_narrow;
  std::string sentence;
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

  double moisture_movement_mm = 0.0;  ///< of the longer side, on top of movement_mm
  std::vector<Hole> holes;            ///< clips and screws, numbered; else empty
  std::vector<TapeBreak> tape_breaks;
  std::vector<TapePiece> tape_pieces;
  double tape_pieces_length_m = 0.0;    ///< tape_length_m less the breaks
  std::optional<double> deflection_mm;  ///< of the centre under the gust; none for film
  std::optional<double> deflection_limit_mm;
  std::optional<double> push_deflection_mm;  ///< under a hand
  bool deflection_is_upper_bound = false;    ///< over one thickness: membrane effects left out
  double slot_length_mm = 0.0;               ///< where slots_needed
  std::vector<Refusal> refused;              ///< all that stands against the job; empty: none
};

/// Sets out a sheet, in whole millimetres, from common practice (practice.hpp) with movement and timber
/// taking precedence.
///
/// Size: an overlapping sheet is the largest opening and the overlap, to the nearest millimetre, but no more
/// than the fixing face and the recess (less the sheet's growth) allow; so is one on a sash, from its visible
/// glass; one on a pane overlaps its visible glass by at most 8 mm a side, since two share a glazing bar (our
/// convention, no source); one inside a reveal is the smallest opening less the sheet's movement and the
/// width lost to an opening out of square (as a trapezium), rounded down.
///
/// Fixings: turn clips where the face is wide enough or not measured, otherwise screws, 12 mm inside the
/// sheet's edge and at least 8 mm inside the timber. Where they would land nearer its edge, at a skewed
/// opening's corner too, or the timber is under 15 mm deep, a batten comes first and no fixing is given.
/// Glass is never drilled and takes clips only. Film, sheets on panes and frames without timber are taped;
/// beads hold a sheet inside a reveal. A screw's hole is the shank and the movement of the hole farthest from
/// the one tight screw, by half millimetres up to 8 mm, beyond that slots. Spacing is 300-400 mm, less where
/// the length gives no other. A pilot is as deep as common practice or the timber allows; without a measured
/// depth it has none.
///
/// Movement is by heat and moisture together (movement.hpp). A pilot ends 3 mm before the timber does; slots
/// stand far enough in to leave 5 mm of sheet beside them. Thickness: the given one; else the trade's, or the
/// stocked one that deflection.hpp asks for where that is more, with the reason. A given thickness is kept:
/// it is told where it bends too far, and refused at twice the limit, since membrane action is left out.
/// Breaks and pieces of tape: tape_plan.hpp. A job that cannot be done as it stands still gets its figures,
/// and every reason in `refused`; diagonals that no quadrilateral with these sides has (opening_shape.hpp)
/// among them.
///
/// Leaves out: whether tape carries the weight of a plastic sheet, creep under lasting load, and the squeeze
/// of the tape. Tape wider than the overlap counts at the overlap's width, in a reveal at half the sheet's at
/// most.
///
/// Throws InvalidInput for openings outside 0.1 to 4 m (visible glass from 0.02 m) or contradictory geometry
/// (diagonals that no parallelogram of the mean sides has within 5 %, a recess smaller than the opening or
/// that leaves no overlap).
SheetPlan plan_sheet(const SheetPlanInput& input);

}  // namespace dewgap
