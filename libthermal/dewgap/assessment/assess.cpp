#include "dewgap/assessment/assess.hpp"

#include <algorithm>

#include "dewgap/assessment/cautions_kernel.hpp"
#include "dewgap/assessment/setting_out_kernel.hpp"
#include "dewgap/assessment/steady_run_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

std::optional<MoneySpread> money_of(const Survey& survey, const WeightedRuns& runs, VentOption vent) {
  return survey.money ? std::optional(money_spread(runs, vent, survey)) : std::nullopt;
}

Decision decide_steadily(const Setting& setting, const WeightedRuns& runs) {
  Decision decision;
  decision.outcomes = vent_outcomes(runs);
  decision.money = money_of(*setting.survey, runs, choose_vent(decision.outcomes));
  decision.verdict = decide(setting, runs, decision.outcomes, decision.money);
  return decision;
}

WidthCheck check_width(const Setting& setting, const AssessOptions& options, double width) {
  auto run = weighted_draw(setting, options, width);
  run_all(setting, run.weighted);
  const auto decision = decide_steadily(setting, run.weighted);
  const auto& verdict = decision.verdict;
  return {.width = width,
          .headline = verdict.headline,
          .option = verdict.vent,
          .acceptable_share = decision.outcomes[index_of(verdict.vent)].acceptable_share};
}

/// The year of hours, when one is asked for.
std::optional<VentAdvice> year_of_hours(const Survey& survey, const AssessOptions& options,
                                        const std::optional<HourlyYear>& weather, const Progress& progress) {
  if (options.most_window_hours == 0) {
    return std::nullopt;
  }
  return vent_advice(survey, weather, {},
                     {.most_window_hours = options.most_window_hours, .seed = options.seed}, progress);
}

bool has_shares(const std::optional<VentAdvice>& year) {
  return year && !year->options.empty();
}

/// The verdict by the year where it has shares to show; else by the steady conditions. `run` becomes the one
/// whose heat and money the verdict speaks of.
Decision decide_with_year(const Setting& setting, SteadyRun& run, const Decision& steady,
                          const std::optional<VentAdvice>& year) {
  Decision decision = steady;
  if (has_shares(year)) {
    run.weighted = steady_runs_for(*year, run.weighted);
    decision.money = money_of(*setting.survey, run.weighted, year->choice);
    decision.verdict = decide_by_year(setting, run.weighted, *year, decision.money);
  } else if (year) {
    decision.verdict.because += " The year of hours has no answer: " + year->not_settled_because;
  }
  return decision;
}

/// Guesses decide when half or double width of the conventions brings another headline (USERS.md).
bool guesses_decide(const std::vector<WidthCheck>& checks, Headline steady) {
  return std::any_of(checks.begin(), checks.end(),
                     [steady](const WidthCheck& check) { return check.headline != steady; });
}

}  // namespace

void AssessOptions::validate() const {
  require_in_range(static_cast<double>(samples), {16.0, 1e6}, "samples", "");
  require_in_range(frost_night_hours, {1.0, 24.0}, "frost_night_hours", "h");
  if (most_window_hours != 0) {
    require_in_range(static_cast<double>(most_window_hours), {1e4, 1e12}, "most_window_hours", "h");
  }
}

bool may_be_cut(const Assessment& assessment) {
  return assessment.headline != Headline::hold && assessment.figures && assessment.figures->plan &&
         assessment.figures->cut.against.empty();
}

Assessment assess_in_weather(const Survey& survey, const AssessOptions& options,
                             const std::optional<HourlyYear>& weather, const Progress& progress) {
  validate(survey);
  options.validate();
  Assessment answer;
  answer.cautions = cautions_for(survey);
  answer.open_gates = open_gates(survey.settle_first);
  if (!answer.open_gates.empty()) {
    answer.headline = Headline::hold;
    answer.because = "Settle the safety questions first.";
    return answer;
  }
  const Setting setting = setting_for(survey);
  auto run = weighted_draw(setting, options, 1.0);
  run_all(setting, run.weighted);
  const auto steady = decide_steadily(setting, run.weighted);
  const auto year = year_of_hours(survey, options, weather, progress);
  const auto decision = decide_with_year(setting, run, steady, year);
  answer.headline = decision.verdict.headline;
  answer.because = decision.verdict.because;
  answer.after = decision.verdict.after;
  auto figures = figures_for(setting, run, decision);
  figures.seed = options.seed;
  if (year) {
    add_year(*year, decision.verdict, figures);
  }
  if (answer.headline != Headline::leave) {
    figures.plan = plan_for(survey, setting.window, figures.vent);
    figures.cut = cut_check(survey, figures.plan);
  } else {
    figures.cut.sun = sheet_in_sun(survey);
  }
  if (options.width_checks) {
    figures.width_checks = {check_width(setting, options, 0.5), check_width(setting, options, 2.0)};
  }
  figures.provisional = !(year && year->settled) || !looks_before_fitting(survey).empty() ||
                        guesses_decide(figures.width_checks, steady.verdict.headline);
  answer.figures = std::move(figures);
  return answer;
}

Assessment assess(const Survey& survey, AssessOptions options) {
  return assess_in_weather(survey, options, std::nullopt);
}

}  // namespace dewgap
