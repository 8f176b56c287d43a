// What a job says of the place where the sheet goes.
#include "tools/setting_out/job_to_set.hpp"

namespace dewgap::tools {
namespace {

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

/// Which way a casement swings is not asked: it stays to be looked at.
std::optional<OpeningWay> way_of(const WindowSurvey& window) {
  if (window.painted_shut) return OpeningWay::does_not_open;
  switch (window.kind) {
    case WindowKind::sliding_sash:
      return OpeningWay::slides_up_and_down;
    case WindowKind::fixed_light:
      return OpeningWay::does_not_open;
    case WindowKind::casement:
      return std::nullopt;
  }
  return std::nullopt;
}

MeasuredOpening opening_of(const Survey& survey) {
  const auto& window = survey.window;
  const bool of_glass = survey.sheet.cover == Cover::glass || survey.sheet.cover == Cover::sash;
  if (of_glass && window.glass_width_m && window.glass_height_m)
    return visible_glass(*window.glass_width_m, *window.glass_height_m);
  return {.widths_m = window.opening_widths_m,
          .heights_m = window.opening_heights_m,
          .diagonals_m = window.diagonals_m};
}

}  // namespace

FitCheckInput fit_check_input(const Survey& survey, const std::optional<SheetPlan>& plan) {
  const auto& window = survey.window;
  FitCheckInput input;
  input.opening = opening_of(survey);
  input.seat = seat_of(survey.sheet.cover);
  input.sheet = survey.sheet.material;
  input.frame = window.frame;
  input.opening_way = way_of(window);
  input.catch_stands_out_m = window.catch_stands_out_m;
  input.tape_thickness_m = tape_thickness_mm(survey) / 1000.0;
  if (plan) input.sheet_thickness_m = plan->thickness_mm / 1000.0;
  if (plan && plan->deflection_mm) input.sheet_flex_m = *plan->deflection_mm / 1000.0;
  input.glass_to_fixing_face_m = window.glass_to_fixing_face_m;
  input.fixing_face_m = window.fixing_face_m;
  input.screw_depth_m = window.screw_depth_m;
  return input;
}

}  // namespace dewgap::tools
