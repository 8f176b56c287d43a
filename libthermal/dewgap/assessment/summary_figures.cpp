#include "dewgap/assessment/summary_figures_kernel.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/assessment/edge_of_window_kernel.hpp"
#include "dewgap/assessment/saving_samples_kernel.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

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

constexpr std::size_t most_looks = 3;

double guess_weight(const Influence& influence) {
  return std::max(influence.on_saving, influence.on_dryness);
}

/// At most three one-minute looks: observations that do not fit the rest, then what could want mending first
/// (always), then what settles most.
std::vector<std::string> looks_to_settle(const Survey& survey, const std::vector<Influence>& influences,
                                         const std::vector<EvidenceTerm>& evidence) {
  constexpr double least_weight = 0.03;
  const auto before_fitting = looks_before_fitting(survey);
  std::vector<std::string> looks;
  for (const auto& term : evidence) {
    if (term.use.used && !term.use.fits_the_rest && looks.size() + before_fitting.size() < most_looks) {
      looks.push_back("Look again, it does not fit the rest: " + term.use.observation);
    }
  }
  looks.insert(looks.end(), before_fitting.begin(), before_fitting.end());
  for (const auto& influence : influences) {
    const bool useful =
        influence.guessed && influence.settle_by != "-" && guess_weight(influence) >= least_weight;
    const bool is_new = std::find(looks.begin(), looks.end(), influence.settle_by) == looks.end();
    if (useful && is_new && looks.size() < most_looks) {
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

}  // namespace

Assessment::Figures figures_for(const Setting& setting, const SteadyRun& run, const Decision& decision) {
  const auto& runs = run.weighted;
  const auto& verdict = decision.verdict;
  Assessment::Figures figures;
  figures.vent = verdict.vent;
  figures.vents = decision.outcomes;
  const auto& chosen = decision.outcomes[index_of(verdict.vent)];
  figures.vent_reason = vent_reason(chosen);
  figures.agree_share = agree_share(setting, runs, verdict, chosen);
  figures.lifted_tape_acceptable_share = share_over(
      runs, [&](const SampleFigures& f) { return is_acceptable(f.lifted, runs.frost_night_hours); });
  figures.now_and_with = side_by_side(setting, runs, verdict.vent);
  figures.edge = edge_answer(setting, runs, verdict.vent);
  figures.flip = flip_sentence(verdict, figures.now_and_with);
  figures.money = decision.money;
  figures.influences = influences_of(run.beliefs, run.evidence, runs, verdict.vent);
  figures.settle_first = looks_to_settle(*setting.survey, figures.influences, run.evidence);
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
  figures.saving_samples = saving_samples_of(runs, verdict.vent, *setting.survey);
  return figures;
}

void add_year(const VentAdvice& year, const Verdict& verdict, Assessment::Figures& figures) {
  figures.year = year;
  if (year.options.empty()) {
    return;
  }
  figures.vent_reason = vent_reason(year);
  figures.lifted_tape_acceptable_share = year.lifted_tape_acceptable_share;
  const double share = chosen_option(year).acceptable_share;
  if (verdict.cause == LeaveCause::none || verdict.cause == LeaveCause::runs_wet) {
    figures.agree_share = verdict.cause == LeaveCause::none ? share : 1.0 - share;
    figures.flip = year.flip;
  }
  auto& looks = figures.settle_first;
  std::erase(looks, year.next_look);
  if (!year.next_look.empty()) {
    looks.insert(looks.begin(), year.next_look);
    looks.resize(std::min(looks.size(), most_looks));
  }
}

}  // namespace dewgap
