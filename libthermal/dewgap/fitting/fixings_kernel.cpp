#include "dewgap/fitting/fixings_kernel.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

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
  const double extra_overlap_m = std::max(0.0, input.overlap_m - practice::overlap_m);
  return practice::clip_face_m + extra_overlap_m + (clip_offset_m - practice::clip_offset_m);
}

Fixings with_pilot(Fixings fixings, const SheetPlanInput& input) {
  fixings.pilot_diameter_m = practice::pilot_diameter_m;
  if (!input.screw_depth_m) {
    fixings.reasons.push_back("Measure the timber before drilling: depth not given.");
    return fixings;
  }
  fixings.pilot_depth_m = std::min(practice::pilot_depth_m, *input.screw_depth_m);
  if (*input.screw_depth_m < practice::pilot_depth_m) {
    fixings.notes.push_back("Pilot holes no deeper than " + whole_mm_text(fixings.pilot_depth_m) +
                            ": the timber ends there.");
  }
  return fixings;
}

/// No clip, screw, mark or pilot; glass is too heavy to be left like that.
Fixings held_by_tape(const SheetPlanInput& input, std::string note) {
  Fixings taped{.kind = FixingKind::tape_only};
  taped.notes.push_back(std::move(note));
  if (input.sheet == SheetKind::glass) {
    taped.reasons.push_back("Tape alone must not carry glass: take plastic, or stand it on a bead.");
  }
  return taped;
}

Fixings batten_first(const std::string& reason) {
  Fixings none{.kind = FixingKind::tape_only, .batten_reason = reason};
  none.reasons.push_back(reason);
  return none;
}

/// A screw 12 mm inside the sheet's edge lands (overlap - 12 mm) inside the timber: at least 8 mm, or it
/// splits out.
std::optional<std::string> why_no_screw_holds(const SheetPlanInput& input, const CutSize& size) {
  constexpr double rounding_m = 1e-9;
  const double needed_m = practice::hole_offset_m + practice::screw_inside_timber_m - rounding_m;
  if (size.corner_overlap_m >= needed_m) {
    return std::nullopt;
  }
  if (input.fixing_face_m.value_or(needed_m) < needed_m) {
    return "The face is too narrow to hold a screw: fix a batten first.";
  }
  return "Overlap of " + tenth_mm_text(std::max(0.0, size.corner_overlap_m)) +
         " is too small to hold a screw: fix a batten first.";
}

Fixings clips_in_timber(Fixings clips, const SheetPlanInput& input, double face_needed_m) {
  if (!input.fixing_face_m) {
    clips.reasons.push_back("Face not measured: clips need " + whole_mm_text(face_needed_m) +
                            " of flat timber.");
  }
  if (input.sheet == SheetKind::glass) {
    clips.reasons.push_back("Glass can't be drilled: turn clips only.");
  }
  return with_pilot(std::move(clips), input);
}

Fixings fixed_to_timber(const SheetPlanInput& input, const CutSize& size) {
  if (input.screw_depth_m.value_or(practice::shallowest_screw_m) < practice::shallowest_screw_m) {
    return batten_first("Under 15 mm of timber won't hold a screw: fix a batten first.");
  }
  const Fixings marked{.width_marks_mm = edge_marks_mm(size.width_mm),
                       .height_marks_mm = edge_marks_mm(size.height_mm)};
  const double longer_m = std::max(size.width_mm, size.height_mm) * 1e-3;
  Fixings clips = with_clips(marked, thermal_movement_m(input.sheet, longer_m, input.temperature_range_K));
  const double needed_m = clip_face_needed_m(input, clips.offset_m);
  const double face_m = input.fixing_face_m.value_or(needed_m);
  if (face_m >= needed_m) {
    return clips_in_timber(std::move(clips), input, needed_m);
  }
  if (input.sheet == SheetKind::glass) {
    return batten_first("Glass can't be drilled and clips need " + whole_mm_text(needed_m) +
                        " of face: fix a batten first.");
  }
  if (const auto why = why_no_screw_holds(input, size)) {
    return batten_first(*why);
  }
  Fixings screws = with_screws(marked, input, size.width_mm, size.height_mm);
  screws.kind = FixingKind::screws;
  screws.reasons.insert(screws.reasons.begin(), "Face " + whole_mm_text(face_m) + ", turn clips need " +
                                                    whole_mm_text(needed_m) + ": screws instead.");
  return with_pilot(std::move(screws), input);
}

bool is_timber(FrameKind frame) {
  return frame == FrameKind::softwood || frame == FrameKind::hardwood;
}

}  // namespace

Fixings fixings_for(const SheetPlanInput& input, const CutSize& size) {
  if (input.sheet == SheetKind::pet_film) {
    return held_by_tape(input, "Film is held by its tape alone: no clips, no screws.");
  }
  if (input.seat == SheetSeat::inside_reveal) {
    Fixings beads{.kind = FixingKind::beads};
    beads.notes.push_back(
        "Beads or battens round the reveal hold it, no hole in the sheet (common practice, no source).");
    return beads;
  }
  if (input.seat == SheetSeat::on_panes) {
    return held_by_tape(input, "Glazing bars are not drilled: tape or magnetic strip only.");
  }
  if (!is_timber(input.frame)) {
    return held_by_tape(input,
                        "No timber here: tape or magnetic strip only; ask before drilling metal or PVC-U.");
  }
  return fixed_to_timber(input, size);
}

}  // namespace dewgap::fitting
