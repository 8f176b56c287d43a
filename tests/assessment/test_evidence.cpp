// Answers of words as probabilities, open ends, and what was foretold.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "assessment/survey_cases.hpp"
#include "dewgap/assessment/evidence_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap::test {
namespace {

struct Asked {
  const char* observation;
  double (*log_probability)(double, const WordAnswer&);
  double first;  ///< of the values that are tried
  double step;
  std::size_t answers;
};

double on_the_value(double value, const WordAnswer& word) {
  return log_probability(value, word);
}

/// The value is exp of it.
double on_the_logarithm(double log_value, const WordAnswer& word) {
  return log_probability_of_logarithm(std::exp(log_value), word);
}

const std::vector<Asked>& all_asked() {
  static const std::vector<Asked> asked{
      {"rattles", on_the_logarithm, -8.0, 0.1, 2},       {"daylight", on_the_logarithm, -8.0, 0.1, 2},
      {"curtain_moves", on_the_logarithm, -8.0, 0.1, 2}, {"paper", on_the_logarithm, -8.0, 0.1, 3},
      {"washing_dried", on_the_logarithm, 0.0, 0.1, 2},  {"centre_mists", on_the_value, -45.0, 0.7, 5},
      {"water_on_sill", on_the_value, -45.0, 0.7, 2}};
  return asked;
}

std::vector<WordAnswer> each_answer_to(const char* observation) {
  const auto any = [&] {
    for (const char* answer : {"yes", "drags", "never"}) {
      try {
        return word_answer(observation, answer);
      } catch (const InvalidInput&) {
        continue;
      }
    }
    return WordAnswer{};
  }();
  std::vector<WordAnswer> words;
  for (const auto& row : any.possible) {
    words.push_back(word_answer(observation, row.answer));
  }
  return words;
}

TEST(Evidence, ProbabilitiesOfAllAnswersHaveSumOne) {
  for (const auto& asked : all_asked()) {
    const auto words = each_answer_to(asked.observation);
    ASSERT_EQ(words.size(), asked.answers) << asked.observation;
    for (int k = 0; k < 100; ++k) {
      double sum = 0.0;
      for (const auto& word : words) {
        sum += std::exp(asked.log_probability(asked.first + asked.step * k, word));
      }
      EXPECT_NEAR(sum, 1.0, 1e-12) << asked.observation;
    }
  }
}

TEST(Evidence, TheFarAnswersGetTheLikelierTheFurtherOut) {
  for (const auto& asked : all_asked()) {
    const auto words = each_answer_to(asked.observation);
    for (int k = 0; k < 99; ++k) {
      const double here = asked.first + asked.step * k;
      const double beyond = here + asked.step;
      EXPECT_GE(asked.log_probability(beyond, words.back()) + 1e-12,
                asked.log_probability(here, words.back()))
          << asked.observation << " at " << here;
      EXPECT_LE(asked.log_probability(beyond, words.front()),
                asked.log_probability(here, words.front()) + 1e-12)
          << asked.observation << " at " << here;
    }
  }
}

TEST(Evidence, OfTwoAnswersTheRatioOfLikelihoodsIsKept) {
  const auto yes = word_answer("rattles", "yes");
  const auto no = word_answer("rattles", "no");
  for (const double leakage : {0.3, 0.5, 0.8}) {  // between the middles
    EXPECT_NEAR(log_probability_of_logarithm(leakage, yes) - log_probability_of_logarithm(leakage, no),
                log_likelihood_of_logarithm(leakage, observation_of("rattles", "yes")) -
                    log_likelihood_of_logarithm(leakage, observation_of("rattles", "no")),
                1e-12);
  }
  EXPECT_THROW(word_answer("rattles", "perhaps"), InvalidInput);
}

TEST(Evidence, EveryWayOfTheTissueHasItsShare) {
  auto survey = worn_sash_survey();
  survey.tissue.colder_outside_K = 15.0;
  const auto samples = draw_samples(beliefs_for(survey), 64, 1, 1.0);
  std::vector<double> sum(samples.size(), 0.0);
  for (const auto way : {TissueWay::in, TissueWay::out, TissueWay::hangs, TissueWay::both_ways}) {
    survey.tissue.top = way;
    const auto terms = all_evidence(setting_for(survey), samples);
    ASSERT_EQ(terms.size(), 1u);
    for (std::size_t i = 0; i < sum.size(); ++i) {
      sum[i] += std::exp(terms.front().log_likelihood[i]);
    }
  }
  for (const double one : sum) {
    EXPECT_NEAR(one, 1.0, 1e-12);
  }
}

std::vector<double> feelers_say(Feeler feeler, const std::vector<double>& leakages_m3_h_m) {
  auto survey = worn_sash_survey();
  survey.joints.feelers.assign(8, feeler);
  std::vector<UnknownValues> samples(leakages_m3_h_m.size());
  for (std::size_t i = 0; i < samples.size(); ++i) {
    samples[i][Unknown::joint_leakage] = leakages_m3_h_m[i];
  }
  return joint_evidence(survey, samples).at(0).log_likelihood;
}

TEST(Evidence, NoFeelerSpeaksAgainstWhatIsBeyondItsEnd) {
  const auto nothing = feelers_say(Feeler::nothing, {0.0005, 0.005, 0.1, 1.0});
  EXPECT_EQ(nothing[0], 0.0);
  EXPECT_EQ(nothing[1], 0.0);
  EXPECT_LT(nothing[2], -1.0);
  EXPECT_LT(nothing[3], nothing[2]);
  const auto coin = feelers_say(Feeler::coin, {0.01, 0.3, 50.0, 500.0});
  EXPECT_LT(coin[0], coin[1]);
  EXPECT_LT(coin[1], -1.0);
  EXPECT_EQ(coin[2], 0.0);
  EXPECT_EQ(coin[3], 0.0);
  const auto paper = feelers_say(Feeler::paper, {0.0005, 50.0});
  EXPECT_LT(paper[0], -1.0);
  EXPECT_LT(paper[1], -1.0);
}

EvidenceTerm invented(const char* answer, const std::vector<double>& probabilities) {
  auto term = evidence_of(Unknown::joint_leakage, "invented", answer);
  for (const double one : probabilities) {
    term.log_likelihood.push_back(std::log(one));
  }
  return term;
}

TEST(Evidence, AnAnswerIsForetoldByWhatIsListedBeforeIt) {
  std::vector<EvidenceTerm> terms{invented("first", {0.2, 0.6}), invented("unused", {0.1, 0.9}),
                                  invented("second", {0.5, 0.1}), invented("reading", {1.0, 0.5}),
                                  invented("last", {0.3, 0.8})};
  terms[1].use.used = false;
  terms[3].kind = EvidenceTerm::Likelihood::density;
  const auto weights = weights_from(terms, 2);
  EXPECT_NEAR(terms[0].use.foretold_share.value(), 0.4, 1e-12);  // both count the same
  EXPECT_FALSE(terms[1].use.foretold_share);                     // counts for nothing
  EXPECT_NEAR(terms[2].use.foretold_share.value(), 0.2, 1e-12);  // weights 1/4, 3/4
  EXPECT_FALSE(terms[3].use.foretold_share);                     // of a number
  EXPECT_NEAR(terms[4].use.foretold_share.value(), (0.1 * 0.3 + 0.03 * 0.8) / 0.13, 1e-12);
  EXPECT_NEAR(weights[0] / weights[1], 0.2 * 0.5 * 1.0 * 0.3 / (0.6 * 0.1 * 0.5 * 0.8), 1e-12);
}

/// How six hygrometer readings of one humidity and a word about the pane's mist go together.
std::vector<EvidenceTerm> weighed_together(double humidity, CentreMists mists) {
  auto survey = worn_sash_survey();
  survey.room.hygrometer.assign(6, {.room_C = 18.0, .relative_humidity = humidity, .outdoor_C = 2.0});
  survey.room.centre_mists = mists;
  const auto samples = draw_samples(beliefs_for(survey), 512, 1, 1.0);
  auto terms = all_evidence(setting_for(survey), samples);
  weights_from(terms, samples.size());
  return terms;
}

TEST(Evidence, WhatContradictsDoesNotFit) {
  const auto all_fit = [](const std::vector<EvidenceTerm>& terms) {
    return std::all_of(terms.begin(), terms.end(),
                       [](const EvidenceTerm& term) { return term.use.fits_the_rest; });
  };
  EXPECT_TRUE(all_fit(weighed_together(0.60, CentreMists::frosty_mornings)));
  EXPECT_FALSE(all_fit(weighed_together(0.30, CentreMists::mild_nights)));
  EXPECT_FALSE(all_fit(weighed_together(0.90, CentreMists::never)));
}

}  // namespace
}  // namespace dewgap::test
