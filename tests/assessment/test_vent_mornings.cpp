#include "dewgap/assessment/gap_year.hpp"
#include "dewgap/assessment/vent_mornings_kernel.hpp"

#include <gtest/gtest.h>

#include "assessment/survey_cases.hpp"
#include "dewgap/errors.hpp"

namespace dewgap::test {
namespace {

using Mist = WinterReading::Mist;

WinterReading reading(const std::string& date, Mist mist = Mist::edges, double outdoor_C = -3.0) {
  return {.date = date, .outdoor_C = outdoor_C, .mist = mist};
}

VentAdviceOptions quick() {
  return {.prior_samples = 256, .most_window_hours = 10'000, .samples = 8, .inverse_answers = false};
}

TEST(VentMornings, OneReadingADate) {
  EXPECT_NO_THROW(require_one_a_date({reading("3 December"), reading("13 December"), reading("")}));
  EXPECT_NO_THROW(require_one_a_date({reading(""), reading("")}));
  EXPECT_THROW(require_one_a_date({reading("3 December"), reading("4"), reading("3  december")}),
               InvalidInput);
  const std::vector<WinterReading> twice{reading("3 December", Mist::none),
                                         reading("3 December", Mist::runs)};
  EXPECT_THROW(vent_advice(worn_sash_survey(), std::nullopt, twice, quick()), InvalidInput);
  EXPECT_THROW(gap_year(worn_sash_survey(), VentOption::sealed, std::nullopt, {.readings = twice},
                        [](const GapHourRow&) {}),
               InvalidInput);
}

TEST(VentMornings, AMorningIsUsedOrTheReasonIsTold) {
  const auto advice = vent_advice(worn_sash_survey(), std::nullopt,
                                  {reading("3 December"), reading("mild", Mist::all_over, 7.0)}, quick());
  ASSERT_EQ(advice.mornings.size(), 2u);
  EXPECT_TRUE(advice.mornings[0].used);
  ASSERT_TRUE(advice.mornings[0].foretold_share.has_value());
  EXPECT_GT(*advice.mornings[0].foretold_share, 0.0);
  EXPECT_LT(*advice.mornings[0].foretold_share, 1.0);
  EXPECT_EQ(advice.mornings_foretold_share, advice.mornings[0].foretold_share);
  EXPECT_FALSE(advice.mornings[1].used);
  EXPECT_FALSE(advice.mornings[1].why_not.empty());
  ASSERT_EQ(advice.readings.size(), 1u);
  EXPECT_EQ(advice.readings.front().date, "3 December");
}

TEST(VentMornings, TheLeastChanceCounts) {
  const Morning likely{.reading = reading("1"), .used = true, .why_not = {}, .foretold_share = 0.6};
  const Morning rare{.reading = reading("2"), .used = true, .why_not = {}, .foretold_share = 0.04};
  const Morning unused{.reading = reading("3"), .used = false, .why_not = "mild", .foretold_share = 0.01};
  EXPECT_FALSE(foretold_share_of({}).has_value());
  EXPECT_FALSE(foretold_share_of({unused}).has_value());
  EXPECT_EQ(foretold_share_of({likely, unused}), 0.6);
  EXPECT_EQ(foretold_share_of({likely, rare, likely}), 0.04);
}

TEST(VentMornings, UnderTenPerCentUnsettles) {
  EXPECT_TRUE(against_the_model(std::nullopt).empty());
  EXPECT_TRUE(against_the_model(0.10).empty());
  EXPECT_EQ(against_the_model(0.04),
            "the mornings go against the model: it gave what was seen a chance of 4 %");
}

/// A bone-dry room behind a sealed sheet whose pane runs with water every morning.
TEST(VentMornings, WhatGoesAgainstTheModelIsNotSettled) {
  auto survey = worn_sash_survey();
  survey.expert.room_relative_humidity = 0.25;
  const auto advice = vent_advice(
      survey, std::nullopt, {reading("3 December", Mist::all_over)},
      {.prior_samples = 4096, .most_window_hours = 10'000, .samples = 8, .inverse_answers = false});
  ASSERT_TRUE(advice.mornings_foretold_share.has_value());
  EXPECT_LT(*advice.mornings_foretold_share, least_foretold_share);
  EXPECT_FALSE(advice.settled);
}

}  // namespace
}  // namespace dewgap::test
