// Whether a sheet may be cut as it is planned: what the fit check finds, how hot it gets in the sun, and all
// that stands against it.
#pragma once

#include <optional>
#include <vector>

#include "dewgap/assessment/mend_first.hpp"
#include "dewgap/assessment/sheet_in_sun.hpp"
#include "dewgap/assessment/survey.hpp"
#include "dewgap/fitting/fit_check.hpp"
#include "dewgap/fitting/sheet_plan.hpp"

namespace dewgap {

struct CutCheck {
  std::vector<FitFinding> findings;  ///< see fit_check
  SheetInSun sun;
  /// Each reason once, as kind and sentence: what blocks in the findings, what the plan is refused for, a
  /// sheet that cannot be sized, a sheet that would soften in the sun. Empty: cut as planned.
  std::vector<Mend> against;
};

/// What a survey says of the place where the sheet goes. The sheet's thickness and how far it flexes are the
/// plan's; a flexing of over 0.3 m, where thin-plate theory has long ended, counts as 0.3 m. A casement of
/// which nobody said how it swings has no way of opening.
FitCheckInput fit_check_input(const Survey& survey, const std::optional<SheetPlan>& plan);

/// For a valid survey and the plan made from it; no plan: the glass that it is sized from is not measured.
CutCheck cut_check(const Survey& survey, const std::optional<SheetPlan>& plan);

}  // namespace dewgap
