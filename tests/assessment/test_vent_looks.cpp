#include <gtest/gtest.h>

#include <cmath>

#include "assessment/survey_cases.hpp"
#include "dewgap/assessment/vent_words_kernel.hpp"

namespace dewgap::test {
namespace {

const std::vector<VentOption> two{VentOption::sealed, VentOption::breaks_bottom};

/// Cases whose band hangs on one unknown alone: wet above its middle share of the draw.
struct Invented {
  VentCases cases;
  VentRuns runs;
  VentChoice choice() const { return choose(runs.years, runs.counts, two); }
};

Invented wet_above(const Survey& survey, Unknown unknown, double limit, std::size_t count = 64) {
  Invented invented;
  invented.cases.beliefs = beliefs_for(survey);
  invented.cases.samples = draw_samples(invented.cases.beliefs, count, 1, 1.0);
  invented.cases.weights.assign(count, 1.0 / static_cast<double>(count));
  for (std::size_t i = 0; i < count; ++i) {
    const double value = invented.cases.samples[i][unknown];
    SampleYear year;
    for (auto& option : year.options) {
      option.band = value > limit ? YearBand::runs : YearBand::dry;
      option.hours_wet = static_cast<float>(value);
    }
    invented.runs.cases.push_back(i);
    invented.runs.years.push_back(year);
    invented.runs.counts.push_back(1.0);
  }
  return invented;
}

TEST(VentLooks, WhatDecidesIsFoundAndChanceIsNot) {
  const auto invented = wet_above(worn_sash_survey(), Unknown::vapour_excess, 400.0);
  const auto deciders = deciders_of(invented.cases, invented.runs, VentOption::sealed);
  ASSERT_FALSE(deciders.empty());
  EXPECT_EQ(deciders.front().unknown, Unknown::vapour_excess);
  EXPECT_NEAR(deciders.front().rank_measure, 1.0, 1e-9);
  EXPECT_TRUE(deciders.front().guessed);
  // Two in a thousand by chance, of all unknowns.
  EXPECT_LE(deciders.size(), 2u);
}

TEST(VentLooks, TheObservationThatMovedMostIsNamed) {
  auto invented = wet_above(worn_sash_survey(), Unknown::vapour_excess, 400.0);
  auto strong = evidence_of(Unknown::vapour_excess, "strong", "damp");
  auto idle = evidence_of(Unknown::joint_leakage, "idle", "nothing");
  auto unused = evidence_of(Unknown::joint_leakage, "unused", "nothing");
  unused.use.used = false;
  for (const auto& sample : invented.cases.samples) {
    strong.log_likelihood.push_back(sample[Unknown::vapour_excess] > 400.0 ? 0.0 : std::log(0.25));
    idle.log_likelihood.push_back(-1.0);
  }
  invented.cases.evidence = {unused, idle, strong};
  const auto choice = invented.choice();
  const auto moved = moved_most(invented.cases, invented.runs, two, choice);
  EXPECT_NE(moved.find("'strong: damp'"), std::string::npos) << moved;
  // Without it each dry case counts four times as much.
  const double dry = choice.share();
  const auto without = static_cast<int>(std::lround(100.0 * 4.0 * dry / (4.0 * dry + 1.0 - dry)));
  EXPECT_NE(moved.find(std::to_string(without) + " % of plausible cases"), std::string::npos) << moved;
  invented.cases.evidence = {};
  EXPECT_TRUE(moved_most(invented.cases, invented.runs, two, choice).empty());
}

TEST(VentLooks, WhatMovesTheShareByLessThanChanceIsSaidToBeThat) {
  auto invented = wet_above(worn_sash_survey(), Unknown::vapour_excess, 400.0);
  auto faint = evidence_of(Unknown::vapour_excess, "faint", "frosty_mornings");
  for (const auto& sample : invented.cases.samples) {
    faint.log_likelihood.push_back(sample[Unknown::vapour_excess] > 400.0 ? 0.0 : std::log(0.8));
  }
  invented.cases.evidence = {faint};
  // Without it about 5 % more: two sampling errors of 64 cases are 12 %.
  EXPECT_EQ(moved_most(invented.cases, invented.runs, two, invented.choice()),
            "No look moved it by more than chance.");
  auto clear = wet_above(worn_sash_survey(), Unknown::vapour_excess, 400.0, 4096);
  clear.cases.evidence = {faint};
  clear.cases.evidence.front().log_likelihood.clear();
  for (const auto& sample : clear.cases.samples) {
    clear.cases.evidence.front().log_likelihood.push_back(
        sample[Unknown::vapour_excess] > 400.0 ? 0.0 : std::log(0.8));
  }
  EXPECT_TRUE(moved_most(clear.cases, clear.runs, two, clear.choice())
                  .starts_with("Without 'faint: frosty mornings' the gap"));
}

TEST(VentLooks, AnObservationThatLeavesTooFewCasesIsNotWeighed) {
  auto invented = wet_above(worn_sash_survey(), Unknown::vapour_excess, 400.0);
  auto fierce = evidence_of(Unknown::vapour_excess, "fierce", "sharp");
  for (std::size_t i = 0; i < invented.cases.samples.size(); ++i) {
    fierce.log_likelihood.push_back(i == 0 ? -40.0 : 0.0);
  }
  invented.cases.evidence = {fierce};
  const auto moved = moved_most(invented.cases, invented.runs, two, invented.choice());
  EXPECT_NE(moved.find("cannot be told"), std::string::npos) << moved;
}

TEST(VentLooks, TheCheapestLookThatCouldFlipIsAsked) {
  const auto survey = worn_sash_survey();
  const auto setting = setting_for(survey);
  const auto damp = wet_above(survey, Unknown::vapour_excess, 550.0);
  ASSERT_GE(damp.choice().share(), 0.7);
  const auto look = next_look(setting, damp.cases, damp.runs, two, damp.choice());
  EXPECT_NE(look.look.find("mists"), std::string::npos) << look.look;
  EXPECT_NE(look.flip.find(look.look), std::string::npos);
  const auto leaky = wet_above(survey, Unknown::joint_leakage, 1.4);
  const auto joint_look = next_look(setting, leaky.cases, leaky.runs, two, leaky.choice());
  EXPECT_NE(joint_look.look.find("joint"), std::string::npos) << joint_look.look;
}

TEST(VentLooks, ATapeThatIsCheckedMayBeWhatItTakes) {
  const auto survey = worn_sash_survey();
  const auto setting = setting_for(survey);
  const auto leaky_tape = wet_above(survey, Unknown::seal_leakage, 0.008, 128);
  ASSERT_LT(leaky_tape.choice().share(), 0.7);
  const auto look = next_look(setting, leaky_tape.cases, leaky_tape.runs, two, leaky_tape.choice());
  EXPECT_NE(look.look.find("tape"), std::string::npos) << look.look;
  // Of a checked seal the middle is 0.002 and a tenth lies above 0.012: about 17 % above 0.008.
  EXPECT_NE(look.flip.find("8"), std::string::npos) << look.flip;
  auto looked = survey;
  looked.sheet.tape_unbroken = false;
  EXPECT_TRUE(next_look(setting_for(looked), leaky_tape.cases, leaky_tape.runs, two, leaky_tape.choice())
                  .look.find("tape") == std::string::npos);
}

TEST(VentLooks, NoLookIsAskedForThatCouldChangeNothing) {
  const auto survey = worn_sash_survey();
  const auto never = wet_above(survey, Unknown::vapour_excess, 1e9);
  EXPECT_TRUE(next_look(setting_for(survey), never.cases, never.runs, two, never.choice()).look.empty());
  auto told = survey;
  told.expert.vapour_excess_Pa = 400.0;
  told.expert.joint_leakage_m3_h_m = 0.5;
  told.expert.mean_pressure_Pa = 0.5;
  told.expert.seal_leakage_m3_h_m = 0.01;
  const auto all_known = wet_above(told, Unknown::putty_leakage, 0.01);
  EXPECT_TRUE(
      next_look(setting_for(told), all_known.cases, all_known.runs, two, all_known.choice()).look.empty());
}

}  // namespace
}  // namespace dewgap::test
