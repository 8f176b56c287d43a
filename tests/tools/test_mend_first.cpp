// What stands in the way of fitting is told by vent and frost-check as assess tells it, before anything else.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <regex>

#include "run_cli.hpp"

namespace dewgap::test {
namespace {

const std::string rain = "Stop the rain that the window lets in.";

/// The old sash, but that rain comes in and its bottom rail is wet.
std::string wet_job() {
  auto job = text_of(examples_dir + "/old-sash.toml");
  job = std::regex_replace(job, std::regex("\nlets_rain_in = [^\n]*"), "\nlets_rain_in = \"yes\"");
  return std::regex_replace(job, std::regex("\nbottom_rail = [^\n]*"), "\nbottom_rail = \"wet now\"");
}

std::string answer(std::vector<std::string> arguments) {
  arguments.insert(arguments.end(), {"--window-hours", "10000"});
  const auto result = run_cli(arguments, wet_job());
  EXPECT_EQ(result.exit_code, 0) << result.err;
  return result.out;
}

TEST(MendFirstTold, ByVentInEachForm) {
  const auto text = answer({"vent", "-"});
  EXPECT_EQ(lines_of(text).at(1), "MEND FIRST - " + rain) << text;
  EXPECT_TRUE(answer({"vent", "-", "--csv"}).starts_with("# MEND FIRST: " + rain + "\n"));
  const auto mends = nlohmann::json::parse(answer({"vent", "-", "--json"})).at("mend_first");
  ASSERT_GE(mends.size(), 2u);
  EXPECT_EQ(mends.at(0).at("kind"), "water");
  EXPECT_EQ(mends.at(0).at("say"), rain);
}

TEST(MendFirstTold, AsAssessTellsIt) {
  const auto assessed = nlohmann::json::parse(
      run_cli({"assess", "-", "--json", "--samples", "64", "--window-hours", "0"}, wet_job()).out);
  EXPECT_NE(assessed.dump().find(rain), std::string::npos);
  const auto dumped = assessed.dump();
  for (const auto& mend : nlohmann::json::parse(answer({"vent", "-", "--json"})).at("mend_first"))
    EXPECT_NE(dumped.find(mend.at("say").get<std::string>()), std::string::npos) << mend;
}

TEST(MendFirstTold, ByFrostCheckWhichKeepsNothingThen) {
  const auto readings = tools_test_dir + "/good_readings/clear.csv";
  const auto text = answer({"frost-check", "-", "--readings", readings});
  EXPECT_NE(text.find("MEND FIRST, THEN LOOK AGAIN"), std::string::npos) << text;
  EXPECT_EQ(text.find("KEEP IT"), std::string::npos) << text;
  EXPECT_EQ(lines_of(text).at(1), "MEND FIRST - " + rain);
  const auto document = nlohmann::json::parse(answer({"frost-check", "-", "--readings", readings, "--json"}));
  EXPECT_EQ(document.at("frost_check").at("step"), "mend_first");
  EXPECT_EQ(document.at("mend_first").at(0).at("say"), rain);
}

}  // namespace
}  // namespace dewgap::test
