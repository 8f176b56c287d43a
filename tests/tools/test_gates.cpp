// No saving, size to cut or figure for drilling, in text or JSON, while a safety answer is unsafe or missing.
#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <nlohmann/json.hpp>
#include <regex>

#include "run_cli.hpp"
#include "tools/job/field.hpp"

namespace dewgap::test {
namespace {

struct GateCase {
  std::string key;
  std::string answer;  ///< empty: the line is left out
  bool holds = true;
};

void PrintTo(const GateCase& gate, std::ostream* out) {
  *out << gate.key << " = " << gate.answer;
}

const std::vector<std::string> gate_keys{"way_out", "burning", "fresh_air", "protection", "old_glass"};
const std::vector<std::pair<std::string, std::string>> safe_answers{
    {"way_out", "not a way out"}, {"burning", "nothing"},          {"burning", "balanced flue"},
    {"fresh_air", "another way"}, {"protection", "not protected"}, {"protection", "consent given"},
    {"old_glass", "plain"}};

bool is_safe(const std::string& key, const std::string& answer) {
  return std::find(safe_answers.begin(), safe_answers.end(), std::pair(key, answer)) != safe_answers.end();
}

/// Every permitted answer of every gate, "not known", and no line at all.
std::vector<GateCase> gate_cases() {
  std::vector<GateCase> cases;
  for (const auto& key : gate_keys) {
    const auto* field = tools::job_table().find("settle_first", key);
    for (const auto word : std::get<tools::WordRule>(field->rule).words)
      cases.push_back({key, std::string(word), !is_safe(key, std::string(word))});
    cases.push_back({key, "not known", true});
    cases.push_back({key, "", true});
  }
  return cases;
}

/// The old sash with one safety answer changed or taken away.
std::string job_with(const GateCase& gate) {
  const auto job = text_of(examples_dir + "/old-sash.toml");
  const std::regex line("\n" + gate.key + " = \"[^\"]*\"");
  EXPECT_TRUE(std::regex_search(job, line)) << gate.key;
  const auto replacement =
      gate.answer.empty() ? std::string() : "\n" + gate.key + " = \"" + gate.answer + "\"";
  return std::regex_replace(job, line, replacement);
}

// A safety question holds before any year of hours is asked for.
const std::vector<std::string> assess_stdin{"assess",         "-", "--samples", "16",
                                            "--window-hours", "0", "--money",   examples_dir + "/money.toml"};

class Gates : public testing::TestWithParam<GateCase> {};

TEST_P(Gates, HoldPrintsNothingToSaveCutOrDrill) {
  const auto job = job_with(GetParam());
  const auto result = run_cli(assess_stdin, job);
  ASSERT_EQ(result.exit_code, 0) << result.err;
  EXPECT_EQ(result.out.find("HOLD: ") != std::string::npos, GetParam().holds) << result.out;
  const std::regex figure(
      "kWh|EUR|W/\\(|[0-9] ?(mm|%)|turn clips|[0-9] screws|pilot|Heat saved|CUT:|FIX|TAPE|GUESSED");
  EXPECT_EQ(std::regex_search(result.out, figure), !GetParam().holds) << result.out;
}

TEST_P(Gates, HoldHasNoKeyForSavingCutOrDrilling) {
  auto json_arguments = assess_stdin;
  json_arguments.emplace_back("--json");
  const auto result = run_cli(json_arguments, job_with(GetParam()));
  ASSERT_EQ(result.exit_code, 0) << result.err;
  const auto json = nlohmann::json::parse(result.out);
  EXPECT_EQ(json.at("headline") == "hold", GetParam().holds);
  for (const auto* key :
       {"now_and_with_sheet", "money", "cut_and_fix", "vent", "inputs", "remedies", "after"})
    EXPECT_FALSE(GetParam().holds && json.contains(key)) << key;
  EXPECT_EQ(json.contains("now_and_with_sheet"), !GetParam().holds);
  const std::regex key_of_a_figure(
      "\"[a-z_A-Z0-9]*(_kWh|_mm|_W_m2K|saved|cut|screw|pilot|hole)[a-z_A-Z0-9]*\":");
  EXPECT_EQ(std::regex_search(result.out, key_of_a_figure), !GetParam().holds);
  if (!GetParam().holds) return;
  ASSERT_EQ(json.at("settle_first").at("open").size(), 1u);
  EXPECT_EQ(json.at("settle_first").at("open").at(0).at("gate"), GetParam().key);
  EXPECT_EQ(json.at("settle_first").at("open").at(0).at("answered"),
            !(GetParam().answer.empty() || GetParam().answer == "not known"));
}

INSTANTIATE_TEST_SUITE_P(EveryAnswer, Gates, testing::ValuesIn(gate_cases()),
                         [](const testing::TestParamInfo<GateCase>& tested) {
                           auto name = tested.param.key + "_is_" +
                                       (tested.param.answer.empty() ? "left_out" : tested.param.answer);
                           for (char& c : name)
                             if (!std::isalnum(static_cast<unsigned char>(c))) c = '_';
                           return name;
                         });

}  // namespace
}  // namespace dewgap::test
