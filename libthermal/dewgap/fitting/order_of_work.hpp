// The steps of the work at the window, in order.
#pragma once

#include <string>
#include <vector>

#include "dewgap/fitting/sheet_plan.hpp"
#include "dewgap/materials/materials.hpp"

namespace dewgap {

enum class WorkStepKind {
  settle,  ///< what the plan refuses: first
  batten,
  clean_and_dry,
  mark,
  cut,
  dry_fit,
  drill_sheet,
  drill_pilot,
  tape,
  breaks,
  fit,
  check,
  label,
  wipe,
};

struct WorkStep {
  WorkStepKind kind = WorkStepKind::clean_and_dry;
  std::string sentence;  ///< at most 110 characters
};

/// Chosen by what the plan has: no drilling where nothing is drilled, breaks only where there are some. A
/// plan that is refused has the step `settle` for each reason and then the work as it will be.
std::vector<WorkStep> order_of_work(const SheetPlan& plan, SheetKind sheet);

}  // namespace dewgap
