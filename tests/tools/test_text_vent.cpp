#include "tools/answer/text_vent.hpp"

#include <gtest/gtest.h>

#include "dewgap/numerics/csv_text.hpp"
#include "hand_made_advice.hpp"
#include "run_cli.hpp"
#include "tools/answer/json_vent.hpp"
#include "tools/answer/plain_text.hpp"
#include "tools/answer/words.hpp"

namespace dewgap::test {
namespace {

constexpr std::size_t most_lines = 44;

void expect_one_screen(const std::string& text) {
  const auto lines = lines_of(text);
  EXPECT_LE(lines.size(), most_lines) << text;
  for (const auto& line : lines) {
    EXPECT_LE(tools::columns_of(line), most_columns) << line;
    EXPECT_EQ(line, tools::harmless(line)) << line;
  }
}

/// The text as if its lines had never been broken.
std::string unwrapped(const std::string& text) {
  return replaced(replaced(text, "\n  ", " "), "\n", " ");
}

std::string page(const tools::AdvisedJob& job) {
  const auto text = tools::text_vent(job);
  expect_one_screen(text);
  return unwrapped(text);
}

tools::AdvisedJob without_frost_check() {
  auto job = hand_made_advised_job();
  job.frost_check.reset();
  return job;
}

TEST(TextVent, EveryPartStandsInItsPlace) {
  const auto text = page(without_frost_check());
  std::size_t last = 0;
  for (const auto* part :
       {"Back bedroom",
        "TAPE ALL ROUND: dry or harmless mist in 87 % of plausible cases (40 cases run).",
        "A tie with: 2 breaks 20, bottom. The simplest is taken.",
        "WHY: Room air is drawn out through the gap. Air: outwards in 62 % of cases; medians of "
        "the cold half year: 20 l/h in from the room, 5.4 from outdoors.",
        "wet hours a year",
        "Tape all round            87    50   12 (0-80)               0",
        "2 breaks 20, bottom       84    50   12 (0-80)             +12",
        "Off in summer",
        "middle and 10th-90th percentile. kWh: heat lost in a year through glass and by "
        "air, against tape all round; not the saving.",
        "Misty mornings a year: 4 (0 to 20); without a sheet 90 (40-150).",
        "With 200 mm of tape lifted ok in 64 %.",
        "DECIDES: how damp the room is; how well the tape seals.",
        "FLIPS: A room above 62 %",
        "SEEN: The pane that mists",
        "LOOK NEXT: A hygrometer",
        "In the coldest month's means dry up to 62 % in the room",
        "raises the room's humidity by 2 %",
        "dries in 14 (all 16 cases: 4 to 61) days",
        "WEATHER: modelled from monthly normals: a table; modelled: wind",
        "hours repaired: 5, at most 3 on end",
        "RUN: 40 cases, 1 left out of 4096 drawn (310 effective), 2.8 of at most 5 "
        "million window-hours, seed 1."}) {
    const auto at = text.find(part);
    ASSERT_NE(at, std::string::npos) << part << "\n" << text;
    EXPECT_GE(at, last) << part << "\n" << text;
    last = at;
  }
}

TEST(TextVent, TheWidestFiguresKeepTheirColumnsApart) {
  auto job = without_frost_check();
  for (auto& option : job.advice->options) {
    option.hours_wet = {8783.6, 8784.0, 8784.0, 8783.0, 8784.0};
    option.heat_against_sealed_kWh.p50 = -12345.0;
    option.acceptable_share = 0.999;
    option.best_share = 1.0;
  }
  EXPECT_TRUE(holds(page(job), "Weep holes to outdoors   >99   100   8784 (8784-8784)   -12345"))
      << tools::text_vent(job);
}

TEST(TextVent, BreaksStandFirst) {
  auto job = without_frost_check();
  job.advice->choice = VentOption::breaks_bottom;
  EXPECT_TRUE(holds(page(job), "BREAKS: two 20 mm at the bottom: dry or harmless mist in 84 %"));
}

TEST(TextVent, NotSettledSaysWhyAndWhatItIsSoFar) {
  auto job = without_frost_check();
  job.advice->settled = false;
  job.advice->not_settled_because = "too near the line";
  const auto text = page(job);
  EXPECT_TRUE(
      holds(text, "NOT SETTLED: too near the line. So far tape all round, dry or harmless mist in 87 %"));
  EXPECT_FALSE(holds(text, "TAPE ALL ROUND"));
  auto empty = VentAdvice{.settled = false, .not_settled_because = "too near the line"};
  empty.weather_source = job.advice->weather_source;
  job.advice = empty;
  job.middle.reset();
  const auto without_shares = page(job);
  EXPECT_TRUE(holds(without_shares, "NOT SETTLED: too near the line. WEATHER")) << without_shares;
  EXPECT_FALSE(holds(without_shares, "acceptable"));
}

TEST(TextVent, TooFewGoodCasesIsLeaveOrAirFirst) {
  auto job = without_frost_check();
  for (auto& option : job.advice->options) option.acceptable_share = 0.4;
  job.advice->remedies = {"Air a little.", "Air a lot."};
  EXPECT_TRUE(holds(page(job), "LEAVE: at best dry or harmless mist in 40 % of plausible cases"));
  // What ties is no better, and a limit of the room's means would only contradict it.
  EXPECT_FALSE(holds(page(job), "A tie with"));
  EXPECT_FALSE(holds(page(job), "dry up to"));
  EXPECT_TRUE(holds(page(job), "- Air a lot."));
  job.advice->realistic_remedy = 0;
  EXPECT_TRUE(holds(page(job),
                    "AIR THE ROOM FIRST, then TAPE ALL ROUND: as the room is, dry or harmless mist in 40 %"));
  EXPECT_TRUE(holds(page(job), "- Air a little."));
  EXPECT_FALSE(holds(page(job), "Air a lot."));
}

TEST(TextVent, OfFewCasesTheLeastAndGreatestAreTold) {
  auto job = without_frost_check();
  job.advice->cases_run = 16;
  const auto text = page(job);
  EXPECT_TRUE(holds(text, "Tape all round            87    50   12 (0-680)              0")) << text;
  EXPECT_TRUE(holds(text, "middle and least-greatest of all 16 cases")) << text;
  EXPECT_TRUE(holds(text, "Misty mornings a year: 4 (all 16 cases: 0 to 41)")) << text;
  EXPECT_FALSE(holds(text, "percentile"));
}

TEST(TextVent, RepeatsOfFewCasesAreNamed) {
  auto job = without_frost_check();
  EXPECT_FALSE(holds(page(job), "repeats add nothing"));
  job.advice->samples = 2000;
  job.advice->effective_samples = 71.6;
  EXPECT_TRUE(holds(page(job), "RUN: 40 cases (2000 picks), 1 left out of 4096"));
  EXPECT_TRUE(holds(page(job), "2000 runs of 72 effective cases: repeats add nothing."));
}

TEST(TextVent, TooFewHoursNameTheLeastThatDo) {
  auto job = without_frost_check();
  job.advice = VentAdvice{.settled = false, .not_settled_because = "Too few.", .least_window_hours = 788'400};
  EXPECT_TRUE(
      holds(page(job), "NOT SETTLED: too few window-hours for eight cases; give --window-hours 788400."));
  EXPECT_TRUE(tools::csv_vent(job).starts_with(
      "# NOT SETTLED: too few window-hours for eight cases; give --window-hours 788400\n"));
}

TEST(TextVent, WhatIsToBeMendedStandsFirst) {
  auto job = without_frost_check();
  job.mend_first = {{MendKind::water, "Stop the rain that the window lets in."},
                    {MendKind::obstacle, "Move the catch."}};
  const auto text = page(job);
  EXPECT_TRUE(holds(text,
                    "MEND FIRST - Stop the rain that the window lets in. - Move the catch. MEND FIRST, "
                    "then TAPE ALL ROUND: dry"))
      << text;
  EXPECT_TRUE(tools::csv_vent(job).starts_with(
      "# MEND FIRST: Stop the rain that the window lets in.\n# MEND FIRST: Move the catch.\noption,"));
}

TEST(TextVent, TheFirstWinterCheckStandsBeforeTheYear) {
  auto job = hand_made_advised_job();
  job.frost_check->before.options.front().acceptable_share = 0.31;
  const auto text = page(job);
  EXPECT_TRUE(holds(text, "KEEP IT AS IT IS. Nothing to do but look again")) << text;
  EXPECT_TRUE(holds(text, "As it hangs (tape all round): 31 % ok before these mornings, 87 % ok with them."));
  EXPECT_LT(text.find("KEEP IT"), text.find("TAPE ALL ROUND"));
  EXPECT_TRUE(holds(text, "Left out: 9 December, not a frosty night."));
  EXPECT_TRUE(holds(text, "Mornings used: 1. The year with them:"));
  EXPECT_FALSE(holds(text, "AGAINST THE MODEL"));
  EXPECT_FALSE(holds(text, "Mist over"));
}

TEST(TextVent, MistAndWhatGoesAgainstTheModelAreTold) {
  auto job = hand_made_advised_job();
  job.frost_check->found.mornings = 3;
  job.frost_check->found.misty = 2;
  job.frost_check->found.against_model = true;
  job.frost_check->step = tools::frost_step(job.frost_check->found);
  job.advice->mornings_foretold_share = 0.042;
  const auto text = page(job);
  EXPECT_TRUE(holds(text, "KEEP IT, DRY IT AND LOOK AGAIN. Wipe the sill dry, feel the rail")) << text;
  EXPECT_TRUE(holds(text, "Mist over a third of the pane or more on 2 of 3 frosty mornings.")) << text;
  EXPECT_TRUE(holds(text, "THE MORNINGS GO AGAINST THE MODEL: it gave what was seen a chance of 4 %."))
      << text;
}

TEST(TextVent, WithoutAFrostyMorningNothingIsDecided) {
  auto job = hand_made_advised_job();
  job.advice->mornings.erase(job.advice->mornings.begin());
  job.frost_check->found = tools::frost_findings(*job.advice, VentOption::sealed, {});
  job.frost_check->step = tools::frost_step(job.frost_check->found);
  const auto text = page(job);
  EXPECT_TRUE(holds(text, "LOOK AGAIN AFTER A FROST. None of the mornings followed a frosty night")) << text;
  EXPECT_TRUE(holds(text, "Left out: 9 December, not a frosty night."));
  EXPECT_TRUE(holds(text, "Mornings used: none. The year without them:"));
  EXPECT_FALSE(holds(text, "As it hangs"));
}

TEST(TextVent, ManyMorningsLeftOutAreCounted) {
  auto job = hand_made_advised_job();
  auto& mornings = job.advice->mornings;
  mornings.insert(mornings.end(), 4, mornings.back());
  EXPECT_TRUE(holds(page(job), "Left out besides: 2 mornings more."));
}

TEST(TextVent, ALongRecordStaysOnOneScreen) {
  auto job = hand_made_advised_job();
  job.advice->flip =
      "A room above 62 % in the coldest month would turn it to two 20 mm breaks at the bottom.";
  job.advice->weather_source =
      "modelled from monthly normals: WMO Climatological Standard Normals 1991-2020; NCEI Accession 0253808; "
      "doi:10.25921/800j-vn07; sun and wind: another office's daily data, an airport, 1991-2020";
  job.advice->tied = {VentOption::breaks_bottom, VentOption::breaks_bottom_longer,
                      VentOption::weep_to_outdoors, VentOption::joints_stripped};
  page(job);
}

TEST(CsvVent, HasALineAnOptionAndUnitsInItsNames) {
  const auto text = tools::csv_vent(without_frost_check());
  const numerics::CsvTable table(text, "vent.csv");
  ASSERT_EQ(table.row_count(), 8u);
  EXPECT_EQ(table.text(0, "option"), "sealed");
  EXPECT_EQ(table.text(7, "option"), "as_it_is");
  EXPECT_DOUBLE_EQ(table.number(0, "share_acceptable"), 0.87);
  EXPECT_DOUBLE_EQ(table.number(0, "hours_wet_h_p90"), 80.2);
  EXPECT_DOUBLE_EQ(table.number(0, "hours_wet_h_greatest"), 680.0);
  EXPECT_DOUBLE_EQ(table.number(0, "room_face_peak_month_humidity_pct_p50"), 66.0);
  EXPECT_DOUBLE_EQ(table.number(1, "heat_against_sealed_kWh_p50"), 11.6);
}

TEST(CsvVent, OfFewCasesPercentilesStayEmpty) {
  auto job = without_frost_check();
  job.advice->cases_run = 39;
  const numerics::CsvTable table(tools::csv_vent(job), "vent.csv");
  ASSERT_EQ(table.row_count(), 8u);
  EXPECT_EQ(table.text(0, "hours_wet_h_p10"), "");
  EXPECT_EQ(table.text(0, "heat_against_sealed_kWh_p90"), "");
  EXPECT_DOUBLE_EQ(table.number(0, "hours_wet_h_p50"), 12.4);
  EXPECT_DOUBLE_EQ(table.number(0, "hours_wet_h_least"), 0.0);
}

}  // namespace
}  // namespace dewgap::test
