// Every fixing by its number and place, to mark and drill from.
#pragma once

#include <vector>

namespace dewgap {

/// The member of the frame, or the edge of the sheet on it, as seen from the room.
enum class Member { left, top, right, bottom };

/// One fixing. Millimetres; x from the sheet's left edge, y from its bottom edge, as seen from the room.
struct Hole {
  int number = 0;  ///< from 1, clockwise from the bottom left corner: up the left, along the top, ...
  Member member = Member::left;
  int along_mm = 0;        ///< from the left end (top, bottom) or the bottom end (left, right)
  double offset_mm = 0.0;  ///< from the sheet's edge: clips outside it, screws inside
  double x_mm = 0.0;       ///< of the screw; outside the sheet for clips
  double y_mm = 0.0;
  double diameter_mm = 0.0;     ///< in the sheet; 0 for clips; a slot's width
  double slot_length_mm = 0.0;  ///< 0: a round hole
  double slot_angle_deg = 0.0;  ///< of the slot's length, from the horizontal, 0 to 180: at the tight screw
  double pilot_diameter_mm = 0.0;
  double pilot_depth_mm = 0.0;  ///< 0: the timber was not measured
  bool tight = false;           ///< the one screw that holds the sheet still
};

/// Where the marks of one edge go: at most 400 mm apart, 50 mm from the corners; alike from either end but
/// for the middle one of an odd length. length 1 to 10,000 mm.
std::vector<int> edge_marks_mm(int length_mm);

}  // namespace dewgap
