// What a household can do when too few cases are acceptable, over the year; and how long a wet gap takes to
// dry. Internal to assessment/.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "dewgap/assessment/vent_cases_kernel.hpp"
#include "dewgap/assessment/vent_choice_kernel.hpp"

namespace dewgap {

struct YearRemedies {
  std::vector<std::string> sentences;
  std::optional<std::size_t> realistic;  ///< the one that is enough and realistic
};
/// Airing with the chosen option, from little to more, until enough cases are acceptable; then what other
/// ways of making the window do by themselves. At most a few of the cases that are not acceptable are run
/// again with less moisture: a drier room is taken to leave acceptable what was acceptable.
YearRemedies year_remedies(const YearSetting& year, const VentCases& cases, const VentRuns& runs,
                           const std::vector<VentOption>& options, const VentChoice& choice,
                           HourBudget& budget);

/// One option's drying, as OptionAdvice states.
struct Drying {
  std::optional<CaseSpread> days;
  std::size_t cases = 0;  ///< that those days are of
  std::optional<double> not_in_a_year_share;
};
/// Of each option, over the same cases.
std::vector<Drying> drying_of(const YearSetting& year, const VentCases& cases, const VentRuns& runs,
                              const std::vector<VentOption>& options, HourBudget& budget);

}  // namespace dewgap
