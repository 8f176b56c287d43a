// What decides, what moved the answer and what would flip it. Internal to assessment/.
#pragma once

#include <string>
#include <vector>

#include "dewgap/assessment/vent_cases_kernel.hpp"
#include "dewgap/assessment/vent_choice_kernel.hpp"

namespace dewgap {

/// Fewer effective cases after reweighting the same runs and nothing is said: our convention.
inline constexpr double least_reweighted_cases = 8.0;

/// Unknowns whose squared rank correlation with hours wet or band of the choice is more than chance gives one
/// in a hundred times, largest first.
std::vector<Decider> deciders_of(const VentCases& cases, const VentRuns& runs, VentOption choice);

/// The observation without which the choice's acceptable share would be another, most first: a sentence. The
/// same runs are weighted as if it had not been made. What moves the share by less than two of its sampling
/// errors is chance.
std::string moved_most(const VentCases& cases, const VentRuns& runs, const std::vector<VentOption>& options,
                       const VentChoice& choice);

/// Which way the air goes with the choice over the cases that were run.
YearsAir years_air(const VentRuns& runs, VentOption choice);

/// The cheapest look not yet taken, one of whose possible answers would move the choice across the line or to
/// another option; and what that answer would do.
struct NextLook {
  std::string look;
  std::string flip;
};
NextLook next_look(const Setting& setting, const VentCases& cases, const VentRuns& runs,
                   const std::vector<VentOption>& options, const VentChoice& choice);

}  // namespace dewgap
