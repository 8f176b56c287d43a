#include "dewgap/assessment/vent_remedies_kernel.hpp"

#include <algorithm>
#include <numeric>

#include "dewgap/assessment/verdict_kernel.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

constexpr std::size_t most_cases_rerun = 8;

double background_airflow_m3_h(const VentCases& cases) {
  std::vector<double> values;
  for (const auto& sample : cases.samples) {
    values.push_back(sample[Unknown::background_airflow]);
  }
  return numerics::weighted_quantile(values, cases.weights, 0.5);
}

/// Places of the runs in which an option is not acceptable, in the order of the picks: any first few stand
/// for all.
std::vector<std::size_t> runs_to_mend(const VentRuns& runs, VentOption option) {
  std::vector<std::size_t> places;
  for (std::size_t i = 0; i < runs.years.size(); ++i) {
    if (!is_acceptable(year_of(runs.years[i], option))) {
      places.push_back(i);
    }
  }
  return places;
}

/// Share of all cases that are acceptable with less moisture; nullopt when the bound pays for none.
std::optional<double> share_with_less_moisture(const YearSetting& year, const VentCases& cases,
                                               const VentRuns& runs, const VentChoice& choice, double scale,
                                               HourBudget& budget) {
  double tried = 0.0;
  double mended = 0.0;
  std::size_t rerun = 0;
  for (const std::size_t place : runs_to_mend(runs, choice.choice)) {
    if (rerun == most_cases_rerun || budget.left() < window_hours_a_sample(year)) {
      break;
    }
    const auto drier = run_sample_year(year, cases.samples[runs.cases[place]], scale);
    budget.spend(window_hours_a_sample(year));
    ++rerun;
    if (drier.status == SolveStatus::converged) {
      tried += runs.counts[place];
      mended += is_acceptable(year_of(drier, choice.choice)) ? runs.counts[place] : 0.0;
    }
  }
  return tried > 0.0 ? std::optional(choice.share() + (1.0 - choice.share()) * mended / tried) : std::nullopt;
}

std::string airing_sentence(double extra_airflow_m3_h, double share) {
  return "Air the room by " + whole(extra_airflow_m3_h) +
         " m3/h more (small fan or trickle vents): " + share_of_cases(share) +
         " stay acceptable through the year.";
}

/// Other ways of making the window that do better than tape all round by more than a tie.
void tell_other_ways(const std::vector<VentOption>& options, const VentChoice& choice,
                     YearRemedies& remedies) {
  for (std::size_t i = 0; i < options.size(); ++i) {
    if (i != choice.place && choice.acceptable_share[i] > choice.acceptable_share.front() + tie_share) {
      remedies.sentences.push_back("By itself: " + std::string(name_of(options[i])) + ", acceptable in " +
                                   share_of_cases(choice.acceptable_share[i]) + ".");
    }
  }
}

/// Airing by these scales of the room's moisture, tried in turn.
constexpr std::array<double, 2> scales{0.7, 0.5};

}  // namespace

YearRemedies year_remedies(const YearSetting& year, const VentCases& cases, const VentRuns& runs,
                           const std::vector<VentOption>& options, const VentChoice& choice,
                           HourBudget& budget) {
  YearRemedies remedies;
  if (choice.share() >= enough_share) {
    return remedies;
  }
  const bool humidity_is_given = year.setting->survey->expert.room_relative_humidity.has_value();
  const double background_m3_h = background_airflow_m3_h(cases);
  for (const double scale : scales) {
    if (humidity_is_given) {
      break;  // an expert's room humidity is what airing would change: nothing to scale
    }
    const auto share = share_with_less_moisture(year, cases, runs, choice, scale, budget);
    if (!share) {
      break;
    }
    const double extra_m3_h = background_m3_h * (1.0 / scale - 1.0);
    remedies.sentences.push_back(airing_sentence(extra_m3_h, *share));
    if (*share >= enough_share) {
      if (extra_m3_h <= realistic_extra_airflow_m3_h) {
        remedies.realistic = remedies.sentences.size() - 1;
      }
      break;
    }
  }
  tell_other_ways(options, choice, remedies);
  return remedies;
}

}  // namespace dewgap
