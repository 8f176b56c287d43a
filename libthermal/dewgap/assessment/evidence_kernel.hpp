// Observations as likelihoods that weight the samples. Internal to assessment/.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "dewgap/assessment/beliefs_kernel.hpp"
#include "dewgap/assessment/scenario_kernel.hpp"
#include "dewgap/assessment/vent_advice.hpp"

namespace dewgap {

/// A row of observations.csv.
struct Observation {
  std::string observation;
  std::string answer;
  std::string quantity;
  double p10 = 0.0;
  double p50 = 0.0;
  double p90 = 0.0;
  double strength = 1.0;
  std::string source;
};
/// Throws InvalidInput when the table has no such row.
const Observation& observation_of(std::string_view observation, std::string_view answer);

/// Logarithm of a split-normal likelihood, 0 at the middle, on the value itself or on its logarithm.
double log_likelihood(double value, const Observation& observation);
double log_likelihood_of_logarithm(double value, const Observation& observation);

/// An answer of words: which of the few that are possible.
struct WordAnswer {
  std::vector<Observation> possible;  ///< by rising middle
  std::size_t given = 0;
  const std::string& given_answer() const { return possible[given].answer; }
};
/// Throws InvalidInput when the table has no such answer.
WordAnswer word_answer(std::string_view observation, std::string_view given);

/// Logarithm of the probability that the given answer is given, at a value or on its logarithm: its
/// likelihood over the sum of those of all possible answers. The first answer says nothing against lower
/// values, the last nothing against higher ones.
double log_probability(double value, const WordAnswer& word);
double log_probability_of_logarithm(double value, const WordAnswer& word);
/// The same of log-likelihoods of all possible answers.
double log_probability(const std::vector<double>& log_likelihoods, std::size_t given);

/// One piece of evidence: log-likelihoods of every sample, and the unknown it speaks of first.
struct EvidenceTerm {
  EvidenceUse use;
  Unknown speaks_of{};
  /// An answer of words has a probability, a reading of a number a density, whose logarithm is 0 at its peak.
  enum class Likelihood { probability, density } kind = Likelihood::probability;
  std::vector<double> log_likelihood;
};

/// A term that counts, of an answer of words, still without its likelihoods.
EvidenceTerm evidence_of(Unknown unknown, std::string observation, std::string answer);

std::vector<EvidenceTerm> joint_evidence(const Survey& survey, const std::vector<UnknownValues>& samples);
std::vector<EvidenceTerm> tissue_evidence(const Setting& setting, const std::vector<UnknownValues>& samples);
std::vector<EvidenceTerm> humidity_evidence(const Setting& setting,
                                            const std::vector<UnknownValues>& samples);

/// Throws InvalidInput for a reading outside its ranges.
void validate(const WinterReading& reading);
/// A reading of a frosty night: one that may be used.
bool is_frosty(const WinterReading& reading);
/// What was read in the first winter, with `fitted` in place: mist on the gap's faces, and the room's
/// humidity where it was read. Readings of nights that were not frosty are not used.
std::vector<EvidenceTerm> winter_evidence(const Setting& setting, const std::vector<UnknownValues>& samples,
                                          const std::vector<WinterReading>& readings, VentOption fitted);

/// All evidence of a survey. Terms that may not be used carry the reason and change no weight.
std::vector<EvidenceTerm> all_evidence(const Setting& setting, const std::vector<UnknownValues>& samples);

/// Weights that sum to 1, and what each term did filled in: effective share, foretold share, whether it fits.
std::vector<double> weights_from(std::vector<EvidenceTerm>& terms, std::size_t sample_count);

/// One standard deviation of the mean of `count` hygrometer readings: the instrument's error is shared, the
/// weather's is not.
double hygrometer_sd(std::size_t count);
/// Relative humidity of outdoor air over water, mean of a winter day: our convention.
inline constexpr double winter_outdoor_humidity = 0.85;

/// Outdoor temperature at which the centre of the single pane begins to mist for a sample, C, within -45
/// to 25.
double misting_outdoor_C(const Setting& setting, const UnknownValues& sample);

}  // namespace dewgap
