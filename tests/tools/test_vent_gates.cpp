// An open safety question suppresses every figure of the verbs that look at a year of hours, in each form.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <regex>

#include "run_cli.hpp"

namespace dewgap::test {
namespace {

const std::vector<std::string> gate_keys{"way_out", "burning", "fresh_air", "protection", "old_glass"};

/// The old sash with the answer to one safety question taken away.
std::string job_without(const std::string& key) {
  const auto job = text_of(examples_dir + "/old-sash.toml");
  const std::regex line("\n" + key + " = \"[^\"]*\"");
  EXPECT_TRUE(std::regex_search(job, line)) << key;
  return std::regex_replace(job, line, "");
}

std::string held(std::vector<std::string> arguments, const std::string& job) {
  const auto result = run_cli(arguments, job);
  EXPECT_EQ(result.exit_code, 0) << result.err;
  EXPECT_EQ(result.err, "");
  return result.out;
}

class VentGates : public testing::TestWithParam<std::string> {};

TEST_P(VentGates, NoFigureInText) {
  const auto job = job_without(GetParam());
  const std::regex figure("kWh|[0-9] ?(mm|%)|TAPE|BREAKS|wet hours|g/m2|misty|Misty");
  for (const auto& text : {held({"vent", "-"}, job), held({"year", "-", "--monthly"}, job)}) {
    EXPECT_NE(text.find("HOLD: "), std::string::npos) << text;
    EXPECT_FALSE(std::regex_search(text, figure)) << text;
  }
}

TEST_P(VentGates, NoKeyInJson) {
  const auto job = job_without(GetParam());
  for (const auto& text : {held({"vent", "-", "--json"}, job), held({"year", "-", "--json"}, job)}) {
    const auto document = nlohmann::json::parse(text);
    EXPECT_EQ(document.at("verdict"), "hold");
    for (const auto* key :
         {"advice", "middle_case", "frost_check", "months", "year", "case_values", "weather"})
      EXPECT_FALSE(document.contains(key)) << key;
    EXPECT_EQ(document.at("settle_first").at("open").at(0).at("gate"), GetParam());
  }
}

TEST_P(VentGates, NoRowInATable) {
  const auto job = job_without(GetParam());
  for (const auto& text : {held({"vent", "-", "--csv"}, job), held({"year", "-"}, job),
                           held({"year", "-", "--monthly", "--csv"}, job)}) {
    const auto lines = lines_of(text);
    ASSERT_EQ(lines.size(), 2u) << text;
    EXPECT_TRUE(lines.front().starts_with("# HOLD: ")) << text;
  }
}

INSTANTIATE_TEST_SUITE_P(EveryGate, VentGates, testing::ValuesIn(gate_keys),
                         [](const testing::TestParamInfo<std::string>& tested) { return tested.param; });

}  // namespace
}  // namespace dewgap::test
