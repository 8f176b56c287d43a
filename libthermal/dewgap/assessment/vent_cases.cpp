#include "dewgap/assessment/vent_mornings_kernel.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

constexpr std::size_t most_growth = 16;

/// How far the sealed gap's coldest face is above its potential dew point in the coldest month's means: a key
/// to sort by, no result. Cases that do not settle go last.
double wetness_key_K(const Setting& setting, const UnknownValues& sample) {
  const auto state = solve_gap(gap_case_for(setting, sample, month_moment(setting, sample, 1.0),
                                            VentOption::sealed, CurtainState::open, TapeFault::none));
  return state.status == SolveStatus::converged ? state.margin_K : std::numeric_limits<double>::max();
}

/// Cases with weight, wettest first.
std::vector<std::size_t> order_of(const Setting& setting, const VentCases& cases) {
  const double least = 1e-4 / static_cast<double>(cases.weights.size());
  std::vector<std::size_t> order;
  std::vector<double> key(cases.weights.size(), 0.0);
  for (std::size_t i = 0; i < cases.weights.size(); ++i) {
    if (cases.weights[i] >= least) {
      order.push_back(i);
      key[i] = wetness_key_K(setting, cases.samples[i]);
    }
  }
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return key[a] < key[b]; });
  return order;
}

template <class Value>
void take_in_order(std::vector<Value>& values, const std::vector<std::size_t>& order) {
  if (values.empty()) {
    return;  // evidence that is not used has no likelihoods
  }
  std::vector<Value> taken;
  taken.reserve(order.size());
  for (const std::size_t i : order) {
    taken.push_back(values[i]);
  }
  values = std::move(taken);
}

void sort_cases(const Setting& setting, VentCases& cases) {
  const auto order = order_of(setting, cases);
  take_in_order(cases.samples, order);
  take_in_order(cases.weights, order);
  for (auto& term : cases.evidence) {
    take_in_order(term.log_likelihood, order);
  }
  const double sum = std::accumulate(cases.weights.begin(), cases.weights.end(), 0.0);
  for (double& weight : cases.weights) {
    weight /= sum;
  }
}

}  // namespace

VentCases draw_cases(const Setting& setting, const std::vector<WinterReading>& readings,
                     const VentAdviceOptions& options) {
  require_one_a_date(readings);
  VentCases cases;
  cases.beliefs = beliefs_for(setting);
  for (std::size_t growth = 1;; growth *= 4) {
    cases.drawn = growth * options.prior_samples;
    cases.samples = draw_samples(cases.beliefs, cases.drawn, options.seed, 1.0);
    cases.evidence = all_evidence(setting, cases.samples);
    auto winter = winter_evidence(setting, cases.samples, readings, options.fitted);
    std::move(winter.begin(), winter.end(), std::back_inserter(cases.evidence));
    cases.weights = weights_from(cases.evidence, cases.drawn);
    cases.effective = numerics::effective_sample_size(cases.weights);
    if (cases.effective >= least_effective_cases || growth >= most_growth) {
      break;
    }
  }
  if (cases.effective >= least_effective_cases) {
    sort_cases(setting, cases);
  }
  return cases;
}

UnknownValues middle_case(const VentCases& cases) {
  UnknownValues middle;
  std::vector<double> values(cases.samples.size());
  for (std::size_t j = 0; j < unknown_count; ++j) {
    std::transform(cases.samples.begin(), cases.samples.end(), values.begin(),
                   [j](const UnknownValues& sample) { return sample.value[j]; });
    middle.value[j] = numerics::weighted_quantile(values, cases.weights, 0.5);
  }
  return middle;
}

double excess_factor_of(const Setting& setting, const UnknownValues& sample, VentOption option) {
  const Moment winter = winter_moment(setting, sample);
  const auto gap =
      solve_gap(gap_case_for(setting, sample, winter, option, CurtainState::open, TapeFault::none));
  // A gap that does not settle is as good as closed for the draught of a whole room.
  const double through_m3_h = gap.status == SolveStatus::converged ? draught_through_gap_m3_h(gap) : 0.0;
  const double after_m3_h = through_m3_h + draught_past_the_sheet_m3_h(setting, sample, winter);
  const double background_m3_h = sample[Unknown::background_airflow];
  return (background_m3_h + draught_before_m3_h(setting, sample, winter)) / (background_m3_h + after_m3_h);
}

}  // namespace dewgap
