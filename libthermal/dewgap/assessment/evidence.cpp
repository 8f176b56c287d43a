#include "dewgap/assessment/evidence_kernel.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "dewgap/errors.hpp"
#include "dewgap/numerics/csv_text.hpp"
#include "dewgap/numerics/sampling.hpp"
#include "embedded/room_assessment.hpp"

namespace dewgap {
namespace {

std::vector<Observation> read_observations() {
  const numerics::CsvTable table(embedded::observations_csv, "observations.csv");
  std::vector<Observation> rows;
  for (std::size_t i = 0; i < table.row_count(); ++i) {
    rows.push_back({.observation = table.text(i, "observation"),
                    .answer = table.text(i, "answer"),
                    .quantity = table.text(i, "quantity"),
                    .p10 = table.number(i, "p10"),
                    .p50 = table.number(i, "p50"),
                    .p90 = table.number(i, "p90"),
                    .strength = table.number(i, "strength"),
                    .source = table.text(i, "source")});
  }
  return rows;
}

double split_normal_log(double value, double p10, double p50, double p90, double strength) {
  const double side = value < p50 ? p50 - p10 : p90 - p50;
  const double z = (value - p50) / side * numerics::normal_p90;
  return -0.5 * strength * z * z;
}

void append(std::vector<EvidenceTerm>& to, std::vector<EvidenceTerm> from) {
  std::move(from.begin(), from.end(), std::back_inserter(to));
}

/// exp of log-likelihoods, scaled so that the largest is 1, normalised to sum 1.
std::vector<double> normalised_weights(const std::vector<double>& log_likelihood) {
  const double top = *std::max_element(log_likelihood.begin(), log_likelihood.end());
  std::vector<double> weights(log_likelihood.size());
  std::transform(log_likelihood.begin(), log_likelihood.end(), weights.begin(),
                 [top](double log_value) { return std::exp(log_value - top); });
  const double sum = std::accumulate(weights.begin(), weights.end(), 0.0);
  for (double& weight : weights) {
    weight /= sum;
  }
  return weights;
}

/// Weighted mean: of an answer of words its probability, of a reading the likelihood over that of the best
/// case.
double mean_likelihood(const EvidenceTerm& term, const std::vector<double>& weights) {
  double mean = 0.0;
  for (std::size_t i = 0; i < weights.size(); ++i) {
    mean += weights[i] * std::exp(term.log_likelihood[i]);
  }
  return mean;
}

/// An observation fits when what all the evidence makes plausible gives it at least that: our convention.
constexpr double least_fit = 0.02;

const std::vector<Observation>& all_observations() {
  static const std::vector<Observation> rows = read_observations();
  return rows;
}

/// The end answers are open: no further answer could have been given.
double compatible_value(double value, const WordAnswer& word, std::size_t answer) {
  const double middle = word.possible[answer].p50;
  const double from_below = answer == 0 ? std::max(value, middle) : value;
  return answer + 1 == word.possible.size() ? std::min(from_below, middle) : from_below;
}

template <class LogLikelihood>
double log_probability_by(double value, const WordAnswer& word, LogLikelihood log_likelihood_at) {
  std::vector<double> all;
  all.reserve(word.possible.size());
  for (std::size_t k = 0; k < word.possible.size(); ++k) {
    all.push_back(log_likelihood_at(compatible_value(value, word, k), word.possible[k]));
  }
  return log_probability(all, word.given);
}

}  // namespace

const Observation& observation_of(std::string_view observation, std::string_view answer) {
  const auto& rows = all_observations();
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const Observation& row) {
    return row.observation == observation && row.answer == answer;
  });
  if (found == rows.end()) {
    throw InvalidInput("observations.csv",
                       "no row for " + std::string(observation) + " = " + std::string(answer));
  }
  return *found;
}

WordAnswer word_answer(std::string_view observation, std::string_view given) {
  WordAnswer word;
  std::copy_if(all_observations().begin(), all_observations().end(), std::back_inserter(word.possible),
               [&](const Observation& row) { return row.observation == observation; });
  std::sort(word.possible.begin(), word.possible.end(),
            [](const Observation& a, const Observation& b) { return a.p50 < b.p50; });
  const auto& own = observation_of(observation, given);
  const auto found = std::find_if(word.possible.begin(), word.possible.end(),
                                  [&](const Observation& row) { return row.answer == own.answer; });
  word.given = static_cast<std::size_t>(found - word.possible.begin());
  return word;
}

EvidenceTerm evidence_of(Unknown unknown, std::string observation, std::string answer) {
  EvidenceTerm term;
  term.use.observation = std::move(observation);
  term.use.answer = std::move(answer);
  term.use.used = true;
  term.speaks_of = unknown;
  return term;
}

double log_likelihood(double value, const Observation& o) {
  return split_normal_log(value, o.p10, o.p50, o.p90, o.strength);
}

double log_likelihood_of_logarithm(double value, const Observation& o) {
  return split_normal_log(std::log(value), std::log(o.p10), std::log(o.p50), std::log(o.p90), o.strength);
}

double log_probability(const std::vector<double>& log_likelihoods, std::size_t given) {
  const double top = *std::max_element(log_likelihoods.begin(), log_likelihoods.end());
  const double sum =
      std::accumulate(log_likelihoods.begin(), log_likelihoods.end(), 0.0,
                      [top](double so_far, double log_value) { return so_far + std::exp(log_value - top); });
  return log_likelihoods.at(given) - top - std::log(sum);
}

double log_probability(double value, const WordAnswer& word) {
  return log_probability_by(value, word, log_likelihood);
}

double log_probability_of_logarithm(double value, const WordAnswer& word) {
  return log_probability_by(value, word, log_likelihood_of_logarithm);
}

std::vector<EvidenceTerm> all_evidence(const Setting& setting, const std::vector<UnknownValues>& samples) {
  std::vector<EvidenceTerm> terms = joint_evidence(*setting.survey, samples);
  append(terms, tissue_evidence(setting, samples));
  append(terms, humidity_evidence(setting, samples));
  return terms;
}

std::vector<double> weights_from(std::vector<EvidenceTerm>& terms, std::size_t sample_count) {
  std::vector<double> total(sample_count, 0.0);
  for (auto& term : terms) {
    if (!term.use.used) {
      continue;
    }
    if (term.kind == EvidenceTerm::Likelihood::probability) {
      term.use.foretold_share = mean_likelihood(term, normalised_weights(total));
    }
    const auto alone = normalised_weights(term.log_likelihood);
    term.use.effective_share = numerics::effective_sample_size(alone) / static_cast<double>(sample_count);
    std::transform(total.begin(), total.end(), term.log_likelihood.begin(), total.begin(), std::plus<>());
  }
  auto weights = normalised_weights(total);
  for (auto& term : terms) {
    term.use.fits_the_rest = !term.use.used || mean_likelihood(term, weights) >= least_fit;
  }
  return weights;
}

}  // namespace dewgap
