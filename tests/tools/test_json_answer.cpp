#include "tools/answer/json_answer.hpp"

#include <gtest/gtest.h>

#include <limits>
#include <nlohmann/json.hpp>

#include "dewgap/version.hpp"
#include "hand_made_answer.hpp"

namespace dewgap::test {
namespace {

using nlohmann::json;

TEST(JsonAnswer, KeepsNumbersWhole) {
  const auto answer = json::parse(tools::json_answer(hand_made_answer()));
  EXPECT_EQ(answer.at("now_and_with_sheet").at("heat_saved_kWh_per_year").at("p50").get<double>(), 132.7);
  EXPECT_EQ(answer.at("inputs").at(0).at("value").get<double>(), 0.9013);
  EXPECT_EQ(answer.at("inputs").at(0).at("basis"), "measured");
  EXPECT_DOUBLE_EQ(
      answer.at("now_and_with_sheet").at("coldest_month_room_humidity_pct").at("p10").get<double>(), 42.0);
  EXPECT_EQ(answer.at("run").at("seed"), 1);
  EXPECT_EQ(answer.at("run").at("samples"), 256);
  EXPECT_EQ(answer.at("run").at("samples_left_out"), 3);
  EXPECT_EQ(answer.at("tool").at("version"), version);
  EXPECT_EQ(answer.at("flags").size(), 1u);
  EXPECT_EQ(answer.at("cautions").at(0).at("brief"), "Screws: keep to the depth.");
  EXPECT_EQ(answer.at("cautions").at(0).at("source"), "common practice, no source");
  EXPECT_EQ(answer.at("evidence").at(0).at("why_not"), "less than 10 K colder outside");
}

TEST(JsonAnswer, RecordsWhatTheFilesGiveAsTheyGiveIt) {
  const auto answer = json::parse(tools::json_answer(hand_made_answer()));
  const auto& survey = answer.at("survey");
  EXPECT_EQ(survey.at(0).at("key"), "window.opening_widths_mm");
  EXPECT_EQ(survey.at(0).at("value").dump(), "[903,900.5]");
  EXPECT_EQ(survey.at(0).at("unit"), "mm");
  EXPECT_FALSE(survey.at(0).contains("reading"));
  EXPECT_EQ(survey.at(1).at("reading"), 2);
  EXPECT_EQ(survey.at(2).at("basis"), "described");
  EXPECT_EQ(answer.at("money").at("terms").at(0).at("value").get<double>(), 0.12);
}

TEST(JsonAnswer, AShareIsNeverBeyondTheWhole) {
  auto job = hand_made_answer();
  job.assessment.figures->agree_share = 1.0 + 4e-16;  // weights summed
  const auto answer = json::parse(tools::json_answer(job));
  EXPECT_EQ(answer.at("vent").at("share_of_plausible_cases_that_agree").get<double>(), 1.0);
  job.assessment.figures->agree_share = 1.1;
  EXPECT_THROW(tools::json_answer(job), std::domain_error);
}

TEST(JsonAnswer, AnOddNameComesBackAsItWas) {
  auto job = hand_made_answer();
  job.survey.name = "a \"quoted\" \x1B[31m \xD7\x97 \xE2\x80\xAE name";
  const auto text = tools::json_answer(job);
  EXPECT_EQ(text.find('\x1B'), std::string::npos) << "controls are escaped";
  EXPECT_EQ(json::parse(text).at("job").at("name"), job.survey.name);
}

TEST(JsonAnswer, HoldHasNoKeyForAFigureEvenIfTheAnswerHeldSome) {
  auto job = hand_made_answer();
  job.assessment.headline = Headline::hold;
  const auto answer = json::parse(tools::json_answer(job));
  for (const auto* key :
       {"vent", "now_and_with_sheet", "money", "cut_and_fix", "inputs", "remedies", "after"})
    EXPECT_FALSE(answer.contains(key)) << key;
}

TEST(JsonAnswer, ThePlanGivesNoFigureThatItDoesNotHave) {
  auto job = hand_made_answer();
  auto& plan = job.assessment.figures->plan.value();
  const auto cut = [&] { return json::parse(tools::json_answer(job)).at("cut_and_fix"); };
  EXPECT_EQ(cut().at("sheet_count"), 1);
  EXPECT_EQ(cut().at("batten_first"), false);
  plan.pilot_depth_mm = plan.screw_length_mm = 0.0;
  EXPECT_FALSE(cut().contains("pilot_depth_mm")) << "not measured";
  EXPECT_FALSE(cut().contains("screw_length_mm"));
  plan.fixing = FixingKind::beads;
  EXPECT_EQ(cut().at("fixing"), "beads");
  EXPECT_FALSE(cut().contains("screw_from_sheet_edge_mm"));
}

TEST(JsonAnswer, ANumberThatIsNotFiniteIsNotWritten) {
  auto job = hand_made_answer();
  job.assessment.figures->vents.front().month_margin_K.p10 = std::numeric_limits<double>::infinity();
  EXPECT_THROW(tools::json_answer(job), std::domain_error);
}

}  // namespace
}  // namespace dewgap::test
