#include "dewgap/assessment/assess.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/assessment/cautions_kernel.hpp"
#include "dewgap/assessment/setting_out_kernel.hpp"
#include "dewgap/assessment/verdict_kernel.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

constexpr double least_effective_samples =
    48.0;  // below this the percentiles rest on too few cases: sample more
constexpr std::size_t most_growth = 64;

struct Run {
  Beliefs beliefs;
  std::vector<EvidenceTerm> evidence;
  WeightedRuns weighted;
};

/// Draws samples, weights them by the evidence, and grows their number when the evidence leaves too few.
Run sample_and_run(const Setting& setting, const AssessOptions& options, double convention_width) {
  Run run{.beliefs = beliefs_for(*setting.survey), .evidence = {}, .weighted = {}};
  for (std::size_t count = options.samples;; count *= 4) {
    run.weighted.samples = draw_samples(run.beliefs, count, options.seed, convention_width);
    run.evidence = all_evidence(setting, run.weighted.samples);
    run.weighted.weights = weights_from(run.evidence, count);
    const bool enough = numerics::effective_sample_size(run.weighted.weights) >=
                        std::min(least_effective_samples, 0.25 * static_cast<double>(options.samples));
    if (enough || count >= most_growth * options.samples) {
      break;
    }
  }
  run.weighted.frost_night_hours = options.frost_night_hours;
  return run;
}

/// Samples that the evidence rules out carry no weight worth a run: dropped, the rest keep their proportions.
void drop_weightless(WeightedRuns& runs) {
  const double least = 1e-4 / static_cast<double>(runs.weights.size());
  WeightedRuns kept;
  double sum = 0.0;
  for (std::size_t i = 0; i < runs.weights.size(); ++i) {
    if (runs.weights[i] >= least) {
      kept.samples.push_back(runs.samples[i]);
      kept.weights.push_back(runs.weights[i]);
      sum += runs.weights[i];
    }
  }
  for (double& weight : kept.weights) {
    weight /= sum;
  }
  kept.frost_night_hours = runs.frost_night_hours;
  runs = std::move(kept);
}

constexpr double most_left_out_share = 0.02;  // of the weight; more is no answer

/// Runs every sample. Those that do not settle are left out and counted, while they are few.
void run_all(const Setting& setting, WeightedRuns& runs) {
  drop_weightless(runs);
  WeightedRuns settled{
      .samples = {}, .figures = {}, .weights = {}, .frost_night_hours = runs.frost_night_hours};
  double kept = 0.0;
  SolveStatus failure = SolveStatus::converged;
  for (std::size_t i = 0; i < runs.samples.size(); ++i) {
    const auto figures = run_sample(setting, runs.samples[i]);
    if (figures.status != SolveStatus::converged) {
      failure = figures.status;
      continue;
    }
    settled.samples.push_back(runs.samples[i]);
    settled.figures.push_back(figures);
    settled.weights.push_back(runs.weights[i]);
    kept += runs.weights[i];
  }
  if (kept < 1.0 - most_left_out_share) {
    throw CalculationFailed(explain(failure));
  }
  for (double& weight : settled.weights) {
    weight /= kept;
  }
  settled.left_out = runs.samples.size() - settled.samples.size();
  runs = std::move(settled);
}

std::optional<MoneySpread> money_of(const Survey& survey, const WeightedRuns& runs, VentOption vent) {
  return survey.money ? std::optional(money_spread(runs, vent, survey)) : std::nullopt;
}

std::string place_line(const Setting& setting) {
  const auto& place = setting.survey->place;
  std::string line = setting.place.name;
  line += place.distance_km ? ", " + whole(*place.distance_km) + " km away" : ", distance not given";
  if (place.elevation_m) {
    const double rise = *place.elevation_m - find_place(place.nearest)->elevation_m;
    line += ", " + whole(std::abs(rise)) + (rise >= 0.0 ? " m higher" : " m lower");
  }
  return line;
}

double guess_weight(const Influence& influence) {
  return std::max(influence.on_saving, influence.on_dryness);
}

/// At most three one-minute looks: observations that do not fit the rest, then what settles most.
std::vector<std::string> looks_to_settle(const std::vector<Influence>& influences,
                                         const std::vector<EvidenceTerm>& evidence) {
  constexpr std::size_t most = 3;
  constexpr double least_weight = 0.03;
  std::vector<std::string> looks;
  for (const auto& term : evidence) {
    if (term.use.used && !term.use.fits_the_rest && looks.size() < most) {
      looks.push_back("Look again, it does not fit the rest: " + term.use.observation);
    }
  }
  for (const auto& influence : influences) {
    const bool useful =
        influence.guessed && influence.settle_by != "-" && guess_weight(influence) >= least_weight;
    const bool is_new = std::find(looks.begin(), looks.end(), influence.settle_by) == looks.end();
    if (useful && is_new && looks.size() < most) {
      looks.push_back(influence.settle_by);
    }
  }
  return looks;
}

std::vector<std::string> guessed_labels(const std::vector<Influence>& influences) {
  std::vector<std::string> labels;
  for (const auto& influence : influences) {
    if (influence.guessed && std::find(labels.begin(), labels.end(), influence.label) == labels.end()) {
      labels.push_back(influence.label);
    }
  }
  return labels;
}

std::vector<ResolvedInput> inputs_of(const Setting& setting, const Beliefs& beliefs) {
  auto inputs = setting.window.inputs;
  for (std::size_t j = 0; j < unknown_count; ++j) {
    const auto& belief = beliefs[j];
    inputs.push_back({.key = std::string(key_of(static_cast<Unknown>(j))),
                      .value = belief.fixed.value_or(belief.prior.p50),
                      .unit = belief.prior.unit,
                      .basis = belief.basis,
                      .source = belief.fixed ? "expert" : belief.prior.source});
  }
  return inputs;
}

ValidityFlags flags_of(const WeightedRuns& runs) {
  ValidityFlags flags;
  for (const auto& figures : runs.figures) {
    flags.raise(figures.flags);
  }
  return flags;
}

WidthCheck check_width(const Setting& setting, const AssessOptions& options, double width) {
  auto run = sample_and_run(setting, options, width);
  run_all(setting, run.weighted);
  const auto outcomes = vent_outcomes(run.weighted);
  const auto money = money_of(*setting.survey, run.weighted, choose_vent(outcomes));
  const auto verdict = decide(setting, run.weighted, outcomes, money);
  return {.width = width,
          .headline = verdict.headline,
          .option = verdict.vent,
          .acceptable_share = outcomes[index_of(verdict.vent)].acceptable_share};
}

/// Share of plausible cases that agree with the headline, by what it rests on.
double agree_share(const Setting& setting, const WeightedRuns& runs, const Verdict& verdict,
                   const VentOutcome& chosen) {
  switch (verdict.cause) {
    case LeaveCause::none:
      return chosen.acceptable_share;
    case LeaveCause::runs_wet:
      return 1.0 - chosen.acceptable_share;
    case LeaveCause::saves_nothing:
      return losing_share(runs, verdict.vent, *setting.survey);
    case LeaveCause::never_pays:
      return money_spread(runs, verdict.vent, *setting.survey).never_pays_back_share;
  }
  return chosen.acceptable_share;
}

Assessment::Figures figures_for(const Setting& setting, Run& run, const Verdict& verdict,
                                const std::vector<VentOutcome>& outcomes,
                                const std::optional<MoneySpread>& money) {
  const auto& runs = run.weighted;
  Assessment::Figures figures;
  figures.vent = verdict.vent;
  figures.vents = outcomes;
  const auto& chosen = outcomes[index_of(verdict.vent)];
  figures.vent_reason = vent_reason(chosen);
  figures.agree_share = agree_share(setting, runs, verdict, chosen);
  figures.lifted_tape_acceptable_share = share_over(
      runs, [&](const SampleFigures& f) { return is_acceptable(f.lifted, runs.frost_night_hours); });
  figures.now_and_with = side_by_side(setting, runs, verdict.vent);
  figures.flip = flip_sentence(verdict, figures.now_and_with);
  figures.money = money;
  figures.influences = influences_of(run.beliefs, run.evidence, runs, verdict.vent);
  figures.settle_first = looks_to_settle(figures.influences, run.evidence);
  figures.guessed = guessed_labels(figures.influences);
  for (const auto& term : run.evidence) {
    figures.evidence.push_back(term.use);
  }
  figures.inputs = inputs_of(setting, run.beliefs);
  figures.remedies = verdict.remedies;
  figures.flags = flags_of(runs);
  figures.samples = runs.samples.size();
  figures.samples_left_out = runs.left_out;
  figures.effective_samples = numerics::effective_sample_size(runs.weights);
  figures.coldest_month_C = setting.month.outdoor_temperature_C;
  figures.frost_night_C = setting.frost.outdoor_temperature_C;
  figures.place_line = place_line(setting);
  return figures;
}

}  // namespace

void AssessOptions::validate() const {
  require_in_range(static_cast<double>(samples), {16.0, 1e6}, "samples", "");
  require_in_range(frost_night_hours, {1.0, 24.0}, "frost_night_hours", "h");
}

Assessment assess(const Survey& survey, AssessOptions options) {
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
  auto run = sample_and_run(setting, options, 1.0);
  run_all(setting, run.weighted);
  const auto outcomes = vent_outcomes(run.weighted);
  const auto money = money_of(survey, run.weighted, choose_vent(outcomes));
  const auto verdict = decide(setting, run.weighted, outcomes, money);
  answer.headline = verdict.headline;
  answer.because = verdict.because;
  answer.after = verdict.after;
  answer.figures = figures_for(setting, run, verdict, outcomes, money);
  answer.figures->seed = options.seed;
  if (answer.headline != Headline::leave) {
    answer.figures->plan = plan_for(survey, setting.window);
  }
  if (options.width_checks) {
    answer.figures->width_checks = {check_width(setting, options, 0.5), check_width(setting, options, 2.0)};
  }
  return answer;
}

}  // namespace dewgap
