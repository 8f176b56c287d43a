#include "dewgap/assessment/vent_advice.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

#include "assessment/survey_cases.hpp"
#include "dewgap/assessment/verdict_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap::test {
namespace {

/// A few prior samples, and no hours left for drying: laws that do not hang on either.
VentAdviceOptions quick(std::size_t samples = 8) {
  return {.prior_samples = 256, .most_window_hours = 10'000, .samples = samples, .inverse_answers = false};
}

/// A dry room behind a window that draws outdoor air in.
Survey easy_survey() {
  auto survey = worn_sash_survey();
  survey.expert.room_relative_humidity = 0.25;
  return survey;
}

TEST(VentAdvice, AnEasyWindowIsSettledEarly) {
  VentAdviceOptions options{.prior_samples = 256};
  std::size_t last_done = 0;
  std::size_t calls = 0;
  const auto advice =
      vent_advice(easy_survey(), std::nullopt, {}, options, [&](std::size_t done, std::size_t most) {
        EXPECT_GT(done, last_done);
        EXPECT_LE(done, most);
        last_done = done;
        ++calls;
      });
  EXPECT_TRUE(advice.settled) << advice.not_settled_because;
  EXPECT_EQ(advice.choice, VentOption::sealed);
  EXPECT_EQ(advice.samples, 16u);
  EXPECT_LT(advice.window_hours, options.most_window_hours / 2);
  EXPECT_EQ(advice.window_hours, last_done);
  EXPECT_GE(calls, 16u);
  EXPECT_TRUE(advice.remedies.empty());
  ASSERT_FALSE(advice.options.empty());
  for (const auto& option : advice.options) {
    EXPECT_NEAR(std::accumulate(option.band_share.begin(), option.band_share.end(), 0.0), 1.0, 1e-12);
    EXPECT_NEAR(option.band_share[0] + option.band_share[1], option.acceptable_share, 1e-12);
  }
  EXPECT_EQ(advice.options.front().heat_against_sealed_kWh.p90, 0.0);
}

TEST(VentAdvice, TheSameSeedGivesTheSameAnswer) {
  const auto first = vent_advice(worn_sash_survey(), std::nullopt, {}, quick());
  const auto second = vent_advice(worn_sash_survey(), std::nullopt, {}, quick());
  ASSERT_EQ(first.options.size(), second.options.size());
  for (std::size_t i = 0; i < first.options.size(); ++i) {
    EXPECT_EQ(first.options[i].acceptable_share, second.options[i].acceptable_share);
    EXPECT_EQ(first.options[i].hours_wet.p50, second.options[i].hours_wet.p50);
    EXPECT_EQ(first.options[i].heat_kWh.p10, second.options[i].heat_kWh.p10);
  }
  EXPECT_EQ(first.flip, second.flip);
  EXPECT_EQ(first.window_hours, second.window_hours);
  auto other = quick();
  other.seed = 2;
  EXPECT_NE(vent_advice(worn_sash_survey(), std::nullopt, {}, other).options[0].heat_kWh.p50,
            first.options[0].heat_kWh.p50);
}

TEST(VentAdvice, TooFewEffectiveCasesShowNoShares) {
  auto survey = worn_sash_survey();
  survey.room.centre_mists = CentreMists::never;
  survey.room.hygrometer.assign(4, {.room_C = 19.0, .relative_humidity = 0.80, .outdoor_C = 4.0});
  survey.joints.feelers.assign(8, Feeler::nothing);
  auto options = quick();
  options.prior_samples = 64;
  const auto advice = vent_advice(survey, std::nullopt, {}, options);
  EXPECT_LT(advice.effective_samples, 50.0);
  EXPECT_EQ(advice.prior_samples, 1024u);
  EXPECT_FALSE(advice.settled);
  EXPECT_NE(advice.not_settled_because.find("effective cases"), std::string::npos);
  EXPECT_TRUE(advice.options.empty());
  EXPECT_TRUE(advice.tied.empty());
  EXPECT_TRUE(advice.deciders.empty());
  EXPECT_TRUE(advice.remedies.empty());
  EXPECT_EQ(advice.lifted_tape_acceptable_share, 0.0);
  EXPECT_EQ(advice.window_hours, 0u);
  EXPECT_EQ(advice.evidence.size(), 3u);
}

TEST(VentAdvice, ABoundThatPaysForNoCaseShowsNoShares) {
  auto options = quick(0);
  options.most_window_hours = 10'000;
  const auto advice = vent_advice(worn_sash_survey(), std::nullopt, {}, options);
  EXPECT_FALSE(advice.settled);
  EXPECT_TRUE(advice.options.empty());
  ASSERT_TRUE(advice.least_window_hours.has_value());
  EXPECT_EQ(advice.not_settled_because, "Too few window-hours for eight cases: it takes " +
                                            std::to_string(*advice.least_window_hours) + ".");
}

TEST(VentAdvice, TheLeastBoundThatIsNamedPaysForEightCases) {
  auto options = quick(0);
  const auto poor = vent_advice(worn_sash_survey(), std::nullopt, {}, options);
  ASSERT_TRUE(poor.least_window_hours.has_value());
  options.most_window_hours = *poor.least_window_hours - 1;
  EXPECT_TRUE(vent_advice(worn_sash_survey(), std::nullopt, {}, options).options.empty());
  options.most_window_hours = *poor.least_window_hours;
  const auto enough = vent_advice(worn_sash_survey(), std::nullopt, {}, options);
  EXPECT_FALSE(enough.options.empty());
  EXPECT_GE(enough.samples, 8u);
  EXPECT_FALSE(enough.least_window_hours.has_value());
}

TEST(VentAdvice, TheLeastAndGreatestHoldThePercentiles) {
  const auto advice = vent_advice(worn_sash_survey(), std::nullopt, {}, quick(16));
  for (const auto& option : advice.options) {
    EXPECT_LE(option.heat_kWh.least, option.heat_kWh.p10);
    EXPECT_GE(option.heat_kWh.greatest, option.heat_kWh.p90);
    EXPECT_LT(option.heat_kWh.least, option.heat_kWh.greatest);
  }
}

TEST(VentAdvice, ReadingsOfTheFirstWinterMoveTheAnswer) {
  const auto wet_with = [](WinterReading::Mist mist) {
    const std::vector<WinterReading> readings{{.date = "3 December", .outdoor_C = -2.0, .mist = mist},
                                              {.date = "9 January", .outdoor_C = -1.0, .mist = mist}};
    const auto advice = vent_advice(worn_sash_survey(), std::nullopt, readings, quick(16));
    EXPECT_EQ(advice.readings.size(), 2u);
    EXPECT_EQ(advice.evidence.size(), 2u);
    return advice.options.front();
  };
  const auto clear = wet_with(WinterReading::Mist::none);
  const auto runs = wet_with(WinterReading::Mist::runs);
  EXPECT_LT(clear.hours_wet.p50, runs.hours_wet.p50);
  EXPECT_GE(clear.acceptable_share, runs.acceptable_share);
}

TEST(VentAdvice, AWetRoomGetsRemediesAndNoProtectedWindowAWeep) {
  auto survey = worn_sash_survey();
  survey.window.kind = WindowKind::fixed_light;
  survey.expert.vapour_excess_Pa = 900.0;
  survey.settle_first.protection = Protection::consent_given;
  auto options = quick();
  options.most_window_hours = 900'000;
  const auto advice = vent_advice(survey, std::nullopt, {}, options);
  for (const auto& option : advice.options) {
    EXPECT_NE(option.option, VentOption::weep_to_outdoors);
    EXPECT_NE(option.option, VentOption::joints_stripped);
  }
  const auto chosen = std::find_if(advice.options.begin(), advice.options.end(),
                                   [&](const auto& option) { return option.option == advice.choice; });
  ASSERT_NE(chosen, advice.options.end());
  ASSERT_LT(chosen->acceptable_share, enough_share);
  ASSERT_FALSE(advice.remedies.empty());
  EXPECT_NE(advice.remedies.front().find("Air the room by"), std::string::npos);
}

TEST(VentAdvice, TheFlipSpeaksOfTheNextLook) {
  const auto advice = vent_advice(worn_sash_survey(), std::nullopt, {}, quick(16));
  EXPECT_FALSE(advice.flip.empty());
  EXPECT_TRUE(advice.next_look.empty() || advice.flip.starts_with(advice.next_look));
  EXPECT_TRUE(advice.moved_most.empty());  // nothing was looked at
}

TEST(VentAdvice, BadOptionsThrow) {
  auto options = quick();
  options.samples = 4;
  EXPECT_THROW(vent_advice(worn_sash_survey(), std::nullopt, {}, options), InvalidInput);
  options = quick();
  options.most_window_hours = 100;
  EXPECT_THROW(vent_advice(worn_sash_survey(), std::nullopt, {}, options), InvalidInput);
  options = quick();
  options.prior_samples = 8;
  EXPECT_THROW(vent_advice(worn_sash_survey(), std::nullopt, {}, options), InvalidInput);
  EXPECT_THROW(vent_advice(worn_sash_survey(), std::nullopt, {{.date = "now", .outdoor_C = 80.0}}, quick()),
               InvalidInput);
}

}  // namespace
}  // namespace dewgap::test
