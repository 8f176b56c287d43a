#include <algorithm>
#include <cmath>

#include "dewgap/assessment/vent_words_kernel.hpp"
#include "dewgap/assessment/verdict_kernel.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

constexpr double chance_quantile = 3.0902;  // of the normal law, two-sided two in a thousand
constexpr double chance_moves = 2.0;        // sampling errors of a share within which a move is chance

/// Squared rank correlation of n unrelated cases that is passed twice in a thousand times: z^2 / (n - 1), the
/// large-sample law of Spearman's coefficient.
double chance_level(const std::vector<double>& counts) {
  return chance_quantile * chance_quantile / std::max(1.0, numerics::effective_sample_size(counts) - 1.0);
}

double squared_rank(const std::vector<double>& x, const std::vector<double>& y,
                    const std::vector<double>& weights) {
  const double rho = numerics::weighted_rank_correlation(x, y, weights);
  return rho * rho;
}

bool is_spoken_of(Unknown unknown, const std::vector<EvidenceTerm>& evidence) {
  return std::any_of(evidence.begin(), evidence.end(), [unknown](const EvidenceTerm& term) {
    return term.use.used && term.speaks_of == unknown;
  });
}

/// Weights of the runs as if an observation had not been made: each divided by its likelihood.
std::vector<double> weights_without(const EvidenceTerm& term, const VentRuns& runs) {
  double lowest = 0.0;
  for (const std::size_t i : runs.cases) {
    lowest = std::min(lowest, term.log_likelihood[i]);
  }
  std::vector<double> weights;
  for (std::size_t k = 0; k < runs.cases.size(); ++k) {
    weights.push_back(runs.counts[k] * std::exp(lowest - term.log_likelihood[runs.cases[k]]));
  }
  return weights;
}

/// Standard error of a share seen in so many cases; Jeffreys' middle keeps it from being none at 0 and 1.
double sampling_error(double share, double cases) {
  const double middle = (share * cases + 0.5) / (cases + 1.0);
  return std::sqrt(middle * (1.0 - middle) / cases);
}

/// Internal words as people write them: "frosty mornings".
std::string in_words(std::string answer) {
  std::replace(answer.begin(), answer.end(), '_', ' ');
  return answer;
}

}  // namespace

std::vector<Decider> deciders_of(const VentCases& cases, const VentRuns& runs, VentOption choice) {
  std::vector<double> hours_wet;
  std::vector<double> band;
  for (const auto& sample_year : runs.years) {
    hours_wet.push_back(static_cast<double>(year_of(sample_year, choice).hours_wet));
    band.push_back(static_cast<double>(year_of(sample_year, choice).band));
  }
  std::vector<Decider> deciders;
  for (std::size_t j = 0; j < unknown_count; ++j) {
    std::vector<double> values;
    for (const std::size_t i : runs.cases) {
      values.push_back(cases.samples[i].value[j]);
    }
    const auto& belief = cases.beliefs[j];
    const bool looked_at = is_spoken_of(static_cast<Unknown>(j), cases.evidence) ||
                           belief.basis == Basis::measured || belief.basis == Basis::described;
    deciders.push_back({.unknown = static_cast<Unknown>(j),
                        .label = belief.prior.label,
                        .settle_by = belief.prior.settle_by,
                        .rank_measure = std::max(squared_rank(values, hours_wet, runs.counts),
                                                 squared_rank(values, band, runs.counts)),
                        .guessed = !looked_at});
  }
  const double chance = chance_level(runs.counts);
  std::erase_if(deciders, [chance](const Decider& decider) { return !(decider.rank_measure > chance); });
  std::stable_sort(deciders.begin(), deciders.end(),
                   [](const Decider& a, const Decider& b) { return a.rank_measure > b.rank_measure; });
  return deciders;
}

std::string moved_most(const VentCases& cases, const VentRuns& runs, const std::vector<VentOption>& options,
                       const VentChoice& choice) {
  const double now_error =
      sampling_error(std::min(1.0, choice.share()), numerics::effective_sample_size(runs.counts));
  double largest = 0.0;
  bool was_used = false;
  std::string moved;
  std::string unsaid;
  for (const auto& term : cases.evidence) {
    if (!term.use.used) {
      continue;
    }
    const std::string seen = "'" + term.use.observation + ": " + in_words(term.use.answer) + "'";
    was_used = true;
    const auto weights = weights_without(term, runs);
    const double effective = numerics::effective_sample_size(weights);
    if (effective < least_reweighted_cases) {
      unsaid = "What " + seen + " did cannot be told: without it these runs count as " + whole(effective) +
               " cases only.";
      continue;
    }
    const double without = choose(runs.years, weights, options).acceptable_share[choice.place];
    const double error = std::max(now_error, sampling_error(std::min(1.0, without), effective));
    if (std::abs(without - choice.share()) > std::max(largest, chance_moves * error)) {
      largest = std::abs(without - choice.share());
      moved = "Without " + seen + " the gap would be acceptable in " + share_of_cases(without) +
              ", with it in " + percent(choice.share()) + ".";
    }
  }
  if (was_used && moved.empty() && unsaid.empty()) {
    return "No look moved it by more than chance.";
  }
  return moved.empty() || unsaid.empty() ? moved + unsaid : moved + " " + unsaid;
}

}  // namespace dewgap
