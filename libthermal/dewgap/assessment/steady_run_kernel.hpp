// The weighted draw that the answer's steady figures rest on. Internal to assessment/.
#pragma once

#include "dewgap/assessment/summary_figures_kernel.hpp"

namespace dewgap {

/// Draws samples, weights them by the evidence, and grows their number when the evidence leaves too few. Not
/// run yet.
SteadyRun weighted_draw(const Setting& setting, const AssessOptions& options, double convention_width);

/// Runs every sample that carries weight. Those that do not settle are left out and counted, while they are
/// few; else throws CalculationFailed.
void run_all(const Setting& setting, WeightedRuns& runs);

}  // namespace dewgap
