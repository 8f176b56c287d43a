#include "dewgap/assessment/steady_run_kernel.hpp"

#include <algorithm>

#include "dewgap/errors.hpp"
#include "dewgap/numerics/parallel.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

constexpr double least_effective_samples =
    48.0;  // below this the percentiles rest on too few cases: sample more
constexpr std::size_t most_growth = 64;

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

}  // namespace

SteadyRun weighted_draw(const Setting& setting, const AssessOptions& options, double convention_width) {
  SteadyRun run{.beliefs = beliefs_for(setting), .evidence = {}, .weighted = {}};
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

void run_all(const Setting& setting, WeightedRuns& runs) {
  drop_weightless(runs);
  WeightedRuns settled{
      .samples = {}, .figures = {}, .weights = {}, .frost_night_hours = runs.frost_night_hours};
  double kept = 0.0;
  SolveStatus failure = SolveStatus::converged;
  std::vector<SampleFigures> all(runs.samples.size());
  numerics::for_each_index(all.size(), [&](std::size_t i) { all[i] = run_sample(setting, runs.samples[i]); });
  for (std::size_t i = 0; i < runs.samples.size(); ++i) {
    const auto& figures = all[i];
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

}  // namespace dewgap
