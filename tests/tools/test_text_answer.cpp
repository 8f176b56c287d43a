#include "tools/answer/text_answer.hpp"

#include <gtest/gtest.h>

#include <limits>

#include "hand_made_answer.hpp"
#include "run_cli.hpp"
#include "text_answer_lines.hpp"

namespace dewgap::test {
namespace {

TEST(TextAnswer, EveryPartStandsInItsPlace) {
  const auto text = tools::text_answer(hand_made_answer());
  expect_narrow(text);
  const auto whole = unwrapped(text);
  std::size_t last = 0;
  for (const auto* part :
       {"Back bedroom",
        "FIT AFTER (provisional): Stop the rain",
        "TAPE: all round",
        "settled by the householder",
        "WHY: ",
        "82 % of plausible cases agree, 64 % if 200 mm of tape lifts",
        "At half our guesses: the same.",
        "Most hangs on ",
        "LOOK FIRST - A hygrometer",
        "now",
        "4.9 (4.6 to 5.2)",
        "Face, night -2 C",
        "Damp at face, %   97 (92 to wet)        74 (70 to 79)",
        "133 (81 to 202) kWh a year",
        "Carbon: 26 (15 to 40) kg less.",
        "15 (9 to 23) EUR a year; simple payback 9 (6 to 15) years, never in 2 %; worth 43",
        "room humidity 50 (42 to 58) %; mould from 80 % at the face. London",
        "CUT: 4 mm acrylic, 943 mm wide x 1543 mm high",
        "FIX, mm: 14 screws 12 inside the sheet's edge",
        "only the one at 471 on the bottom edge tight",
        "50, 471, 893 from left",
        "30 deep (3 mm of timber stay behind)",
        "Tape 4.92 m",
        "drill 7.5 mm, with washers",
        "STOP - ",
        "FIRST FROST",
        "GUESSED"}) {
    const auto at = whole.find(part);
    ASSERT_NE(at, std::string::npos) << part << "\n" << text;
    EXPECT_GE(at, last) << part << "\n" << text;
    last = at;
  }
}

TEST(TextAnswer, TheWidestRangesKeepTheirColumnsApart) {
  const auto text = tools::text_answer(hand_made_answer());
  EXPECT_TRUE(reads(text, "-10.2 (-12.5 to -10.0)11.2")) << text;
}

TEST(TextAnswer, BreaksAreToldByNumberLengthAndPlace) {
  auto job = hand_made_answer();
  job.assessment.figures->vent = VentOption::breaks_bottom;
  EXPECT_TRUE(
      reads(tools::text_answer(job), "all round but two 20 mm breaks, bottom left and bottom right."));
  job.assessment.figures->vent = VentOption::breaks_bottom_and_top;
  EXPECT_TRUE(
      reads(tools::text_answer(job), "all round but four 20 mm breaks, left and right at bottom and top."));
}

TEST(TextAnswer, WhatAFitterIsToldOnceIsNotToldAgain) {
  const auto text = tools::text_answer(hand_made_answer());
  for (const auto* part : {"largest of three", "Tight screw only", "no deeper"})
    EXPECT_FALSE(reads(text, part)) << part << "\n" << text;
}

TEST(TextAnswer, MouldIsToldOnlyWhereItIsNear) {
  auto job = hand_made_answer();
  EXPECT_TRUE(reads(tools::text_answer(job), "mould"));
  job.assessment.figures->now_and_with.room_face_humidity_before = {0.5, 0.6, 0.799};
  EXPECT_FALSE(reads(tools::text_answer(job), "mould"));
  EXPECT_FALSE(reads(tools::text_answer(job), "Damp at face"));
}

TEST(TextAnswer, RemediesThatAreNotEnoughStandOnLeaveAloneAndOnlyTheStrongest) {
  auto job = hand_made_answer();
  job.assessment.figures->remedies = {"Air a little.", "Air a lot."};
  EXPECT_FALSE(reads(tools::text_answer(job), "Air a"));
  job.assessment.headline = Headline::leave;
  EXPECT_FALSE(reads(tools::text_answer(job), "Air a little."));
  EXPECT_TRUE(reads(tools::text_answer(job), "- Tried: Air a lot."));
  job.assessment.after = {"Air a lot."};
  const auto text = unwrapped(tools::text_answer(job));
  EXPECT_EQ(text.find("Air a lot."), text.rfind("Air a lot.")) << "told once\n" << text;
}

TEST(TextAnswer, APaybackBeyondAnyLifeHasNoFigure) {
  auto job = hand_made_answer();
  auto& money = job.assessment.figures->money;
  money->never_pays_back_share = 0.0;
  EXPECT_TRUE(reads(tools::text_answer(job), "simple payback 9 (6 to 15) years; worth"));
  money->payback_years = Spread{70, 100.6, 300};
  EXPECT_TRUE(reads(tools::text_answer(job), "simple payback over 100 years; worth"));
  money->payback_years.reset();
  EXPECT_FALSE(reads(tools::text_answer(job), "payback"));
  money->never_pays_back_share = 0.4;
  EXPECT_TRUE(reads(tools::text_answer(job), "simple payback never in 40 %; worth"));
}

TEST(TextAnswer, AFaceAtItsDewPointIsWetAndNoFigureAbove100IsPrinted) {
  auto job = hand_made_answer();
  auto& side = job.assessment.figures->now_and_with;
  side.room_face_humidity_before = {1.02, 1.1, 1.3};
  side.room_face_humidity_after = {0.85, 0.9949, 0.9951};
  EXPECT_TRUE(reads(tools::text_answer(job), "Damp at face, %   wet                   99 (85 to wet)"))
      << tools::text_answer(job);
}

TEST(TextAnswer, ALookThatWouldChangeItIsNotAskedForTwice) {
  auto job = hand_made_answer();
  job.assessment.figures->flip =
      job.assessment.figures->settle_first.front() + ": above 60 % it would change.";
  EXPECT_FALSE(reads(tools::text_answer(job), "LOOK FIRST"));
}

TEST(TextAnswer, APageThatGrowsTooLongShowsOneLookAndOneLineOfGuesses) {
  auto job = hand_made_answer();
  auto& figures = *job.assessment.figures;
  figures.settle_first = {"Look one", "Look two", "Look three"};
  figures.guessed.assign(20, "a guess that fills a line");
  EXPECT_TRUE(reads(tools::text_answer(job), "Look three"));
  job.assessment.after.assign(12, "A step to take first.");
  const auto text = tools::text_answer(job);
  EXPECT_TRUE(reads(text, "Look one"));
  EXPECT_FALSE(reads(text, "Look two"));
  EXPECT_TRUE(reads(text, "FIRST FROST: drops or wet timber: sheet off, dry, ask again.")) << text;
  EXPECT_TRUE(lines_of(text).back().starts_with("GUESSED: ")) << text;
}

TEST(TextAnswer, FewCasesThatFitAreTold) {
  auto job = hand_made_answer();
  EXPECT_FALSE(reads(tools::text_answer(job), "Few cases"));
  job.assessment.figures->effective_samples = 12.4;
  EXPECT_TRUE(reads(tools::text_answer(job), "Few cases fit all you saw: 12."));
}

TEST(TextAnswer, OneLimitOfTheRoomsHumidityIsTold) {
  auto job = hand_made_answer();
  EXPECT_FALSE(reads(tools::text_answer(job), "gap dry")) << "the flip sentence names one";
  job.assessment.figures->flip = "Nothing would change this.";
  EXPECT_TRUE(reads(tools::text_answer(job), ", gap dry up to 55 (48 to 61) %"));
}

TEST(TextAnswer, LeaveHasNoCutListAndNoMoneyWithoutAMoneyFile) {
  auto job = hand_made_answer();
  job.assessment.headline = Headline::leave;
  job.assessment.figures->money.reset();
  const auto text = tools::text_answer(job);
  EXPECT_TRUE(reads(text, "LEAVE (provisional): "));
  EXPECT_FALSE(reads(text, "CUT"));
  EXPECT_FALSE(reads(text, "FIX"));
  EXPECT_FALSE(reads(text, "FIRST FROST"));
  EXPECT_FALSE(reads(text, "943"));
  EXPECT_FALSE(reads(text, "EUR"));
}

TEST(TextAnswer, HoldPrintsNoFigureEvenIfTheAnswerHeldSome) {
  auto job = hand_made_answer();
  job.assessment.headline = Headline::hold;
  job.assessment.open_gates = {
      {GateKind::way_out, false, "Might anyone have to get out?", "A covered way out is none."}};
  const auto text = tools::text_answer(job);
  expect_narrow(text);
  EXPECT_TRUE(reads(text, "Might anyone have to get out?"));
  EXPECT_TRUE(reads(text, "Keep screws inside the measured timber.")) << "the caution in full";
  for (const auto* part : {"kWh", "943", "CUT", "FIX", "TAPE", "EUR", "4.9"})
    EXPECT_FALSE(reads(text, part)) << part;
}

TEST(TextAnswer, AGapThatIsDryWhateverTheRoomHasIsNotGivenANumber) {
  auto job = hand_made_answer();
  job.assessment.figures->flip.clear();
  job.assessment.figures->now_and_with.dry_up_to_room_humidity = {0.66, 1.0, 1.0};
  EXPECT_TRUE(reads(tools::text_answer(job), "dry up to 66 % or more"));
}

TEST(TextAnswer, ALongListOfGuessesSaysHowManyMore) {
  auto job = hand_made_answer();
  job.assessment.figures->guessed.assign(20, "a guess");
  const auto text = unwrapped(tools::text_answer(job));
  std::size_t named = 0;
  for (auto at = text.find("a guess"); at != std::string::npos; at = text.find("a guess", at + 1)) ++named;
  EXPECT_GT(named, 1u);
  EXPECT_TRUE(reads(text, std::to_string(20 - named) + " more in --json")) << text;
}

TEST(TextAnswer, ATighterOrWiderBeliefThatChangesTheVerdictIsTold) {
  EXPECT_TRUE(reads(tools::text_answer(hand_made_answer()),
                    "At half our guesses: the same. At double our guesses: LEAVE"));
  auto job = hand_made_answer();
  job.assessment.figures->width_checks.pop_back();
  const auto text = tools::text_answer(job);
  EXPECT_TRUE(reads(text, "At half and double our guesses: the same.")) << text;
  EXPECT_TRUE(reads(text, "GUESSED: how damp")) << text;
}

TEST(TextAnswer, LongAndForeignNamesAreCutAndNeverBreakTheLine) {
  std::string hebrew;
  for (int i = 0; i < 500; ++i) hebrew += "\xD7\x97";
  std::string wide;
  for (int i = 0; i < 500; ++i) wide += "\xE7\xAA\x93";
  for (const auto& name : {std::string(500, 'n'), hebrew, wide, std::string("a\x1B[2Jb\nc")}) {
    auto job = hand_made_answer();
    job.survey.name = name;
    job.survey.settle_first.answered_by = name;
    job.currency = name;
    expect_narrow(tools::text_answer(job));
  }
  auto job = hand_made_answer();
  job.survey.name = hebrew;
  EXPECT_EQ(tools::columns_of(lines_of(tools::text_answer(job)).front()), most_columns);
}

TEST(TextAnswer, AHoldThatFillsTheScreenHasItsCautionsInBrief) {
  auto job = hand_made_answer();
  job.assessment.headline = Headline::hold;
  const OpenGate gate{GateKind::way_out, false, "Might anyone have to get out?",
                      "A covered way out is none."};
  job.assessment.open_gates.assign(20, gate);
  const auto text = tools::text_answer(job);
  EXPECT_TRUE(reads(text, "Screws: keep to the depth."));
  EXPECT_FALSE(reads(text, "inside the measured timber"));
}

TEST(TextAnswer, TheSameSeedGivesTheSameBytesAndAnotherSeedOthers) {
  const auto job = examples_dir + "/old-sash.toml";
  for (const auto* form : {"--output=-", "--json"}) {
    const auto once =
        run_cli({"assess", job, "--samples", "64", "--window-hours", "0", "--seed", "7", form}).out;
    EXPECT_EQ(once,
              run_cli({"assess", job, "--samples", "64", "--window-hours", "0", "--seed", "7", form}).out);
    EXPECT_NE(once,
              run_cli({"assess", job, "--samples", "64", "--window-hours", "0", "--seed", "8", form}).out);
  }
}

TEST(TextAnswer, ANumberThatIsNotFiniteIsNotPrinted) {
  auto job = hand_made_answer();
  job.assessment.figures->now_and_with.heat_saved_kWh.p90 = std::numeric_limits<double>::quiet_NaN();
  EXPECT_THROW(tools::text_answer(job), std::domain_error);
}

}  // namespace
}  // namespace dewgap::test
