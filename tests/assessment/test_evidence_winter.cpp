#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "assessment/survey_cases.hpp"
#include "dewgap/assessment/evidence_kernel.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap::test {
namespace {

using Mist = WinterReading::Mist;

struct Weighed {
  std::vector<UnknownValues> samples;
  std::vector<EvidenceTerm> terms;
  std::vector<double> weights;

  double mean(Unknown unknown) const {
    std::vector<double> values;
    for (const auto& sample : samples) {
      values.push_back(sample[unknown]);
    }
    return numerics::weighted_mean(values, weights);
  }
};

Weighed weigh(const Survey& survey, const std::vector<WinterReading>& readings,
              VentOption fitted = VentOption::sealed) {
  const auto setting = setting_for(survey);
  Weighed weighed;
  weighed.samples = draw_samples(beliefs_for(survey), 256, 1, 1.0);
  weighed.terms = winter_evidence(setting, weighed.samples, readings, fitted);
  weighed.weights = weights_from(weighed.terms, weighed.samples.size());
  return weighed;
}

WinterReading reading(Mist mist, double outdoor_C = -2.0) {
  return {.date = "3 December", .outdoor_C = outdoor_C, .mist = mist};
}

TEST(EvidenceWinter, MoreMistSpeaksForADamperRoom) {
  const auto survey = worn_sash_survey();
  const double none = weigh(survey, {reading(Mist::none)}).mean(Unknown::vapour_excess);
  const double all_over = weigh(survey, {reading(Mist::all_over)}).mean(Unknown::vapour_excess);
  const double runs = weigh(survey, {reading(Mist::runs)}).mean(Unknown::vapour_excess);
  EXPECT_LT(none, all_over);
  EXPECT_LT(all_over, runs);
}

TEST(EvidenceWinter, TheSameMistInMilderWeatherSpeaksForADamperRoom) {
  const auto survey = worn_sash_survey();
  EXPECT_LT(weigh(survey, {reading(Mist::all_over, -6.0)}).mean(Unknown::vapour_excess),
            weigh(survey, {reading(Mist::all_over, 4.0)}).mean(Unknown::vapour_excess));
}

TEST(EvidenceWinter, WithTheHumidityReadMistSpeaksOfTheWindow) {
  const auto survey = worn_sash_survey();
  auto misty = reading(Mist::all_over);
  misty.room_C = 18.0;
  misty.room_relative_humidity = 0.5;
  auto clear = misty;
  clear.mist = Mist::none;
  const auto wet = weigh(survey, {misty});
  const auto dry = weigh(survey, {clear});
  ASSERT_EQ(wet.terms.size(), 2u);
  EXPECT_EQ(wet.terms[0].speaks_of, Unknown::seal_leakage);
  EXPECT_EQ(wet.terms[1].speaks_of, Unknown::vapour_excess);
  // Room air that gets in wets the gap: a leakier seal, or a window that draws outwards.
  EXPECT_GT(wet.mean(Unknown::seal_leakage), dry.mean(Unknown::seal_leakage));
}

TEST(EvidenceWinter, AHygrometerMovesTheExcessItsWay) {
  const auto survey = worn_sash_survey();
  const auto at = [&](double humidity) {
    auto read = reading(Mist::edges);
    read.room_relative_humidity = humidity;
    return weigh(survey, {read}).mean(Unknown::vapour_excess);
  };
  EXPECT_LT(at(0.35), at(0.55));
  EXPECT_LT(at(0.55), at(0.75));
}

TEST(EvidenceWinter, ThreeReadingsNarrowMoreThanOne) {
  const auto survey = worn_sash_survey();
  const auto one = weigh(survey, {reading(Mist::edges)});
  const auto three =
      weigh(survey, {reading(Mist::edges), reading(Mist::edges, -5.0), reading(Mist::none, 3.0)});
  EXPECT_EQ(three.terms.size(), 3u);
  EXPECT_LT(numerics::effective_sample_size(three.weights), numerics::effective_sample_size(one.weights));
}

TEST(EvidenceWinter, WhatIsFittedCounts) {
  const auto survey = worn_sash_survey();
  EXPECT_NE(weigh(survey, {reading(Mist::all_over)}, VentOption::sealed).weights,
            weigh(survey, {reading(Mist::all_over)}, VentOption::breaks_bottom_and_top).weights);
}

TEST(EvidenceWinter, AnExpertsHumidityWinsOverTheHygrometer) {
  auto survey = worn_sash_survey();
  survey.expert.room_relative_humidity = 0.5;
  auto read = reading(Mist::none);
  read.room_relative_humidity = 0.7;
  const auto weighed = weigh(survey, {read});
  ASSERT_EQ(weighed.terms.size(), 2u);
  EXPECT_TRUE(weighed.terms[0].use.used);
  EXPECT_FALSE(weighed.terms[1].use.used);
  EXPECT_NE(weighed.terms[1].use.why_not.find("expert"), std::string::npos);
}

TEST(EvidenceWinter, BadReadingsThrow) {
  EXPECT_THROW(validate(reading(Mist::none, -41.0)), InvalidInput);
  EXPECT_THROW(validate(reading(Mist::none, std::numeric_limits<double>::quiet_NaN())), InvalidInput);
  auto humid = reading(Mist::none);
  humid.room_relative_humidity = 1.2;
  EXPECT_THROW(validate(humid), InvalidInput);
  auto hot = reading(Mist::none);
  hot.room_C = 60.0;
  EXPECT_THROW(validate(hot), InvalidInput);
}

}  // namespace
}  // namespace dewgap::test
