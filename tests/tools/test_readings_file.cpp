// The file of first frosty mornings: what is read, and every file of bad_readings/ refused with the lines of
// its .expected neighbour, exit code 2 and nothing on stdout.
#include "tools/readings/readings_file.hpp"

#include <gtest/gtest.h>

#include <filesystem>

#include "folder.hpp"
#include "run_cli.hpp"

namespace dewgap::test {
namespace {

class BadReadings : public testing::TestWithParam<std::string> {};

TEST_P(BadReadings, AreRefusedWithTheExpectedLines) {
  const auto& path = GetParam();
  for (const auto* verb : {"vent", "frost-check"}) {
    const auto result = run_cli({verb, examples_dir + "/old-sash.toml", "--readings", path});
    EXPECT_EQ(result.exit_code, 2);
    EXPECT_EQ(result.out, "");
    EXPECT_EQ(replaced(result.err, tools_test_dir + "/bad_readings/", ""),
              text_of(path.substr(0, path.size() - 4) + ".expected"));
  }
}

INSTANTIATE_TEST_SUITE_P(Corpus, BadReadings,
                         testing::ValuesIn(files_in(tools_test_dir + "/bad_readings", ".csv")),
                         [](const testing::TestParamInfo<std::string>& tested) {
                           return std::filesystem::path(tested.param).stem().string();
                         });

TEST(Readings, AreReadInAnyOrderOfColumns) {
  const auto readings = tools::read_readings(
      "mist,room_humidity_percent,date,outdoor_C\n\"all_over\",62,\"3 December, early\",-4.5\n"
      "none,not known,4 December,-1\n",
      "mornings.csv");
  ASSERT_EQ(readings.size(), 2u);
  EXPECT_EQ(readings[0].date, "3 December, early");
  EXPECT_EQ(readings[0].outdoor_C, -4.5);
  EXPECT_EQ(readings[0].room_C, std::nullopt);
  EXPECT_DOUBLE_EQ(readings[0].room_relative_humidity.value(), 0.62);
  EXPECT_EQ(readings[0].mist, WinterReading::Mist::all_over);
  EXPECT_EQ(readings[1].room_relative_humidity, std::nullopt);
  EXPECT_EQ(readings[1].mist, WinterReading::Mist::none);
}

TEST(Readings, TheFormWithItsExampleTakenInIsRead) {
  const auto form = run_cli({"starter", "--readings"}).out;
  EXPECT_EQ(form, tools::readings_form());
  const auto filled = replaced(form, "mist\n# 3", "mist\n3");
  ASSERT_NE(filled, form);
  const auto readings = tools::read_readings(filled, "form.csv");
  ASSERT_EQ(readings.size(), 1u);
  EXPECT_EQ(readings[0].date, "3 December");
  EXPECT_EQ(readings[0].room_C, 17.5);
  EXPECT_EQ(readings[0].mist, WinterReading::Mist::edges);
}

TEST(Readings, AnEmptyFormIsToldAsOne) {
  const Folder folder;
  const auto path = folder.with("form.csv", tools::readings_form());
  const auto result = run_cli({"frost-check", examples_dir + "/old-sash.toml", "--readings", path});
  EXPECT_EQ(result.exit_code, 2);
  EXPECT_EQ(result.err, path + ":9:1: there is a header, but no reading follows it\n");
}

TEST(Readings, AreAtMostAWinterOrTwo) {
  std::string text = "date,outdoor_C,mist\n";
  for (std::size_t i = 0; i < tools::most_readings; ++i) text += "day " + std::to_string(i) + ",0,none\n";
  EXPECT_EQ(tools::read_readings(text, "many.csv").size(), tools::most_readings);
  EXPECT_THROW(tools::read_readings(text + "a day,0,none\n", "many.csv"), std::runtime_error);
}

}  // namespace
}  // namespace dewgap::test
