// From runs and verdict to the figures of an answer. Internal to assessment/.
#pragma once

#include <vector>

#include "dewgap/assessment/verdict_kernel.hpp"

namespace dewgap {

/// The steady runs with what they were drawn from.
struct SteadyRun {
  Beliefs beliefs;
  std::vector<EvidenceTerm> evidence;
  WeightedRuns weighted;
};

/// A verdict with what it was decided on.
struct Decision {
  Verdict verdict;
  std::vector<VentOutcome> outcomes;
  std::optional<MoneySpread> money;
};

/// All figures but the width checks, the plan and the year's.
Assessment::Figures figures_for(const Setting& setting, const SteadyRun& run, const Decision& decision);

/// Puts a year of hours into the figures: itself, and where it has shares to show its reason, shares, flip
/// and look.
void add_year(const VentAdvice& year, const Verdict& verdict, Assessment::Figures& figures);

}  // namespace dewgap
