#include "dewgap/assessment/edge_section_kernel.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace dewgap {
namespace {

// Where nobody has measured: common practice, no source.
constexpr double room_face_share = 0.4;  // of a timber sash's thickness, from the glass to its room face
constexpr double usual_batten_depth_m = 0.020;
constexpr double usual_overlap_m = 0.020;
constexpr double usual_gap_W_m2K = 5.5;  // some 25 mm of closed air, to try whether a section can be drawn

/// To a tenth of a millimetre; what is left under 1 mm counts as none, for tapes are read to a millimetre.
double drawn_size_m(double size_m) {
  const double rounded_m = 1e-4 * std::round(1e4 * size_m);
  return rounded_m < 0.001 ? 0.0 : rounded_m;
}

/// Sizes of the cut that several members share.
struct CutSizes {
  std::optional<double> measured_depth_m;  ///< glass to fixing face; of two sashes the one nearer the room
  double depth_m = 0.0;                    ///< the same, or what the window model takes
  double thickness_m = 0.0;                ///< of the sash or the steel
};

CutSizes cut_sizes(const Survey& survey, const WindowModel& window) {
  const auto& depths = survey.window.glass_to_fixing_face_m;
  CutSizes sizes;
  if (!depths.empty()) {
    sizes.measured_depth_m = *std::min_element(depths.begin(), depths.end());
  }
  sizes.depth_m = sizes.measured_depth_m.value_or(window.gap_width_m - window.tape_thickness_m);
  sizes.thickness_m = window.frame_thickness_m;
  return sizes;
}

bool is_on_sash(Cover cover) {
  return cover == Cover::glass || cover == Cover::sash;
}

/// How far the sash's or the steel's room face stands behind that of the frame round it. On the frame it is
/// measured; before a batten the usual, or what leaves the batten its depth.
double set_back_m(const Survey& survey, const CutSizes& sizes, double glass_to_face_m, double usual_m) {
  const double left_m = sizes.depth_m - glass_to_face_m;
  if (survey.sheet.cover == Cover::frame) {
    if (left_m < -5e-4) {
      throw InvalidInput("sash.glass_to_room_face_m",
                         "is more than glass to fixing face: the frame would stand behind the sash");
    }
    return drawn_size_m(left_m);
  }
  if (survey.sheet.cover == Cover::reveal) {
    const double batten_m = survey.edge.batten_depth_m.value_or(usual_batten_depth_m);
    return drawn_size_m(std::clamp(left_m - batten_m, 0.0, usual_m));
  }
  return usual_m;
}

TimberSash timber_sash(const Survey& survey, const CutSizes& sizes, double timber_W_mK) {
  const auto& edge = survey.edge;
  TimberSash sash;
  const bool sheet_tells = is_on_sash(survey.sheet.cover) || (survey.window.kind == WindowKind::fixed_light &&
                                                              survey.sheet.cover == Cover::frame);
  const double usual_m = std::min(room_face_share * sizes.thickness_m, sizes.depth_m);
  const auto told_m = sheet_tells ? sizes.measured_depth_m : std::nullopt;
  if (told_m && edge.glass_to_room_face_m && std::abs(*told_m - *edge.glass_to_room_face_m) > 5e-4) {
    throw InvalidInput("sash.glass_to_room_face_m",
                       "is not glass to fixing face, and the sheet is fixed to that face: leave one out");
  }
  sash.depth_m = sizes.thickness_m;
  sash.face_m = edge.rail_face_m.value_or(sash.face_m);
  sash.glass_to_room_face_m = edge.glass_to_room_face_m.value_or(told_m.value_or(usual_m));
  sash.timber_W_mK = timber_W_mK;
  return sash;
}

SashInFrame sash_in_frame(const Survey& survey, const CutSizes& sizes, double timber_W_mK) {
  SashInFrame member;
  member.sash = timber_sash(survey, sizes, timber_W_mK);
  member.frame_W_mK = timber_W_mK;
  member.set_back_m = set_back_m(survey, sizes, member.sash.glass_to_room_face_m, member.set_back_m);
  member.frame_face_m = survey.edge.frame_face_m.value_or(member.frame_face_m);
  return member;
}

SteelCasement steel_casement(const Survey& survey, const CutSizes& sizes, const EdgeMaterials& materials) {
  const auto& edge = survey.edge;
  SteelCasement steel;
  steel.depth_m = sizes.thickness_m;
  steel.steel_W_mK = materials.frame_W_mK;
  if (sheet_on_steel(survey) && sizes.measured_depth_m) {
    steel.thickness_m = *sizes.measured_depth_m;  // the glass bears on the leg whose face takes the tape
  }
  if (edge.rail_face_m) {
    steel.upper_leg_m = *edge.rail_face_m - steel.thickness_m;
  }
  if (edge.timber_sub_frame.value_or(false)) {
    TimberSubFrame timber;
    timber.timber_W_mK = materials.sub_frame_W_mK;
    timber.face_m = edge.frame_face_m.value_or(timber.face_m);
    timber.set_back_m = set_back_m(survey, sizes, steel.thickness_m, timber.set_back_m);
    const double held_m = timber.set_back_m + steel.depth_m;
    timber.depth_m = timber.depth_m - held_m < 0.001 ? held_m : timber.depth_m;
    steel.sub_frame = timber;
  }
  return steel;
}

ReadyMember member_of(const Survey& survey, const CutSizes& sizes, const EdgeMaterials& materials) {
  if (survey.window.frame == FrameKind::steel) {
    return steel_casement(survey, sizes, materials);
  }
  if (survey.window.kind == WindowKind::fixed_light) {
    return timber_sash(survey, sizes, materials.frame_W_mK);
  }
  return sash_in_frame(survey, sizes, materials.frame_W_mK);
}

/// Glass to the member's foremost room face.
double glass_to_member_face_m(const ReadyMember& member) {
  if (const auto* sash = std::get_if<TimberSash>(&member)) {
    return sash->glass_to_room_face_m;
  }
  if (const auto* framed = std::get_if<SashInFrame>(&member)) {
    return framed->sash.glass_to_room_face_m + framed->set_back_m;
  }
  const auto& steel = std::get<SteelCasement>(member);
  return steel.thickness_m + (steel.sub_frame ? steel.sub_frame->set_back_m : 0.0);
}

/// Height of the face that the tape stands on.
double seat_height_m(const ReadyMember& member, const SheetPlace& place) {
  if (const auto* batten = std::get_if<OnBatten>(&place)) {
    return batten->width_m;
  }
  const bool on_frame = std::holds_alternative<OnFrame>(place);
  if (const auto* sash = std::get_if<TimberSash>(&member)) {
    return sash->face_m;
  }
  if (const auto* framed = std::get_if<SashInFrame>(&member)) {
    const bool stop = framed->set_back_m > 0.0;
    return on_frame ? framed->frame_face_m + (stop ? framed->stop_height_m : 0.0)
                    : framed->sash.face_m - (stop ? framed->stop_height_m - framed->joint_m : 0.0);
  }
  const auto& steel = std::get<SteelCasement>(member);
  return on_frame ? steel.sub_frame->face_m : steel.thickness_m + steel.upper_leg_m;
}

SheetPlace place_of_sheet(const Survey& survey, const CutSizes& sizes, const ReadyMember& member) {
  if (survey.sheet.cover == Cover::reveal) {
    const double free_m = sizes.depth_m - glass_to_member_face_m(member);
    OnBatten batten;
    batten.glass_to_fixing_face_m = sizes.depth_m;
    batten.depth_m =
        survey.edge.batten_depth_m.value_or(std::min(usual_batten_depth_m, drawn_size_m(free_m)));
    return batten;
  }
  const bool has_frame = !std::holds_alternative<TimberSash>(member) && !sheet_on_steel(survey);
  return survey.sheet.cover == Cover::frame && has_frame ? SheetPlace(OnFrame{}) : SheetPlace(OnSash{});
}

std::optional<MasonryReveal> reveal_of(const Survey& survey, const CutSizes& sizes, double to_face_m) {
  const auto& edge = survey.edge;
  if (survey.sheet.cover != Cover::reveal && !edge.outer_reveal_m && !edge.inner_reveal_m) {
    return std::nullopt;
  }
  MasonryReveal reveal;
  const double needed_m = survey.sheet.cover == Cover::reveal ? sizes.depth_m - to_face_m : 0.0;
  reveal.outer_m = edge.outer_reveal_m.value_or(reveal.outer_m);
  reveal.inner_m = edge.inner_reveal_m.value_or(std::max(reveal.inner_m, needed_m));
  return reveal;
}

/// The key that a size of the drawing hangs on.
std::string key_behind(std::string_view size) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 18> keys{
      {{"sash.face_m", "edge.rail_face"},
       {"sash.rebate_m", "edge.rail_face"},
       {"steel.upper_leg_m", "edge.rail_face"},
       {"sash.glass_to_room_face_m", "edge.glass_to_room_face"},
       {"sash.depth_m", "window.frame_thickness"},
       {"steel.depth_m", "window.frame_thickness"},
       {"steel.thickness_m", "window.glass_to_fixing_face"},
       {"set_back_m", "window.glass_to_fixing_face"},
       {"batten.glass_to_fixing_face_m", "window.glass_to_fixing_face"},
       {"sub_frame.set_back_m", "window.glass_to_fixing_face"},
       {"frame_face_m", "edge.frame_face"},
       {"sub_frame.face_m", "edge.frame_face"},
       {"glass.thickness_m", "window.glass_thickness"},
       {"sheet.thickness_m", "sheet.thickness"},
       {"sheet.tape_thickness_m", "sheet.tape_thickness"},
       {"sheet.tape_width_m", "sheet.tape_width"},
       {"reveal.outer_m", "edge.outer_reveal"},
       {"reveal.inner_m", "edge.inner_reveal"}}};
  const auto* const at =
      std::find_if(keys.begin(), keys.end(), [&](const auto& pair) { return pair.first == size; });
  if (at != keys.end()) {
    return std::string(at->second);
  }
  return size.starts_with("batten.") ? "edge.batten_depth" : "edge.work_out";
}

/// Keys that this window has no place for.
std::vector<SurveyProblem> misplaced_keys(const Survey& survey) {
  const auto& edge = survey.edge;
  const bool steel = survey.window.frame == FrameKind::steel;
  const bool has_sub_frame = edge.timber_sub_frame.value_or(false);
  std::vector<SurveyProblem> found;
  const auto when = [&](bool wrong, const char* field, const char* message) {
    if (wrong) {
      found.push_back({field, message});
    }
  };
  when(survey.expert.frame_u_value_W_m2K.has_value(), "expert.frame_u_value",
       "the section gives the frame's U too: leave one of the two out");
  when(steel && edge.glass_to_room_face_m, "edge.glass_to_room_face",
       "is of a timber rail; in a steel frame the glass bears on the leg itself");
  when(!steel && has_sub_frame, "edge.timber_sub_frame", "is of a steel frame; this one is timber");
  when(steel && edge.frame_face_m && !has_sub_frame, "edge.frame_face",
       "under steel this is the timber that it is screwed to: timber_sub_frame = \"yes\" goes with it");
  when(!steel && edge.frame_face_m && survey.window.kind == WindowKind::fixed_light, "edge.frame_face",
       "a fixed light is drawn as one member: its height is rail_face");
  when(edge.batten_depth_m && survey.sheet.cover != Cover::reveal, "edge.batten_depth",
       "only a sheet in the reveal stands on a batten");
  return found;
}

}  // namespace

EdgeMaterials usual_edge_materials(FrameKind frame) {
  return {best_W_mK(frame), best_W_mK(FrameKind::softwood), usual_gap_W_m2K};
}

bool sheet_on_steel(const Survey& survey) {
  switch (survey.sheet.cover) {
    case Cover::glass:
    case Cover::sash:
      return survey.window.frame == FrameKind::steel;
    case Cover::frame:  // which may be the timber that the steel is screwed to
      return survey.window.frame == FrameKind::steel && !survey.edge.timber_sub_frame.value_or(false);
    case Cover::reveal:
      return false;
  }
  return false;
}

ReadySection edge_section(const Survey& survey, const WindowModel& window, const EdgeMaterials& materials) {
  const CutSizes sizes = cut_sizes(survey, window);
  ReadySection ready;
  ready.member = member_of(survey, sizes, materials);
  ready.glass.thickness_m = window.glass_thickness_m;
  ready.reveal = reveal_of(survey, sizes, glass_to_member_face_m(ready.member));
  ReadySheet sheet;
  sheet.place = place_of_sheet(survey, sizes, ready.member);
  sheet.thickness_m = window.sheet_thickness_m;
  sheet.tape_thickness_m = window.tape_thickness_m;
  sheet.tape_width_m = window.tape_width_m;
  sheet.overlap_m =
      std::min(std::max(usual_overlap_m, window.tape_width_m), seat_height_m(ready.member, sheet.place));
  sheet.gap_conductance_W_m2K = materials.gap_W_m2K;
  sheet.sheet_W_mK = survey.expert.sheet_conductivity_W_mK.value_or(window.sheet.conductivity_W_mK.best);
  sheet.tape_W_mK = window.tape.conductivity_W_mK.best;
  ready.sheet = sheet;
  return ready;
}

std::vector<SurveyProblem> edge_problems(const Survey& survey) {
  const auto frame = survey.window.frame;
  if (!is_timber(frame) && frame != FrameKind::steel) {
    return {{"edge.work_out", "there is no section for frames of " + std::string(name_of(frame)) +
                                  "; softwood, hardwood and steel can be worked out"}};
  }
  auto found = misplaced_keys(survey);
  if (!found.empty()) {
    return found;
  }
  try {
    section_of(edge_section(survey, resolved_window(survey), usual_edge_materials(frame)),
               ReadyFilling::glass_and_sheet);
  } catch (const InvalidInput& error) {
    return {{key_behind(error.field()), std::string("the section cannot be drawn: ") + error.what()}};
  }
  return {};
}

}  // namespace dewgap
