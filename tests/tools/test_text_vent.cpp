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

constexpr std::size_t most_columns = 62;
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

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

TEST(TextVent, EveryPartStandsInItsPlace) {
  const auto text = page(without_frost_check());
  std::size_t last = 0;
  for (const auto* part : {"Back bedroom",
                           "TAPE ALL ROUND: dry or harmless mist in 87 % of plausible cases.",
                           "A tie with: 2 breaks 20, bottom. The simplest is taken.",
                           "WHY: ",
                           "wet hours a year",
                           "Tape all round            87    50   12 (0-80)               0",
                           "2 breaks 20, bottom       84    50   12 (0-80)             +12",
                           "Off in summer",
                           "Misty mornings: 4 a year, 0 to 20; without a sheet 90 a year, 40 to 150.",
                           "With 200 mm of tape lifted ok in 64 %.",
                           "DECIDES: how damp the room is; how well the tape seals.",
                           "FLIPS: A room above 62 %",
                           "SEEN: The pane that mists",
                           "LOOK NEXT: A hygrometer",
                           "Dry in the coldest month up to 62 % in the room",
                           "raises the room's humidity by 2 %",
                           "dries in 14 (6 to 40) days",
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
    option.hours_wet = {8783.6, 8784.0, 8784.0};
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
  EXPECT_TRUE(holds(page(job), "LEAVE: at best dry or harmless mist in 40 % of plausible cases only"));
  EXPECT_TRUE(holds(page(job), "- Air a lot."));
  job.advice->realistic_remedy = 0;
  EXPECT_TRUE(holds(page(job),
                    "AIR THE ROOM FIRST, then TAPE ALL ROUND: as the room is, dry or harmless mist in 40 %"));
  EXPECT_TRUE(holds(page(job), "- Air a little."));
  EXPECT_FALSE(holds(page(job), "Air a lot."));
}

TEST(TextVent, WhyTellsTheWayOfTheAir) {
  auto job = without_frost_check();
  auto& middle = job.middle.value();
  middle = {.cold_from_room_m3_s = 20.0 / 3.6e6, .cold_from_outdoors_m3_s = 5.4 / 3.6e6};
  EXPECT_TRUE(holds(page(job),
                    "WHY: air goes both ways through the gap (cold half year, middle case: 20 l/h "
                    "enter it from the room, 5.4 from outdoors)."));
  middle.outwards_share = 0.6;
  EXPECT_TRUE(holds(page(job), "WHY: room air is drawn out"));
  middle.outwards_share = 0.3;
  middle.inwards_share = 0.7;
  EXPECT_TRUE(holds(page(job), "WHY: outdoor air comes in"));
  middle.cold_from_room_m3_s = middle.cold_from_outdoors_m3_s = 0.4 / 3.6e6;
  EXPECT_TRUE(holds(page(job), "WHY: hardly any air"));
}

TEST(TextVent, TheFirstWinterCheckStandsBeforeTheYear) {
  auto job = hand_made_advised_job();
  job.frost_check->before.options.front().acceptable_share = 0.31;
  const auto text = page(job);
  EXPECT_TRUE(holds(text, "KEEP IT AS IT IS. Nothing to do but look again")) << text;
  EXPECT_TRUE(holds(text, "As it hangs (tape all round): 31 % ok before these mornings, 87 % ok with them."));
  EXPECT_LT(text.find("KEEP IT"), text.find("TAPE ALL ROUND"));
  EXPECT_TRUE(holds(text, "Mornings used: 1."));
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
  EXPECT_DOUBLE_EQ(table.number(0, "room_face_peak_month_humidity_pct_p50"), 66.0);
  EXPECT_DOUBLE_EQ(table.number(1, "heat_against_sealed_kWh_p50"), 11.6);
}

}  // namespace
}  // namespace dewgap::test
