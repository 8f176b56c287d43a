#include "dewgap/assessment/setting_out_kernel.hpp"

#include <algorithm>

namespace dewgap {
namespace {

bool is_sized_from_glass(Cover cover) {
  return cover == Cover::glass || cover == Cover::sash;
}

SheetSeat seat_of(Cover cover) {
  switch (cover) {
    case Cover::glass:
      return SheetSeat::on_panes;
    case Cover::sash:
      return SheetSeat::on_sash;
    case Cover::frame:
      return SheetSeat::overlapping;
    case Cover::reveal:
      return SheetSeat::inside_reveal;
  }
  return SheetSeat::overlapping;
}

/// A sliding window has two sashes, one above the other; others are taken as one.
int sash_count(const WindowSurvey& window) {
  return window.kind == WindowKind::sliding_sash ? 2 : 1;
}

int sheet_count(const Survey& survey) {
  switch (survey.sheet.cover) {
    case Cover::glass:
      return survey.window.pane_count;
    case Cover::sash:
      return sash_count(survey.window);
    case Cover::frame:
    case Cover::reveal:
      return 1;
  }
  return 1;
}

/// Whether the measured pane is all the glass of its sash.
bool tells_sash_glass(const WindowSurvey& window) {
  const int sashes = sash_count(window);
  const auto& heights_m = window.opening_heights_m;
  const double opening_m = *std::max_element(heights_m.begin(), heights_m.end());
  return window.pane_count <= sashes && sashes * *window.glass_height_m <= opening_m;
}

bool size_is_known(const Survey& survey) {
  const auto& window = survey.window;
  if (!is_sized_from_glass(survey.sheet.cover)) {
    return true;
  }
  const bool measured = window.glass_width_m && window.glass_height_m;
  return measured && (survey.sheet.cover == Cover::glass || tells_sash_glass(window));
}

MeasuredOpening opening_to_cover(const Survey& survey) {
  const auto& window = survey.window;
  if (is_sized_from_glass(survey.sheet.cover)) {
    return visible_glass(window.glass_width_m.value(), window.glass_height_m.value());
  }
  return {.widths_m = window.opening_widths_m,
          .heights_m = window.opening_heights_m,
          .diagonals_m = window.diagonals_m};
}

}  // namespace

std::vector<BreaksWanted> breaks_wanted(VentOption vent) {
  constexpr double longer_break_m = 0.100;  // common practice, no source
  const BreaksWanted below{.member = Member::bottom, .count = 2, .length_m = practice::vent_break_m};
  const BreaksWanted above{.member = Member::top, .count = 2, .length_m = practice::vent_break_m};
  switch (vent) {
    case VentOption::breaks_bottom:
      return {below};
    case VentOption::breaks_bottom_longer:
      return {{.member = Member::bottom, .count = 2, .length_m = longer_break_m}};
    case VentOption::breaks_bottom_and_top:
      return {below, above};
    case VentOption::sealed:
    case VentOption::weep_to_outdoors:
    case VentOption::joints_stripped:
    case VentOption::off_in_summer:
      return {};
  }
  return {};
}

std::optional<SheetPlan> plan_for(const Survey& survey, const WindowModel& window, VentOption vent) {
  if (!size_is_known(survey)) {
    return std::nullopt;
  }
  SheetPlanInput input;
  input.opening = opening_to_cover(survey);
  input.seat = seat_of(survey.sheet.cover);
  input.sheet = survey.sheet.material;
  input.frame = survey.window.frame;
  input.sheet_count = sheet_count(survey);
  input.sheet_thickness_m = survey.sheet.thickness_m;
  // The face and timber surveyed are the frame's or the sash's, not a glazing bar's.
  if (survey.sheet.cover != Cover::glass) {
    input.fixing_face_m = survey.window.fixing_face_m;
    input.screw_depth_m = survey.window.screw_depth_m;
    input.catch_stands_out_m = survey.window.catch_stands_out_m;
  }
  input.tape_thickness_m = window.tape_thickness_m;
  input.tape_width_m = window.tape_width_m;
  input.breaks = breaks_wanted(vent);
  auto plan = plan_sheet(input);
  if (survey.sheet.cover == Cover::glass && plan.sheet_count > 1) {
    plan.notes.push_back("Cut from one pane's glass: measure each pane that differs.");
  }
  if (survey.sheet.cover == Cover::sash && plan.sheet_count > 1) {
    plan.notes.push_back("One sheet a sash: check both sashes' glass, and that the sheets pass each other.");
  }
  return plan;
}

std::vector<std::string> needed_before_setting_out(const Survey& survey) {
  if (!size_is_known(survey)) {
    return {survey.sheet.cover == Cover::sash ? "Measure the glass of each sash: the sheet is cut from it."
                                              : "Measure the glass of a pane: the sheets are cut from it."};
  }
  std::vector<std::string> needed;
  const auto plan = plan_for(survey, window_model(survey));
  for (const auto& refusal : plan ? plan->refused : std::vector<Refusal>{}) {
    if (refusal.kind != RefusalKind::catch_in_the_way) {
      needed.push_back(refusal.sentence);
    }
  }
  return needed;
}

}  // namespace dewgap
