// A vent decision with what its printers need from the job and the files beside it.
#pragma once

#include <optional>
#include <vector>

#include "dewgap/assessment/gap_year.hpp"
#include "dewgap/assessment/mend_first.hpp"
#include "dewgap/assessment/vent_advice.hpp"
#include "tools/answer/answered_job.hpp"
#include "tools/answer/frost_step.hpp"

namespace dewgap::tools {

/// The first-winter check: what was advised before the readings, and what to do now.
struct FrostCheck {
  VentAdvice before;
  VentOption fitted = VentOption::sealed;
  FrostFindings found;
  FrostStep step = FrostStep::keep;
};

struct AdvisedJob {
  AnsweredJob job;  ///< on HOLD its assessment says so, and there is nothing below
  VentAdviceOptions options;
  std::vector<Mend> mend_first;  ///< what stands in the way; once a sheet hangs no setting out
  std::optional<VentAdvice> advice;
  std::optional<GapYearSummary> middle;  ///< the middle case's year under the option that was chosen
  std::optional<FrostCheck> frost_check;
};

}  // namespace dewgap::tools
