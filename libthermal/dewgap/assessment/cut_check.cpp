#include "dewgap/assessment/cut_check.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "dewgap/assessment/setting_out_kernel.hpp"

namespace dewgap {
namespace {

constexpr double most_flex_m = 0.3;  // what fit_check takes

std::optional<OpeningWay> way_of(SashMoves moves) {
  switch (moves) {
    case SashMoves::up_and_down:
      return OpeningWay::slides_up_and_down;
    case SashMoves::sideways:
      return OpeningWay::slides_sideways;
    case SashMoves::inwards:
      return OpeningWay::swings_inwards;
    case SashMoves::outwards:
      return OpeningWay::swings_outwards;
  }
  return std::nullopt;
}

std::optional<OpeningWay> way_of(const WindowSurvey& window) {
  if (window.painted_shut || window.kind == WindowKind::fixed_light) {
    return OpeningWay::does_not_open;
  }
  if (window.moves) {
    return way_of(*window.moves);
  }
  return window.kind == WindowKind::sliding_sash ? std::optional(OpeningWay::slides_up_and_down)
                                                 : std::nullopt;
}

/// What a part in the way is, against what is measured or built.
MendKind kind_of(FitKind kind) {
  switch (kind) {
    case FitKind::catch_stands_out:
    case FitKind::handle_stands_out:
    case FitKind::stay_stands_out:
    case FitKind::sashes_pass:
    case FitKind::shutter:
    case FitKind::blind:
      return MendKind::obstacle;
    case FitKind::opens:
    case FitKind::two_planes:
    case FitKind::gap_depth:
    case FitKind::fixing_face:
    case FitKind::timber_depth:
    case FitKind::out_of_square:
    case FitKind::taper:
    case FitKind::bow:
    case FitKind::diagonals:
      return MendKind::setting_out;
  }
  return MendKind::setting_out;
}

/// Checks that the plan makes too, and tells with what to do about it.
bool is_told_by(const std::optional<SheetPlan>& plan, FitKind kind) {
  constexpr std::array told{std::pair{FitKind::fixing_face, RefusalKind::face_too_narrow},
                            std::pair{FitKind::timber_depth, RefusalKind::timber_too_thin},
                            std::pair{FitKind::out_of_square, RefusalKind::overlap_too_small},
                            std::pair{FitKind::diagonals, RefusalKind::diagonals_wrong}};
  return plan && std::any_of(told.begin(), told.end(), [&](const auto& pair) {
           return pair.first == kind &&
                  std::any_of(plan->refused.begin(), plan->refused.end(),
                              [&](const Refusal& refusal) { return refusal.kind == pair.second; });
         });
}

void add_once(std::vector<Mend>& list, MendKind kind, const std::string& sentence) {
  const bool told =
      std::any_of(list.begin(), list.end(), [&](const Mend& one) { return one.say == sentence; });
  if (!told) {
    list.push_back({kind, sentence});
  }
}

/// A catch is told by the fit check, which knows what else stands out.
void add_refusals(std::vector<Mend>& list, const SheetPlan& plan) {
  for (const auto& refusal : plan.refused) {
    if (refusal.kind != RefusalKind::catch_in_the_way) {
      add_once(list, MendKind::setting_out, refusal.sentence);
    }
  }
  if (plan.batten_first) {
    add_once(list, MendKind::setting_out, plan.batten_reason);
  }
}

}  // namespace

FitCheckInput fit_check_input(const Survey& survey, const std::optional<SheetPlan>& plan) {
  const auto& window = survey.window;
  FitCheckInput input;
  input.opening = measured_for_sheet(survey);
  input.seat = seat_of(survey.sheet.cover);
  input.sheet = survey.sheet.material;
  input.frame = window.frame;
  input.opening_way = way_of(window);
  input.catch_stands_out_m = window.catch_stands_out_m;
  input.handle_stands_out_m = window.handle_stands_out_m;
  input.stay_stands_out_m = window.stay_stands_out_m;
  input.tape_thickness_m = survey.sheet.tape_thickness_m.value_or(input.tape_thickness_m);
  if (plan) {
    input.sheet_thickness_m = 1e-3 * plan->thickness_mm;
    input.sheet_flex_m = std::min(1e-3 * plan->deflection_mm.value_or(0.0), most_flex_m);
  }
  input.glass_to_fixing_face_m = window.glass_to_fixing_face_m;
  input.between_sashes_m = window.between_sashes_m;
  input.shutter = window.shutter;
  input.blind = window.blind;
  input.fixing_face_m = window.fixing_face_m;
  input.screw_depth_m = window.screw_depth_m;
  return input;
}

CutCheck cut_check(const Survey& survey, const std::optional<SheetPlan>& plan) {
  CutCheck check;
  check.findings = fit_check(fit_check_input(survey, plan));
  check.sun = sheet_in_sun(survey, plan ? std::optional(1e-3 * plan->thickness_mm) : std::nullopt);
  for (const auto& finding : check.findings) {
    if (finding.severity == FitSeverity::blocks && !is_told_by(plan, finding.kind)) {
      add_once(check.against, kind_of(finding.kind), finding.sentence);
    }
  }
  if (plan) {
    add_refusals(check.against, *plan);
  } else {
    add_once(check.against, MendKind::setting_out, what_to_measure(survey));
  }
  if (check.sun.severity == FitSeverity::blocks) {
    add_once(check.against, MendKind::setting_out, check.sun.sentence);
  }
  return check;
}

}  // namespace dewgap
