#include "dewgap/fitting/holes.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "dewgap/errors.hpp"
#include "dewgap/fitting/fixings_kernel.hpp"
#include "dewgap/fitting/practice.hpp"
#include "dewgap/fitting/text_kernel.hpp"

namespace dewgap {
namespace fitting {
namespace {

/// The holes that all are alike but for their place.
Hole usual_hole(const Fixings& fixings) {
  Hole hole;
  hole.offset_mm = fixings.offset_m * 1e3;
  hole.diameter_mm = fixings.hole_diameter_m * 1e3;
  hole.slot_length_mm = fixings.slot_length_m * 1e3;
  hole.pilot_diameter_mm = fixings.pilot_diameter_m * 1e3;
  hole.pilot_depth_mm = fixings.pilot_depth_m * 1e3;
  return hole;
}

Hole placed(Hole hole, Member member, int along_mm, double out_mm, int width_mm, int height_mm) {
  hole.member = member;
  hole.along_mm = along_mm;
  switch (member) {
    case Member::left:
      hole.x_mm = out_mm;
      hole.y_mm = along_mm;
      break;
    case Member::top:
      hole.x_mm = along_mm;
      hole.y_mm = height_mm - out_mm;
      break;
    case Member::right:
      hole.x_mm = width_mm - out_mm;
      hole.y_mm = along_mm;
      break;
    case Member::bottom:
      hole.x_mm = along_mm;
      hole.y_mm = out_mm;
      break;
  }
  return hole;
}

/// The one tight screw is round and as small as it comes; a slot points at it.
Hole for_movement(Hole hole, const Fixings& fixings, double tight_y_mm) {
  hole.tight = fixings.kind == FixingKind::screws && hole.member == Member::bottom &&
               hole.along_mm == fixings.fixed_mark_mm;
  if (hole.tight) {
    hole.diameter_mm = std::min(hole.diameter_mm, practice::hole_diameter_m * 1e3);
    hole.slot_length_mm = 0.0;
  }
  if (hole.slot_length_mm > 0.0) {
    const double angle =
        std::atan2(hole.y_mm - tight_y_mm, hole.x_mm - fixings.fixed_mark_mm) * 180.0 / std::numbers::pi;
    hole.slot_angle_deg = angle < 0.0 ? angle + 180.0 : angle;
  }
  return hole;
}

}  // namespace

std::vector<Hole> holes_of(const Fixings& fixings, int width_mm, int height_mm) {
  if (fixings.kind != FixingKind::turn_clips && fixings.kind != FixingKind::screws) {
    return {};
  }
  const double offset_mm = fixings.offset_m * 1e3;
  const double in_mm = fixings.kind == FixingKind::screws ? offset_mm : -offset_mm;
  std::vector<Hole> holes;
  const auto add = [&](Member member, int along_mm) {
    Hole hole = placed(usual_hole(fixings), member, along_mm, in_mm, width_mm, height_mm);
    hole.number = static_cast<int>(holes.size()) + 1;
    holes.push_back(for_movement(hole, fixings, in_mm));
  };
  // clockwise from the bottom left corner, as seen from the room
  for (const int along_mm : fixings.height_marks_mm) {
    add(Member::left, along_mm);
  }
  for (const int along_mm : fixings.width_marks_mm) {
    add(Member::top, along_mm);
  }
  for (auto along = fixings.height_marks_mm.rbegin(); along != fixings.height_marks_mm.rend(); ++along) {
    add(Member::right, *along);
  }
  for (auto along = fixings.width_marks_mm.rbegin(); along != fixings.width_marks_mm.rend(); ++along) {
    add(Member::bottom, *along);
  }
  return holes;
}

}  // namespace fitting

std::vector<int> edge_marks_mm(int length_mm) {
  require_in_range(static_cast<double>(length_mm), {1.0, 10000.0}, "length_mm", "mm");
  const int corner_mm = fitting::nearest_mm(practice::corner_distance_m);
  const int largest_mm = fitting::nearest_mm(practice::largest_spacing_m);
  const int span_mm = length_mm - 2 * corner_mm;
  // one in the middle of a very short edge
  if (span_mm < corner_mm) {
    return {length_mm / 2};
  }
  const int intervals = (span_mm + largest_mm - 1) / largest_mm;
  std::vector<int> marks_mm(static_cast<std::size_t>(intervals) + 1);
  // the far half mirrors the near one
  for (int i = 0; 2 * i <= intervals; ++i) {
    const auto near = static_cast<std::size_t>(i);
    const int mark_mm =
        2 * i == intervals
            ? length_mm / 2
            : corner_mm + static_cast<int>(std::lround(static_cast<double>(i) * span_mm / intervals));
    marks_mm[marks_mm.size() - 1 - near] = length_mm - mark_mm;
    marks_mm[near] = mark_mm;
  }
  return marks_mm;
}

}  // namespace dewgap
