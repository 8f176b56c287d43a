#include <algorithm>

#include "dewgap/assessment/verdict_kernel.hpp"

namespace dewgap {
namespace {

const OptionAdvice& advice_of(const VentAdvice& year, VentOption option) {
  return *std::find_if(year.options.begin(), year.options.end(),
                       [option](const OptionAdvice& advice) { return advice.option == option; });
}

std::string misty_mornings(const CaseSpread& mornings, std::size_t cases) {
  const std::string middle = " Misty mornings " + whole(mornings.p50) + " a year";
  if (cases < least_cases_for_percentiles) {
    return middle + "; all " + std::to_string(cases) + " cases: " + whole(mornings.least) + " to " +
           whole(mornings.greatest) + ".";
  }
  return middle + ", " + whole(mornings.p10) + " to " + whole(mornings.p90) + ".";
}

/// What the choice itself asks to be done first.
void add_what_the_choice_asks(VentOption choice, Verdict& verdict) {
  if (choice == VentOption::joints_stripped) {
    verdict.after.push_back("Draught-strip the old window's joints.");
  }
  if (choice == VentOption::weep_to_outdoors) {
    verdict.after.push_back("Drill two 6 mm weep holes through the bottom rail, falling outwards.");
  }
  if (!verdict.after.empty()) {
    verdict.headline = Headline::fit_after;
  }
}

std::string unsettled_clause(const VentAdvice& year) {
  return year.settled ? "" : " Not settled: " + year.not_settled_because + ".";
}

/// "only under 1 %" would be one word too many.
std::string only(double share) {
  return share < 0.01 ? "" : "only ";
}

/// Too few cases are acceptable: the realistic remedy first, else leave it.
void mend_or_leave(const VentAdvice& year, double share, Verdict& verdict) {
  verdict.because =
      "The gap would stay dry or mist harmlessly through the year in " + only(share) + share_of_cases(share);
  if (year.realistic_remedy) {
    add_what_the_choice_asks(year.choice, verdict);
    verdict.headline = Headline::fit_after;
    verdict.after.push_back(year.remedies.at(*year.realistic_remedy));
    verdict.because += " as the room is.";
    return;
  }
  verdict.headline = Headline::leave;
  verdict.cause = LeaveCause::runs_wet;
  verdict.because += ", and no doable airing mends it.";
}

}  // namespace

const OptionAdvice& chosen_option(const VentAdvice& year) {
  return advice_of(year, year.choice);
}

WeightedRuns steady_runs_for(const VentAdvice& year, const WeightedRuns& runs) {
  const auto nearest = nearest_steady(year.choice);
  const double costs_kWh =
      chosen_option(year).heat_against_sealed_kWh.p50 - advice_of(year, nearest).heat_against_sealed_kWh.p50;
  WeightedRuns moved = runs;
  for (auto& figures : moved.figures) {
    figures.saved.glass_kWh -= costs_kWh;
  }
  return moved;
}

Verdict decide_by_year(const Setting& setting, const WeightedRuns& runs, const VentAdvice& year,
                       const std::optional<MoneySpread>& money) {
  const Survey& survey = *setting.survey;
  if (auto left = leave_for_heat_or_money(survey, runs, year.choice, money)) {
    return *left;
  }
  const auto& chosen = chosen_option(year);
  auto verdict = fit_after_mending(survey, runs, year.choice);
  verdict.remedies = year.remedies;
  if (chosen.acceptable_share >= enough_share) {
    add_what_the_choice_asks(year.choice, verdict);
    verdict.because = "In " + share_of_cases(chosen.acceptable_share) +
                      " the gap stays dry or mists harmlessly through the year." +
                      misty_mornings(chosen.misty_mornings, year.cases_run);
  } else {
    mend_or_leave(year, chosen.acceptable_share, verdict);
  }
  verdict.because += heat_and_money_clauses(survey, runs, year.choice, money) + unsettled_clause(year);
  return verdict;
}

std::string vent_reason(const VentAdvice& year) {
  std::string reason = year.air.reason;
  if (chosen_option(year).acceptable_share < enough_share) {
    return reason;  // what ties is no better
  }
  if (year.tied.size() == 1) {
    reason += " It ties with " + std::string(name_of(year.tied.front())) + "; the simplest wins.";
  } else if (!year.tied.empty()) {
    reason += " It ties with " + std::to_string(year.tied.size()) + " other ways; the simplest wins.";
  }
  return reason;
}

}  // namespace dewgap
