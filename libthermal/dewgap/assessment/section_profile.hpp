// A cut through the middle of the window: temperatures of every face and dew points of the air beside them,
// without and with the sheet, in the coldest month's means and on a frost night.
//
// The middle case: each unknown at its median, weighted by all that was observed. It is no case that was
// drawn. The physics is that of assess: a curtain, where one was stated, is drawn on the frost night; what
// draught the sheet stops raises the room's humidity with it. Safety gates are not asked: assess does.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dewgap/assessment/survey.hpp"
#include "dewgap/assessment/vent_option.hpp"
#include "dewgap/validity.hpp"

namespace dewgap {

enum class SectionPart { old_glass, gap, sheet, curtain_air, curtain };
std::string_view name_of(SectionPart part);

/// A layer between outdoors and the room; a gap's faces are those of the layers beside it.
struct SectionLayer {
  SectionPart part = SectionPart::old_glass;
  std::string name;      ///< for people: "old glass"
  std::string material;  ///< "glass", "acrylic", "air"
  double thickness_m = 0.0;
  double outer_face_C = 0.0;
  double inner_face_C = 0.0;
};

enum class SectionCondition { coldest_month, frost_night };

/// Where mist (below 0 C frost) is on the face that is nearest its dew point.
enum class SectionMist { none, edges, all_over };

/// One cut under one condition.
struct SectionState {
  SectionCondition condition = SectionCondition::coldest_month;
  double outdoor_C = 0.0;
  double outdoor_dew_point_C = 0.0;  ///< below 0 C the frost point, as all dew points here
  double room_C = 0.0;
  double room_dew_point_C = 0.0;
  double room_humidity = 0.0;        ///< 0..1
  std::vector<SectionLayer> layers;  ///< outdoors first
  // Of the gap; none without the sheet.
  std::optional<double> gap_air_C;
  std::optional<double> gap_dew_point_C;            ///< of its air as it is
  std::optional<double> gap_potential_dew_point_C;  ///< did nothing condense there: decides
  /// The face that may mist: the old glass towards the room; with the sheet the colder of the gap's faces.
  double centre_face_C = 0.0;
  double edge_face_C = 0.0;
  double decisive_dew_point_C = 0.0;  ///< of the air beside it: the room's, or the gap's potential one
  double margin_K = 0.0;              ///< edge less that dew point: negative is wet
  SectionMist mist = SectionMist::none;
  bool is_frost = false;            ///< the misted face is below 0 C
  double room_face_C = 0.0;         ///< what one would touch: sheet or old glass, before any curtain
  double room_face_humidity = 0.0;  ///< of room air there, 0..1 and above
};

struct SectionProfile {
  VentOption option = VentOption::sealed;
  SectionState month_without;
  SectionState month_with;
  SectionState frost_without;
  SectionState frost_with;
  double glass_height_m = 0.0;  ///< of one pane
  double gap_width_m = 0.0;
  double tape_thickness_m = 0.0;
  ValidityFlags flags;
};

/// Throws InvalidInput for an invalid survey or an option that cannot be offered, CalculationFailed when a
/// balance does not settle. Weather of the survey's place; the same arguments give the same answer.
SectionProfile section_profile(const Survey& survey, VentOption option);

/// Whether it mists: "On a frost night frost covers the old glass." With the sheet it speaks of the gap.
std::string mist_sentence(const SectionState& state);

}  // namespace dewgap
