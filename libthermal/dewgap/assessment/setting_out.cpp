#include "dewgap/assessment/setting_out_kernel.hpp"

#include <algorithm>

namespace dewgap {
namespace {

bool is_sized_from_glass(Cover cover) {
  return cover == Cover::glass || cover == Cover::sash;
}

/// A sliding window has two sashes, one above the other or beside it; others are taken as one.
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
  const bool sideways = window.moves == SashMoves::sideways;
  const auto& sides_m = sideways ? window.opening_widths_m : window.opening_heights_m;
  const double opening_m = *std::max_element(sides_m.begin(), sides_m.end());
  const double glass_m = sideways ? *window.glass_width_m : *window.glass_height_m;
  return window.pane_count <= sashes && sashes * glass_m <= opening_m;
}

bool size_is_known(const Survey& survey) {
  const auto& window = survey.window;
  if (!is_sized_from_glass(survey.sheet.cover)) {
    return true;
  }
  const bool measured = window.glass_width_m && window.glass_height_m;
  return measured && (survey.sheet.cover == Cover::glass || tells_sash_glass(window));
}

}  // namespace

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

MeasuredOpening measured_for_sheet(const Survey& survey) {
  const auto& window = survey.window;
  if (is_sized_from_glass(survey.sheet.cover) && window.glass_width_m && window.glass_height_m) {
    return visible_glass(*window.glass_width_m, *window.glass_height_m);
  }
  return {.widths_m = window.opening_widths_m,
          .heights_m = window.opening_heights_m,
          .diagonals_m = window.diagonals_m};
}

std::vector<BreaksWanted> breaks_wanted(VentOption vent) {
  const BreaksWanted below{.member = Member::bottom, .count = 2, .length_m = practice::vent_break_m};
  const BreaksWanted above{.member = Member::top, .count = 2, .length_m = practice::vent_break_m};
  switch (vent) {
    case VentOption::breaks_bottom:
      return {below};
    case VentOption::breaks_bottom_longer:
      return {{.member = Member::bottom, .count = 2, .length_m = practice::longer_vent_break_m}};
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
  input.opening = measured_for_sheet(survey);
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
  input.stock = survey.sheet.stock;
  auto plan = plan_sheet(input);
  if (survey.sheet.cover == Cover::glass && plan.sheet_count > 1) {
    plan.notes.push_back("Cut from one pane's glass: measure each pane that differs.");
  }
  if (survey.sheet.cover == Cover::sash && plan.sheet_count > 1) {
    plan.notes.push_back("One sheet a sash: check both sashes' glass, and that the sheets pass each other.");
  }
  return plan;
}

std::string what_to_measure(const Survey& survey) {
  return survey.sheet.cover == Cover::sash ? "Measure the glass of each sash: the sheet is cut from it."
                                           : "Measure the glass of a pane: the sheets are cut from it.";
}

}  // namespace dewgap
