// Real output of assess, vent and year and of a house against the published schemas.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "hand_made_advice.hpp"
#include "hand_made_answer.hpp"
#include "run_cli.hpp"
#include "schema_complaints.hpp"
#include "tools/answer/json_answer.hpp"
#include "tools/answer/json_house.hpp"
#include "tools/answer/json_vent.hpp"
#include "tools/job/house_reader.hpp"

namespace dewgap::test {
namespace {

using nlohmann::json;

TEST(Schema, FitsEveryExample) {
  for (const auto& path : example_jobs())
    for (const bool with_money : {false, true}) {
      std::vector<std::string> arguments{"assess", path, "--json", "--samples", "64", "--window-hours", "0"};
      if (with_money) arguments.insert(arguments.end(), {"--money", examples_dir + "/money.toml"});
      const auto result = run_cli(arguments);
      ASSERT_EQ(result.exit_code, 0) << path << ": " << result.err;
      EXPECT_EQ(complaints(json::parse(result.out)), "") << path;
    }
}

TEST(Schema, FitsAnAnswerWithEveryPart) {
  EXPECT_EQ(complaints(json::parse(tools::json_answer(hand_made_answer()))), "");
}

TEST(Schema, FitsAnAnswerWithAYearOfHours) {
  auto job = hand_made_answer();
  job.assessment.figures->year = hand_made_advice();
  job.weather = tools::UsedWeather{1, 1, {"One hour was filled in."}};
  EXPECT_EQ(complaints(json::parse(tools::json_answer(job))), "");
  job.assessment.figures->year->options.clear();
  EXPECT_EQ(complaints(json::parse(tools::json_answer(job))), "");
  job.assessment.headline = Headline::hold;
  const auto held = json::parse(tools::json_answer(job));
  EXPECT_FALSE(held.contains("year"));
  EXPECT_FALSE(held.contains("weather_file"));
}

const std::vector<std::string> vent_schema{"schema", "--vent"};

TEST(Schema, FitsAVentDecisionWithEveryPart) {
  auto job = hand_made_advised_job();
  EXPECT_EQ(complaints(json::parse(tools::json_vent(job)), vent_schema), "");
  job.advice->settled = false;
  job.advice->not_settled_because = "too near the line";
  job.frost_check.reset();
  EXPECT_EQ(complaints(json::parse(tools::json_vent(job)), vent_schema), "");
  job.advice->options.clear();
  job.middle.reset();
  EXPECT_EQ(complaints(json::parse(tools::json_vent(job)), vent_schema), "");
}

TEST(Schema, RefusesAVentDecisionThatIsNotOne) {
  const auto whole = json::parse(tools::json_vent(hand_made_advised_job()));
  auto held = whole;
  held["verdict"] = "hold";
  EXPECT_NE(complaints(held, vent_schema), "") << "a HOLD with figures";
  auto without = whole;
  without["advice"].erase("choice");
  EXPECT_NE(complaints(without, vent_schema), "") << "options without a choice";
  auto stranger = whole;
  stranger["advice"]["options"][0]["score"] = 7;
  EXPECT_NE(complaints(stranger, vent_schema), "");
}

/// The only test that runs cases through a whole year from the command line: some seconds.
TEST(Schema, FitsWhatVentFinds) {
  const auto result = run_cli({"vent", examples_dir + "/thin-film.toml", "--samples", "8", "--json"});
  ASSERT_EQ(result.exit_code, 0) << result.err;
  const auto document = json::parse(result.out);
  EXPECT_EQ(complaints(document, vent_schema), "");
  EXPECT_EQ(document.at("advice").at("samples"), 8);
  EXPECT_GE(document.at("advice").at("options").size(), 6u);
}

TEST(Schema, FitsHoldAndTooFewHoursOfVent) {
  for (const auto* name : {"/hold-way-out.toml", "/thin-film.toml"}) {
    const auto result = run_cli({"vent", examples_dir + name, "--window-hours", "10000", "--json"});
    ASSERT_EQ(result.exit_code, 0) << result.err;
    EXPECT_EQ(complaints(json::parse(result.out), vent_schema), "") << name;
  }
}

TEST(Schema, FitsYears) {
  const std::vector<std::string> schema{"schema", "--year"};
  for (const auto* name : {"/hold-way-out.toml", "/old-sash.toml", "/steel-casement.toml"})
    for (const auto* option : {"sealed", "off_in_summer"}) {
      const auto result = run_cli({"year", examples_dir + name, "--option", option, "--case", "1", "--json"});
      ASSERT_EQ(result.exit_code, 0) << result.err;
      EXPECT_EQ(complaints(json::parse(result.out), schema), "") << name;
    }
}

const std::vector<std::string> house_schema{"schema", "--house"};

/// These windows, by number, of the example house with prices.
tools::AnsweredHouse example_house(const std::vector<std::size_t>& numbers, std::size_t most_window_hours) {
  const auto read = tools::read_house(text_of(examples_dir + "/house/quince-row.toml"));
  tools::AnsweredHouse house;
  house.name = read.house.name;
  house.options.ventilation_limit_m3_h = read.house.ventilation_limit_m3_h;
  house.options.assess = {.samples = 64, .width_checks = false, .most_window_hours = most_window_hours};
  std::vector<Survey> surveys;
  for (const auto number : numbers) {
    surveys.push_back(read.windows.at(number - 1).answers.survey);
    surveys.back().money = MoneyTerms{.price_per_kWh = 0.1, .carbon_kg_per_kWh = 0.2, .cost = 90.0};
    tools::AnsweredJob job;
    job.survey = surveys.back();
    job.currency = "EUR";
    house.windows.push_back(job);
  }
  house.answer = assess_house(surveys, house.options);
  for (const auto& window : house.answer.windows)
    house.windows.at(window.number - 1).assessment = window.assessment;
  return house;
}

TEST(Schema, FitsAHouse) {
  const auto house = json::parse(tools::json_house(example_house({1, 2, 3, 4, 5}, 0)));
  EXPECT_EQ(complaints(house, house_schema), "");
  EXPECT_EQ(house.at("windows").size(), 5u);
  EXPECT_EQ(house.at("windows").at(0).at("headline"), "hold");
  EXPECT_EQ(house.at("windows").at(0).at("name"), "Front bedroom, over the porch");
  EXPECT_FALSE(house.at("windows").at(0).contains("heat_saved_kWh_per_year"));
  EXPECT_TRUE(house.at("order_for_damp").at("steps").empty());
}

TEST(Schema, FitsAHouseWithAYearOfHours) {
  const auto house = json::parse(tools::json_house(example_house({5, 1}, 900'000)));
  EXPECT_EQ(complaints(house, house_schema), "");
  EXPECT_EQ(house.at("order_for_damp").at("steps").size(), 1u) << house.at("order_for_damp").dump();
}

TEST(Schema, FitsAHouseOnHoldAltogether) {
  const auto house = json::parse(tools::json_house(example_house({5}, 0)));
  EXPECT_EQ(complaints(house, house_schema), "");
  EXPECT_FALSE(house.contains("totals"));
}

TEST(Schema, RefusesAHouseThatIsNotOne) {
  const auto whole = json::parse(tools::json_house(example_house({1, 2, 5}, 0)));
  auto held = whole;
  held["windows"][1]["headline"] = "hold";
  EXPECT_NE(complaints(held, house_schema), "") << "a HOLD with savings";
  auto without = whole;
  without.erase("order_for_money");
  EXPECT_NE(complaints(without, house_schema), "");
  auto stranger = whole;
  stranger["score"] = 7;
  EXPECT_NE(complaints(stranger, house_schema), "");
}

TEST(Schema, FitsEveryKindOfFixing) {
  for (const auto kind :
       {FixingKind::turn_clips, FixingKind::screws, FixingKind::tape_only, FixingKind::beads}) {
    auto job = hand_made_answer();
    auto& plan = job.assessment.figures->plan.value();
    plan.fixing = kind;
    EXPECT_EQ(complaints(json::parse(tools::json_answer(job))), "");
    plan.pilot_depth_mm = plan.screw_length_mm = 0.0;
    EXPECT_EQ(complaints(json::parse(tools::json_answer(job))), "") << "depth not measured";
  }
}

TEST(Schema, RefusesAnAnswerThatIsNotOne) {
  const auto whole = json::parse(tools::json_answer(hand_made_answer()));
  auto without = whole;
  without.erase("headline");
  EXPECT_NE(complaints(without), "");
  auto with_a_stranger = whole;
  with_a_stranger["score"] = 7;
  EXPECT_NE(complaints(with_a_stranger), "");
  auto with_text = whole;
  with_text["now_and_with_sheet"]["heat_saved_kWh_per_year"]["p50"] = "much";
  EXPECT_NE(complaints(with_text), "");
  auto held = whole;
  held["headline"] = "hold";
  EXPECT_NE(complaints(held), "") << "a HOLD with savings";
}

}  // namespace
}  // namespace dewgap::test
