#include "dewgap/fitting/fixings_kernel.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/fitting/movement.hpp"
#include "dewgap/fitting/practice.hpp"
#include "dewgap/fitting/text_kernel.hpp"

namespace dewgap::fitting {
namespace {

/// Marks along one edge: 50 mm from the corners and at most 400 mm apart; one in the middle of a very short
/// edge.
std::vector<int> edge_marks_mm(int length_mm) {
  const int corner_mm = nearest_mm(practice::corner_distance_m);
  const int largest_mm = nearest_mm(practice::largest_spacing_m);
  const int span_mm = length_mm - 2 * corner_mm;
  if (span_mm < corner_mm) {
    return {length_mm / 2};
  }
  const int intervals = (span_mm + largest_mm - 1) / largest_mm;
  std::vector<int> marks_mm;
  for (int i = 0; i <= intervals; ++i) {
    marks_mm.push_back(corner_mm +
                       static_cast<int>(std::lround(static_cast<double>(i) * span_mm / intervals)));
  }
  return marks_mm;
}

/// Distance of the farthest hole from the one fixed on the bottom edge.
double farthest_hole_m(const Fixings& fixings, int width_mm, int height_mm) {
  const double inset_mm = practice::hole_offset_m * 1e3;
  double farthest_mm = 0.0;
  const auto reach = [&](double x_mm, double y_mm) {
    farthest_mm = std::max(farthest_mm, std::hypot(x_mm - fixings.fixed_mark_mm, y_mm - inset_mm));
  };
  for (const int x_mm : fixings.width_marks_mm) {
    reach(x_mm, inset_mm);
    reach(x_mm, height_mm - inset_mm);
  }
  for (const int y_mm : fixings.height_marks_mm) {
    reach(inset_mm, y_mm);
    reach(width_mm - inset_mm, y_mm);
  }
  return farthest_mm * 1e-3;
}

/// Holes grown by the movement of the farthest one from the fixed point; slots where a washer would not cover
/// them.
Fixings with_screws(Fixings fixings, const SheetPlanInput& input, int width_mm, int height_mm) {
  fixings.offset_m = practice::hole_offset_m;
  fixings.fixed_mark_mm = fixings.width_marks_mm[fixings.width_marks_mm.size() / 2];
  const double reach_m = farthest_hole_m(fixings, width_mm, height_mm);
  const double movement_m = thermal_movement_m(input.sheet, reach_m, input.temperature_range_K);
  const double needed_m = hole_diameter_for_movement_m(movement_m, practice::screw_shank_m);
  fixings.hole_diameter_m = practice::hole_diameter_m;
  if (needed_m <= practice::hole_diameter_m) {
    return fixings;
  }
  const std::string moves = "Farthest hole moves " + tenth_mm_text(movement_m);
  if (needed_m > practice::largest_round_hole_m) {
    const double length_m = std::ceil((practice::hole_diameter_m + movement_m) * 1e3 - 1e-6) * 1e-3;
    fixings.slots_needed = true;
    fixings.reasons.push_back(moves + ": slots 5 x " + whole_mm_text(length_m) +
                              ", pointing at the fixed screw.");
  } else {
    fixings.hole_diameter_m = std::ceil(needed_m / practice::drill_step_m - 1e-6) * practice::drill_step_m;
    fixings.reasons.push_back(moves + ", a 5 mm hole allows 0.8: drill " +
                              tenth_mm_text(fixings.hole_diameter_m) + ", with washers.");
  }
  fixings.notes.push_back("Tight screw only at " + std::to_string(fixings.fixed_mark_mm) +
                          " mm on the bottom edge; leave the others free to slide.");
  return fixings;
}

/// Clips hold a sheet's face only; their screws must stay clear of an edge that grows towards them.
Fixings with_clips(Fixings fixings, double movement_m) {
  fixings.offset_m = practice::clip_offset_m;
  const double clear_m = movement_m + practice::screw_shank_m / 2.0;
  if (clear_m > practice::clip_offset_m) {
    fixings.offset_m = std::ceil(clear_m * 1e3 - 1e-6) * 1e-3;
    fixings.reasons.push_back("Sheet grows " + tenth_mm_text(movement_m) + ": set clip screws " +
                              whole_mm_text(fixings.offset_m) + " off its edge, not 6 mm.");
  }
  return fixings;
}

/// Width of frame that clips need: the practice's 35 mm at 20 mm overlap and 6 mm offset, more beyond either.
double clip_face_needed_m(const SheetPlanInput& input, double clip_offset_m) {
  const double extra_overlap_m =
      input.seat == SheetSeat::overlapping ? std::max(0.0, input.overlap_m - practice::overlap_m) : 0.0;
  return practice::clip_face_m + extra_overlap_m + (clip_offset_m - practice::clip_offset_m);
}

Fixings with_pilot(Fixings fixings, const SheetPlanInput& input) {
  fixings.pilot_diameter_m = practice::pilot_diameter_m;
  fixings.pilot_depth_m = practice::pilot_depth_m;
  if (!input.screw_depth_m) {
    fixings.reasons.push_back("Depth of timber not measured: check it before drilling 40 mm.");
    return fixings;
  }
  if (*input.screw_depth_m < practice::pilot_depth_m) {
    fixings.pilot_depth_m = *input.screw_depth_m;
    fixings.notes.push_back("Pilot holes no deeper than " + whole_mm_text(fixings.pilot_depth_m) +
                            ": the timber ends there.");
  }
  if (*input.screw_depth_m < practice::shallowest_screw_m) {
    fixings.reasons.push_back("Under 15 mm of timber won't hold a screw: fix a batten first.");
  }
  return fixings;
}

}  // namespace

Fixings fixings_for(const SheetPlanInput& input, int width_mm, int height_mm) {
  if (input.sheet == SheetKind::pet_film) {
    Fixings none{.kind = FixingKind::tape_only};
    none.reasons.push_back("Film is held by its tape alone: no clips, no screws.");
    return none;
  }
  const Fixings marked{.width_marks_mm = edge_marks_mm(width_mm),
                       .height_marks_mm = edge_marks_mm(height_mm)};
  const double longer_m = std::max(width_mm, height_mm) * 1e-3;
  Fixings clips = with_clips(marked, thermal_movement_m(input.sheet, longer_m, input.temperature_range_K));
  const double needed_m = clip_face_needed_m(input, clips.offset_m);
  const bool room_for_clips = input.fixing_face_m >= needed_m;
  if (input.sheet == SheetKind::glass) {
    clips.reasons.push_back("Glass can't be drilled: turn clips only.");
    if (!room_for_clips) {
      clips.reasons.push_back("Face " + whole_mm_text(input.fixing_face_m) + ", clips need " +
                              whole_mm_text(needed_m) + ": widen it with a batten.");
    }
    return with_pilot(std::move(clips), input);
  }
  if (room_for_clips) {
    return with_pilot(std::move(clips), input);
  }
  Fixings screws = with_screws(marked, input, width_mm, height_mm);
  screws.kind = FixingKind::screws;
  screws.reasons.insert(screws.reasons.begin(), "Face " + whole_mm_text(input.fixing_face_m) +
                                                    ", turn clips need " + whole_mm_text(needed_m) +
                                                    ": screws instead.");
  return with_pilot(std::move(screws), input);
}

}  // namespace dewgap::fitting
