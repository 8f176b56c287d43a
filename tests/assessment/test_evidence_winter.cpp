#include <gtest/gtest.h>

#include <algorithm>
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
            weigh(survey, {reading(Mist::all_over, 2.0)}).mean(Unknown::vapour_excess));
}

TEST(EvidenceWinter, WithTheHumidityReadMistIsWeighedInEachCasesOwnRoom) {
  const auto survey = worn_sash_survey();
  auto misty = reading(Mist::all_over);
  misty.room_C = 18.0;
  auto read = misty;
  read.room_relative_humidity = 0.5;
  auto clear = read;
  clear.mist = Mist::none;
  const auto unread = weigh(survey, {misty});
  const auto wet = weigh(survey, {read});
  const auto dry = weigh(survey, {clear});
  ASSERT_EQ(wet.terms.size(), 2u);
  EXPECT_EQ(wet.terms[0].speaks_of, Unknown::vapour_excess);
  EXPECT_EQ(wet.terms[1].speaks_of, Unknown::vapour_excess);
  // A reading has an error: what the mist says does not hang on it.
  EXPECT_EQ(wet.terms[0].log_likelihood, unread.terms[0].log_likelihood);
  // Room air that gets in wets the gap: a leakier seal, or a window that draws outwards.
  EXPECT_GT(wet.mean(Unknown::seal_leakage), dry.mean(Unknown::seal_leakage));
}

TEST(EvidenceWinter, WhatMayBeSeenHasProbabilitiesOfSumOne) {
  const auto survey = worn_sash_survey();
  for (const double outdoor_C : {-10.0, -2.0, 3.0}) {
    std::vector<double> sum(256, 0.0);
    double foretold = 0.0;
    for (const auto mist : {Mist::none, Mist::edges, Mist::lower_third, Mist::all_over, Mist::runs}) {
      const auto weighed = weigh(survey, {reading(mist, outdoor_C)});
      const auto& log_probability = weighed.terms.front().log_likelihood;
      std::transform(sum.begin(), sum.end(), log_probability.begin(), sum.begin(),
                     [](double so_far, double log_value) { return so_far + std::exp(log_value); });
      foretold += weighed.terms.front().use.foretold_share.value();
    }
    for (const double one : sum) {
      EXPECT_NEAR(one, 1.0, 1e-12);
    }
    EXPECT_NEAR(foretold, 1.0, 1e-12);
  }
}

TEST(EvidenceWinter, AMildNightIsRecordedAndNotUsed) {
  const auto survey = worn_sash_survey();
  auto mild = reading(Mist::runs, std::nextafter(frosty_below_C, 4.0));
  mild.room_relative_humidity = 0.7;
  const auto weighed = weigh(survey, {mild});
  ASSERT_EQ(weighed.terms.size(), 2u);
  for (const auto& term : weighed.terms) {
    EXPECT_FALSE(term.use.used);
    EXPECT_TRUE(term.use.why_not.starts_with("not a frosty night: ")) << term.use.why_not;
    EXPECT_FALSE(term.use.foretold_share);
    EXPECT_TRUE(term.use.fits_the_rest);
  }
  EXPECT_NEAR(numerics::effective_sample_size(weighed.weights), 256.0, 1e-6);
  EXPECT_EQ(weigh(survey, {reading(Mist::none, 5.5)}).terms.front().use.why_not,
            "not a frosty night: its minimum was above 3 C");
  EXPECT_TRUE(weigh(survey, {reading(Mist::runs, frosty_below_C)}).terms.front().use.used);
  // Nor does it take weight from the hygrometer of a frosty night.
  auto frosty = reading(Mist::edges);
  frosty.room_relative_humidity = 0.6;
  EXPECT_EQ(weigh(survey, {frosty, mild}).weights, weigh(survey, {frosty}).weights);
}

TEST(EvidenceWinter, AnAdviceListsTheReadingsThatWereUsed) {
  const std::vector<WinterReading> given{reading(Mist::edges),
                                         {.date = "9 December", .outdoor_C = 6.0, .mist = Mist::none}};
  const auto advice = vent_advice(worn_sash_survey(), std::nullopt, given,
                                  {.prior_samples = 256, .most_window_hours = 10000});
  ASSERT_EQ(advice.readings.size(), 1u);
  EXPECT_EQ(advice.readings.front().date, "3 December");
  EXPECT_EQ(advice.evidence.size(), 2u);
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
