// The sheet that a survey asks for, before anything is decided about it.
#pragma once

#include <optional>

#include "dewgap/assessment/survey.hpp"
#include "dewgap/fitting/sheet_plan.hpp"

namespace dewgap {

/// What somebody who has to consent is shown: which holes would be made. Safety gates are not asked: nothing
/// may be cut or drilled from it; assess has the plan for work. None when the glass it is sized from is not
/// measured. Throws InvalidInput for an invalid survey.
std::optional<SheetPlan> proposed_plan(const Survey& survey);

}  // namespace dewgap
