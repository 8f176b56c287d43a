#include <algorithm>
#include <utility>

#include "dewgap/assessment/verdict_kernel.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

constexpr std::array<double, 2> remedy_scales{0.7, 0.5};

std::string remedy_sentence(const HumidityRemedy& remedy) {
  return "Air the room by " + whole(remedy.extra_airflow_m3_h) +
         " m3/h more (small fan or trickle vents): " + share_of_cases(remedy.acceptable_share) +
         " stay acceptable.";
}

bool is_realistic(const HumidityRemedy& remedy) {
  return remedy.extra_airflow_m3_h <= realistic_extra_airflow_m3_h;
}

/// Takes the first remedy that is enough and realistic, else tells what each would do.
void try_remedies(const Setting& setting, const WeightedRuns& runs, Verdict& verdict) {
  for (const auto& remedy : humidity_remedies(setting, runs, verdict.vent)) {
    verdict.remedies.push_back(remedy_sentence(remedy));
    if (remedy.acceptable_share >= enough_share && is_realistic(remedy)) {
      verdict.headline = Headline::fit_after;
      verdict.cause = LeaveCause::none;
      verdict.after.push_back(verdict.remedies.back());
      return;
    }
  }
}

std::string money_clause(const std::optional<MoneySpread>& money, const Survey& survey) {
  if (!money || !survey.money->cost) {
    return {};
  }
  if (money->never_pays_back_share >= 0.5) {
    return " It never pays back.";
  }
  if (!money->payback_years) {
    return " It may never pay back.";
  }
  const double years = money->payback_years->p50;
  const bool beyond_life = survey.money->life_years && years > *survey.money->life_years;
  return beyond_life ? " It will not earn its cost back in its life." : "";
}

std::string dry_clause(double share) {
  return "The gap stays dry or harmlessly misty in " + share_of_cases(share);
}

/// Cases in which the sheet's room side, or the edge where its section is solved, is at the room's dew point
/// or below in the coldest month's means.
double wet_room_side_share(const WeightedRuns& runs, VentOption vent) {
  const auto option = index_of(vent);
  return share_over(
      runs, [option](const SampleFigures& f) { return f.options[option].month_room_side_humidity >= 1.0; });
}

/// Said when more than a tenth of the cases lose heat.
std::string loss_clause(double losing_share) {
  return losing_share > 0.1 ? " It loses heat in " + whole(100.0 * losing_share) + " %." : "";
}

Verdict leave(VentOption vent, LeaveCause cause, std::string because) {
  return {.headline = Headline::leave,
          .cause = cause,
          .vent = vent,
          .because = std::move(because),
          .after = {},
          .remedies = {}};
}

}  // namespace

VentOption choose_vent(const std::vector<VentOutcome>& outcomes) {
  double best = 0.0;
  for (const auto& outcome : outcomes) {
    best = std::max(best, outcome.acceptable_share);
  }
  // Listed from the simplest: the first that ties with the best wins.
  for (const auto& outcome : outcomes) {
    if (outcome.acceptable_share >= best - tie_share) {
      return outcome.option;
    }
  }
  return outcomes.front().option;
}

std::vector<HumidityRemedy> humidity_remedies(const Setting& setting, const WeightedRuns& runs,
                                              VentOption vent) {
  std::vector<double> background;
  for (const auto& sample : runs.samples) {
    background.push_back(sample[Unknown::background_airflow]);
  }
  const double background_m3_h = numerics::weighted_quantile(background, runs.weights, 0.5);
  std::vector<HumidityRemedy> remedies;
  for (const double scale : remedy_scales) {
    HumidityRemedy remedy{.excess_scale = scale, .extra_airflow_m3_h = background_m3_h * (1.0 / scale - 1.0)};
    for (std::size_t i = 0; i < runs.samples.size(); ++i) {
      const auto option = run_option(setting, runs.samples[i], vent, TapeFault::none, scale,
                                     old_winter(setting, runs.samples[i]));
      remedy.acceptable_share += is_acceptable(option, runs.frost_night_hours) ? runs.weights[i] : 0.0;
    }
    remedies.push_back(remedy);
    if (remedy.acceptable_share >= enough_share) {
      break;
    }
  }
  return remedies;
}

std::vector<std::string> looks_before_fitting(const Survey& survey) {
  std::vector<std::string> looks;
  if (is_timber(survey.window.frame) && !survey.timber.bottom_rail) {
    looks.push_back("Press the bottom rail: firm, soft or wet?");
  }
  if (!survey.timber.lets_rain_in) {
    looks.push_back("After rain: does the window let water in?");
  }
  return looks;
}

std::optional<Verdict> leave_for_heat_or_money(const Survey& survey, const WeightedRuns& runs,
                                               VentOption vent, const std::optional<MoneySpread>& money) {
  const double losing = losing_share(runs, vent, survey);
  if (losing >= 0.5) {
    return leave(vent, LeaveCause::saves_nothing,
                 "The sheet would lose heat in " + share_of_cases(losing) + ": more sun than warmth kept.");
  }
  if (money && survey.money->cost && money->never_pays_back_share >= 0.5) {
    return leave(vent, LeaveCause::never_pays,
                 "It never pays back in " + share_of_cases(money->never_pays_back_share) + ".");
  }
  return std::nullopt;
}

Verdict fit_after_mending(const Survey& survey, const WeightedRuns& runs, VentOption vent) {
  Verdict verdict{.headline = Headline::fit,
                  .cause = LeaveCause::none,
                  .vent = vent,
                  .because = {},
                  .after = mend_first(survey, vent),
                  .remedies = {}};
  if (wet_room_side_share(runs, vent) >= 0.5) {
    const bool has_edge = survey.edge.work_out.value_or(false);
    verdict.after.push_back(
        std::string("Bring the room's humidity down: in the coldest month the sheet's room side") +
        (has_edge ? ", or the edge beside it, is wet." : " is wet."));
  }
  verdict.headline = verdict.after.empty() ? Headline::fit : Headline::fit_after;
  return verdict;
}

std::string heat_and_money_clauses(const Survey& survey, const WeightedRuns& runs, VentOption vent,
                                   const std::optional<MoneySpread>& money) {
  return loss_clause(losing_share(runs, vent, survey)) + money_clause(money, survey);
}

Verdict decide(const Setting& setting, const WeightedRuns& runs, const std::vector<VentOutcome>& outcomes,
               const std::optional<MoneySpread>& money) {
  const Survey& survey = *setting.survey;
  const VentOption vent = choose_vent(outcomes);
  const double share = outcomes[index_of(vent)].acceptable_share;
  if (auto left = leave_for_heat_or_money(survey, runs, vent, money)) {
    return *left;
  }
  auto verdict = fit_after_mending(survey, runs, vent);
  verdict.because = dry_clause(share) + "." + heat_and_money_clauses(survey, runs, vent, money);
  if (share >= enough_share) {
    return verdict;
  }
  verdict.headline = Headline::leave;
  verdict.cause = LeaveCause::runs_wet;
  try_remedies(setting, runs, verdict);
  verdict.because =
      "The gap would stay acceptable in only " + share_of_cases(share) +
      (verdict.headline == Headline::leave ? ", and no doable airing mends it." : " as the room is.");
  return verdict;
}

}  // namespace dewgap
