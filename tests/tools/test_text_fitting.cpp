// What the text says about cutting and fixing, for each kind of fixing.
#include <gtest/gtest.h>

#include "hand_made_answer.hpp"
#include "run_cli.hpp"
#include "tools/answer/plain_text.hpp"
#include "tools/answer/text_answer.hpp"

namespace dewgap::test {
namespace {

/// The text as if its lines had never been broken.
std::string text_of_answer(const tools::AnsweredJob& job) {
  const auto text = tools::text_answer(job);
  for (const auto& line : lines_of(text)) EXPECT_LE(tools::columns_of(line), most_columns) << line;
  return replaced(replaced(text, "\n  ", " "), "\n", " ");
}

SheetPlan& plan_of(tools::AnsweredJob& job) {
  return job.assessment.figures->plan.value();
}

TEST(TextFitting, TheThicknessIsAlwaysTold) {
  auto job = hand_made_answer();
  EXPECT_TRUE(holds(text_of_answer(job), "CUT: 4 mm acrylic, 943 mm wide"));
  plan_of(job).thickness_mm = 2.5;
  EXPECT_TRUE(holds(text_of_answer(job), "CUT: 2.5 mm acrylic")) << "not rounded";
  job.survey.sheet.material = SheetKind::pet_film;
  plan_of(job).thickness_mm = 0.05;
  EXPECT_TRUE(holds(text_of_answer(job), "CUT: 0.05 mm "));
}

TEST(TextFitting, SeveralSheetsAreCountedAndTheFiguresAreOfEach) {
  auto job = hand_made_answer();
  EXPECT_FALSE(holds(text_of_answer(job), "each"));
  plan_of(job).sheet_count = 2;
  const auto text = text_of_answer(job);
  EXPECT_TRUE(holds(text, "acrylic, 2 sheets, each 943 mm wide")) << text;
  EXPECT_TRUE(holds(text, "FIX, mm, each sheet: ")) << text;
  EXPECT_TRUE(holds(text, "Tape 4.92 m a sheet.")) << text;
}

TEST(TextFitting, BeadsHaveNoMarks) {
  auto job = hand_made_answer();
  plan_of(job).fixing = FixingKind::beads;
  const auto text = text_of_answer(job);
  EXPECT_TRUE(holds(text, "FIX: beads or battens round the reveal")) << text;
  for (const auto* part : {"pilot", "screws 12", "from left"}) EXPECT_FALSE(holds(text, part)) << part;
}

TEST(TextFitting, TapeAloneHasNoMarks) {
  auto job = hand_made_answer();
  plan_of(job).fixing = FixingKind::tape_only;
  const auto text = text_of_answer(job);
  EXPECT_TRUE(holds(text, "FIX: tape or magnetic strip alone, nothing drilled. Tape 4.92 m.")) << text;
  EXPECT_FALSE(holds(text, "pilot"));
}

TEST(TextFitting, WhatStandsAgainstItIsInThePlaceOfTheSize) {
  auto job = hand_made_answer();
  auto& against = job.assessment.figures->cut.against;
  against = {{MendKind::setting_out, "Too little timber: a batten."}};
  auto text = text_of_answer(job);
  EXPECT_TRUE(holds(text, "DO NOT CUT YET: Too little timber: a batten.")) << text;
  for (const auto* part : {"CUT: ", "FIX", "943", "pilot", "from left"})
    EXPECT_FALSE(holds(text, part)) << part;
  against.push_back({MendKind::obstacle, "A handle is in the way."});
  text = text_of_answer(job);
  EXPECT_TRUE(holds(text, "DO NOT CUT YET: Too little timber: a batten. And 1 more, above.")) << text;
  job.assessment.headline = Headline::leave;
  EXPECT_FALSE(holds(text_of_answer(job), "CUT"));
}

TEST(TextFitting, TheSunIsToldWhereItHasToBeMinded) {
  auto job = hand_made_answer();
  EXPECT_FALSE(holds(text_of_answer(job), "full sun the sheet reaches"));
  auto& sun = job.assessment.figures->cut.sun;
  sun.severity = FitSeverity::mind;
  EXPECT_TRUE(holds(text_of_answer(job), "SUN: In full sun the sheet reaches about 41 C"));
}

TEST(TextFitting, WeepHolesAreNotDeniedBesideATapedSheet) {
  auto job = hand_made_answer();
  plan_of(job).fixing = FixingKind::tape_only;
  job.assessment.figures->vent = VentOption::weep_to_outdoors;
  EXPECT_TRUE(holds(text_of_answer(job), "FIX: tape or magnetic strip alone, no hole but the weep holes."));
  job.survey.sheet.material = SheetKind::pet_film;
  const auto text = text_of_answer(job);
  EXPECT_TRUE(holds(text, "FIX: its tape alone, no hole but the weep holes.")) << text;
  EXPECT_FALSE(holds(text, "nothing drilled"));
  job.assessment.figures->vent = VentOption::sealed;
  EXPECT_TRUE(holds(text_of_answer(job), "FIX: its tape alone, nothing drilled."));
}

TEST(TextFitting, APilotWithoutADepthIsGivenNone) {
  auto job = hand_made_answer();
  plan_of(job).pilot_depth_mm = 0.0;
  const auto text = text_of_answer(job);
  EXPECT_TRUE(holds(text, "pilot 3.0 wide. Tape")) << text;
  EXPECT_FALSE(holds(text, "deep"));
}

TEST(TextFitting, WithoutAPlanTheCutIsNotYet) {
  auto job = hand_made_answer();
  job.assessment.figures->plan.reset();
  EXPECT_TRUE(holds(text_of_answer(job), "DO NOT CUT YET: see above."));
  job.assessment.headline = Headline::leave;
  EXPECT_FALSE(holds(text_of_answer(job), "CUT"));
}

}  // namespace
}  // namespace dewgap::test
