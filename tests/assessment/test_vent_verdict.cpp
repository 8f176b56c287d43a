#include <gtest/gtest.h>

#include "assessment/survey_cases.hpp"
#include "dewgap/assessment/verdict_kernel.hpp"

namespace dewgap::test {
namespace {

AssessOptions with_year() {
  auto options = quick_options();
  options.most_window_hours = 1'800'000;
  return options;
}

Survey dry_room() {
  auto survey = worn_sash_survey();
  survey.expert.room_relative_humidity = 0.25;
  survey.timber.bottom_rail = TimberFeel::firm;
  survey.timber.lets_rain_in = false;
  return survey;
}

/// A year in which an option is acceptable in a share of the cases.
VentAdvice invented_year(VentOption choice, double share) {
  VentAdvice year;
  year.settled = true;
  year.cases_run = least_cases_for_percentiles;
  year.choice = choice;
  for (const auto option : {VentOption::sealed, VentOption::breaks_bottom, VentOption::breaks_bottom_longer,
                            VentOption::joints_stripped, VentOption::weep_to_outdoors}) {
    OptionAdvice advice;
    advice.option = option;
    advice.acceptable_share = option == choice ? share : 0.0;
    advice.misty_mornings = {.p10 = 0.0, .p50 = 4.0, .p90 = 20.0};
    year.options.push_back(advice);
  }
  return year;
}

WeightedRuns one_run(double saved_kWh) {
  WeightedRuns runs;
  runs.samples.resize(1);
  runs.figures.resize(1);
  runs.figures.front().saved.glass_kWh = saved_kWh;
  runs.weights = {1.0};
  return runs;
}

Verdict verdict_of(const Survey& survey, const VentAdvice& year) {
  const auto setting = setting_for(survey);
  return decide_by_year(setting, one_run(100.0), year, std::nullopt);
}

TEST(VentVerdict, TheYearDecidesAndSaysSo) {
  const auto answer = assess(dry_room(), with_year());
  ASSERT_TRUE(answer.figures.has_value());
  const auto& figures = *answer.figures;
  ASSERT_TRUE(figures.year.has_value());
  EXPECT_TRUE(figures.year->settled) << figures.year->not_settled_because;
  EXPECT_EQ(answer.headline, Headline::fit);
  EXPECT_FALSE(figures.provisional);
  EXPECT_EQ(figures.vent, figures.year->choice);
  EXPECT_EQ(figures.agree_share, chosen_option(*figures.year).acceptable_share);
  EXPECT_EQ(figures.lifted_tape_acceptable_share, figures.year->lifted_tape_acceptable_share);
  EXPECT_EQ(figures.flip, figures.year->flip);
  EXPECT_TRUE(answer.because.starts_with("In ")) << answer.because;
  EXPECT_NE(answer.because.find("through the year. Misty mornings 0 a year; all 16 cases: 0 to 0."),
            std::string::npos)
      << answer.because;
  // One reason, for whoever asks the year or the whole answer.
  EXPECT_TRUE(figures.vent_reason.starts_with(figures.year->air.reason)) << figures.vent_reason;
  EXPECT_FALSE(figures.year->air.reason.empty());
  // Heat and U are those of the steady conditions where the option is one of theirs.
  auto steady = with_year();
  steady.most_window_hours = 0;
  const auto without = assess(dry_room(), steady);
  EXPECT_TRUE(without.figures->provisional);
  EXPECT_FALSE(without.figures->year.has_value());
  if (figures.vent == VentOption::sealed) {
    EXPECT_EQ(figures.now_and_with.heat_saved_kWh.p50, without.figures->now_and_with.heat_saved_kWh.p50);
  }
}

TEST(VentVerdict, AHoldRunsNothing) {
  auto survey = dry_room();
  survey.settle_first.burning.reset();
  std::size_t calls = 0;
  const auto answer =
      assess_in_weather(survey, with_year(), std::nullopt, [&](std::size_t, std::size_t) { ++calls; });
  EXPECT_EQ(answer.headline, Headline::hold);
  EXPECT_FALSE(answer.figures.has_value());
  EXPECT_TRUE(answer.after.empty());
  EXPECT_EQ(calls, 0u);
}

TEST(VentVerdict, WithoutSharesTheSteadyAnswerStandsAndIsProvisional) {
  auto options = with_year();
  options.most_window_hours = 10'000;
  const auto answer = assess(dry_room(), options);
  ASSERT_TRUE(answer.figures->year.has_value());
  EXPECT_TRUE(answer.figures->year->options.empty());
  EXPECT_TRUE(answer.figures->provisional);
  EXPECT_EQ(answer.headline, Headline::fit);
  EXPECT_NE(answer.because.find("The year of hours has no answer"), std::string::npos) << answer.because;
}

TEST(VentVerdict, WordsFollowTheShares) {
  const auto survey = worn_sash_survey();
  const auto fit = verdict_of(survey, invented_year(VentOption::sealed, 0.86));
  EXPECT_EQ(fit.headline, Headline::fit);
  EXPECT_EQ(fit.because,
            "In 86 % of plausible cases the gap stays dry or mists harmlessly through the year. "
            "Misty mornings 4 a year, 0 to 20.");
  const auto wet = verdict_of(survey, invented_year(VentOption::sealed, 0.4));
  EXPECT_EQ(wet.headline, Headline::leave);
  EXPECT_EQ(wet.cause, LeaveCause::runs_wet);
  EXPECT_NE(wet.because.find("only 40 % of plausible cases, and no doable airing mends it."),
            std::string::npos)
      << wet.because;
}

TEST(VentVerdict, WhatIsLeftAloneIsNotDrilled) {
  const auto verdict = verdict_of(worn_sash_survey(), invented_year(VentOption::weep_to_outdoors, 0.005));
  EXPECT_EQ(verdict.headline, Headline::leave);
  EXPECT_TRUE(verdict.after.empty());
  EXPECT_NE(verdict.because.find("in under 1 % of plausible cases"), std::string::npos) << verdict.because;
}

TEST(VentVerdict, ARealisticRemedyMakesItFitAfter) {
  auto year = invented_year(VentOption::sealed, 0.4);
  year.remedies = {"Air a little.", "Air more."};
  EXPECT_EQ(verdict_of(worn_sash_survey(), year).headline, Headline::leave);
  year.realistic_remedy = 1;
  const auto verdict = verdict_of(worn_sash_survey(), year);
  EXPECT_EQ(verdict.headline, Headline::fit_after);
  ASSERT_FALSE(verdict.after.empty());
  EXPECT_EQ(verdict.after.back(), "Air more.");
}

TEST(VentVerdict, WhatTheChoiceItselfAsksComesFirst) {
  const auto stripped = verdict_of(worn_sash_survey(), invented_year(VentOption::joints_stripped, 0.9));
  EXPECT_EQ(stripped.headline, Headline::fit_after);
  EXPECT_NE(stripped.after.front().find("Draught-strip"), std::string::npos);
  const auto weep = verdict_of(worn_sash_survey(), invented_year(VentOption::weep_to_outdoors, 0.9));
  EXPECT_EQ(weep.headline, Headline::fit_after);
  EXPECT_NE(weep.after.front().find("weep holes"), std::string::npos);
}

TEST(VentVerdict, AnUnsettledYearSaysWhy) {
  auto year = invented_year(VentOption::sealed, 0.75);
  year.settled = false;
  year.not_settled_because = "too near the line";
  EXPECT_NE(verdict_of(worn_sash_survey(), year).because.find("Not settled: too near the line."),
            std::string::npos);
}

TEST(VentVerdict, HeatOfOtherOptionsIsTheNearestOnesWithTheYearsDifference) {
  EXPECT_EQ(nearest_steady(VentOption::breaks_bottom_longer), VentOption::breaks_bottom);
  EXPECT_EQ(nearest_steady(VentOption::joints_stripped), VentOption::sealed);
  EXPECT_EQ(nearest_steady(VentOption::breaks_bottom_and_top), VentOption::breaks_bottom_and_top);
  auto year = invented_year(VentOption::breaks_bottom_longer, 0.9);
  year.options[1].heat_against_sealed_kWh = {.p10 = 1.0, .p50 = 2.0, .p90 = 3.0};
  year.options[2].heat_against_sealed_kWh = {.p10 = 4.0, .p50 = 7.0, .p90 = 9.0};
  const auto runs = steady_runs_for(year, one_run(100.0));
  EXPECT_DOUBLE_EQ(runs.figures.front().saved.glass_kWh, 95.0);
  year.choice = VentOption::breaks_bottom;
  EXPECT_DOUBLE_EQ(steady_runs_for(year, one_run(100.0)).figures.front().saved.glass_kWh, 100.0);
}

TEST(VentVerdict, ASheetThatLosesHeatIsLeftWhateverTheYearSays) {
  const auto setting = setting_for(worn_sash_survey());
  const auto verdict =
      decide_by_year(setting, one_run(-5.0), invented_year(VentOption::sealed, 1.0), std::nullopt);
  EXPECT_EQ(verdict.headline, Headline::leave);
  EXPECT_EQ(verdict.cause, LeaveCause::saves_nothing);
}

TEST(VentVerdict, TiesAreCalledTies) {
  auto year = invented_year(VentOption::sealed, 0.9);
  year.air.reason = "Room air is drawn out.";
  EXPECT_EQ(vent_reason(year), "Room air is drawn out.");
  year.tied = {VentOption::breaks_bottom};
  EXPECT_EQ(vent_reason(year),
            "Room air is drawn out. It ties with two 20 mm breaks at the bottom; the simplest wins.");
  year.tied.push_back(VentOption::joints_stripped);
  EXPECT_NE(vent_reason(year).find("It ties with 2 other ways"), std::string::npos);
}

TEST(VentVerdict, WhatIsLeftAloneTiesWithNothing) {
  auto year = invented_year(VentOption::sealed, 0.06);
  year.tied = {VentOption::breaks_bottom};
  EXPECT_EQ(vent_reason(year).find("ties"), std::string::npos);
}

TEST(VentVerdict, OfFewCasesTheMistyMorningsAreAllToldOf) {
  auto year = invented_year(VentOption::sealed, 0.86);
  year.cases_run = 16;
  year.options.front().misty_mornings = {.p10 = 1.0, .p50 = 4.0, .p90 = 20.0, .least = 0.0, .greatest = 64.0};
  EXPECT_NE(
      verdict_of(worn_sash_survey(), year).because.find("Misty mornings 4 a year; all 16 cases: 0 to 64."),
      std::string::npos);
}

}  // namespace
}  // namespace dewgap::test
