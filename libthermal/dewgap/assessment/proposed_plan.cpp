#include "dewgap/assessment/proposed_plan.hpp"

#include "dewgap/assessment/setting_out_kernel.hpp"

namespace dewgap {

std::optional<SheetPlan> proposed_plan(const Survey& survey) {
  validate(survey);
  return plan_for(survey, window_model(survey));
}

}  // namespace dewgap
