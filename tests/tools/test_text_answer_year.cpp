#include <gtest/gtest.h>

#include "hand_made_advice.hpp"
#include "hand_made_answer.hpp"
#include "text_answer_lines.hpp"
#include "tools/answer/text_answer.hpp"

namespace dewgap::test {
namespace {

TEST(TextAnswerOfAYear, WhatToDoStandsBeforeTheSharesItRestsOn) {
  auto job = hand_made_answer();
  job.assessment.after = {"Stop the rain.", "Repair the rail."};
  job.assessment.because = "In 82 % of plausible cases it is dry.";
  const auto text = unwrapped(tools::text_answer(job));
  EXPECT_NE(text.find("FIT AFTER (provisional): Stop the rain. - Repair the rail. TAPE: all round"),
            std::string::npos)
      << text;
  EXPECT_LT(text.find("TAPE: "), text.find("In 82 %"));
  job.assessment.headline = Headline::fit;
  job.assessment.after.clear();
  job.assessment.figures->provisional = false;
  EXPECT_TRUE(reads(tools::text_answer(job), "FIT. TAPE: all round"));
}

TEST(TextAnswerOfAYear, AYearThatSaysLeaveHasNoSteadyFigureBesideItThatSaysOtherwise) {
  auto job = hand_made_answer();
  job.assessment.headline = Headline::leave;
  job.assessment.figures->year = hand_made_advice();
  job.assessment.figures->flip = "Nothing would change this.";
  const auto text = tools::text_answer(job);
  EXPECT_FALSE(reads(text, "gap dry")) << text;
  EXPECT_FALSE(reads(text, "steady")) << text;
}

TEST(TextAnswerOfAYear, AYearOfHoursTellsItsCostAndNoShareTwice) {
  auto job = hand_made_answer();
  job.assessment.figures->year = hand_made_advice();
  job.assessment.figures->provisional = false;
  const auto text = tools::text_answer(job);
  expect_narrow(text);
  EXPECT_TRUE(reads(text, "TAPE: all round")) << text;
  EXPECT_TRUE(reads(text, "Acceptable in 64 % if 200 mm of tape lifts.")) << text;
  EXPECT_TRUE(reads(
      text, "At other widths of our guesses, steady: FIT AFTER (90 % at half), LEAVE (60 % at double)."))
      << text;
  EXPECT_TRUE(reads(text, "Year of hours: 40 cases, 2.8 million window-hours.")) << text;
  job.assessment.figures->year->samples = 57;
  EXPECT_EQ(tools::text_answer(job), text) << "a case that was picked again is no other case";
  EXPECT_FALSE(reads(text, "Most hangs on")) << "told by what would change it";
}

TEST(TextAnswerOfAYear, AYearWithoutSharesLeavesTheSteadyOnes) {
  auto job = hand_made_answer();
  job.assessment.figures->year = hand_made_advice();
  job.assessment.figures->year->options.clear();
  const auto text = tools::text_answer(job);
  EXPECT_TRUE(reads(text, "82 % of plausible cases agree, 64 % if")) << text;
  EXPECT_TRUE(reads(text, "Year of hours: 40 cases")) << text;
  job.weather = tools::UsedWeather{};
  EXPECT_TRUE(reads(tools::text_answer(job), "Year of hours, weather of your file: 40 cases"));
  job.assessment.figures->year->cases_run = 0;
  EXPECT_FALSE(reads(tools::text_answer(job), "Year of hours"));
}

}  // namespace
}  // namespace dewgap::test
