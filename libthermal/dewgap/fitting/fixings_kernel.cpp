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

/// Distance of the farthest hole from the one fixed on the bottom edge.
double farthest_hole_m(const Fixings& fixings, int width_mm, int height_mm) {
  const double inset_mm = fixings.offset_m * 1e3;
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
/// them, further in where a slot would come too near the edge.
Fixings with_screws(Fixings fixings, const SheetPlanInput& input, int width_mm, int height_mm) {
  fixings.kind = FixingKind::screws;
  fixings.offset_m = practice::hole_offset_m;
  fixings.fixed_mark_mm = fixings.width_marks_mm[fixings.width_marks_mm.size() / 2];
  const double reach_m = farthest_hole_m(fixings, width_mm, height_mm);
  const double movement_m = sheet_movement(input.sheet, reach_m, conditions_of(input)).total_m;
  const double needed_m = hole_diameter_for_movement_m(movement_m, practice::screw_shank_m);
  fixings.hole_diameter_m = practice::hole_diameter_m;
  if (needed_m <= practice::hole_diameter_m) {
    return fixings;
  }
  const std::string moves = "Farthest hole moves " + tenth_mm_text(movement_m);
  if (needed_m > practice::largest_round_hole_m) {
    fixings.slots_needed = true;
    fixings.slot_length_m = slot_length_for_movement_m(movement_m, practice::hole_diameter_m);
    fixings.offset_m = std::max(fixings.offset_m, 0.5 * fixings.slot_length_m + practice::least_rim_m);
    fixings.reasons.push_back(moves + ": slots 5 x " + whole_mm_text(fixings.slot_length_m) +
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
  const double deepest_m = *input.screw_depth_m - practice::timber_left_m;
  fixings.pilot_depth_m = std::min(practice::pilot_depth_m, deepest_m);
  if (deepest_m < practice::pilot_depth_m) {
    fixings.notes.push_back("Pilot holes no deeper than " + whole_mm_text(fixings.pilot_depth_m) +
                            ": the timber ends 3 mm further on.");
  }
  return fixings;
}

/// No clip, screw, mark or pilot; glass is too heavy to be left like that.
Fixings held_by_tape(const SheetPlanInput& input, std::string note) {
  Fixings taped{.kind = FixingKind::tape_only};
  taped.notes.push_back(std::move(note));
  if (input.sheet == SheetKind::glass) {
    taped.reasons.push_back("Tape alone must not carry glass: take plastic, or stand it on a bead.");
    taped.refused.push_back({RefusalKind::wrong_material, taped.reasons.back()});
  }
  return taped;
}

Fixings batten_first(const std::vector<Refusal>& refused) {
  Fixings none{.kind = FixingKind::tape_only, .batten_reason = refused.front().sentence, .refused = refused};
  for (const auto& refusal : refused) {
    none.reasons.push_back(refusal.sentence);
  }
  return none;
}

/// A screw 12 mm inside the sheet's edge lands (overlap - 12 mm) inside the timber: at least 8 mm, or it
/// splits out.
std::optional<Refusal> why_no_screw_holds(const SheetPlanInput& input, const CutSize& size, double offset_m) {
  constexpr double rounding_m = 1e-9;
  const double needed_m = offset_m + practice::screw_inside_timber_m - rounding_m;
  if (size.corner_overlap_m >= needed_m) {
    return std::nullopt;
  }
  if (input.fixing_face_m.value_or(needed_m) < needed_m) {
    return Refusal{RefusalKind::face_too_narrow,
                   "The face is too narrow to hold a screw: fix a batten first."};
  }
  return Refusal{RefusalKind::overlap_too_small, "Overlap of " +
                                                     tenth_mm_text(std::max(0.0, size.corner_overlap_m)) +
                                                     " is too small to hold a screw: fix a batten first."};
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

std::optional<Refusal> why_timber_holds_none(const SheetPlanInput& input) {
  if (input.screw_depth_m.value_or(practice::shallowest_screw_m) >= practice::shallowest_screw_m) {
    return std::nullopt;
  }
  return Refusal{RefusalKind::timber_too_thin,
                 "Under 15 mm of timber won't hold a screw: fix a batten first."};
}

/// Why the face takes neither clips nor these screws.
std::optional<Refusal> why_face_holds_none(const SheetPlanInput& input, const CutSize& size,
                                           const Fixings& screws, double clips_need_m) {
  if (input.fixing_face_m.value_or(clips_need_m) >= clips_need_m) {
    return std::nullopt;
  }
  if (input.sheet == SheetKind::glass) {
    return Refusal{RefusalKind::face_too_narrow, "Glass can't be drilled and clips need " +
                                                     whole_mm_text(clips_need_m) +
                                                     " of face: fix a batten first."};
  }
  return why_no_screw_holds(input, size, screws.offset_m);
}

Fixings screws_in_timber(Fixings screws, const SheetPlanInput& input, double clips_need_m) {
  screws.reasons.insert(screws.reasons.begin(), "Face " + whole_mm_text(input.fixing_face_m.value_or(0.0)) +
                                                    ", turn clips need " + whole_mm_text(clips_need_m) +
                                                    ": screws instead.");
  return with_pilot(std::move(screws), input);
}

Fixings fixed_to_timber(const SheetPlanInput& input, const CutSize& size) {
  const Fixings marked{.width_marks_mm = edge_marks_mm(size.width_mm),
                       .height_marks_mm = edge_marks_mm(size.height_mm)};
  const double longer_m = std::max(size.width_mm, size.height_mm) * 1e-3;
  Fixings clips = with_clips(marked, sheet_movement(input.sheet, longer_m, conditions_of(input)).total_m);
  Fixings screws = with_screws(marked, input, size.width_mm, size.height_mm);
  const double needed_m = clip_face_needed_m(input, clips.offset_m);
  std::vector<Refusal> refused;
  for (const auto& why : {why_timber_holds_none(input), why_face_holds_none(input, size, screws, needed_m)}) {
    if (why) {
      refused.push_back(*why);
    }
  }
  if (!refused.empty()) {
    return batten_first(refused);
  }
  return input.fixing_face_m.value_or(needed_m) >= needed_m
             ? clips_in_timber(std::move(clips), input, needed_m)
             : screws_in_timber(std::move(screws), input, needed_m);
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
