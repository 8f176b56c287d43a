// Weather files that are refused: short ones in bad_weather/, each with the lines of its .expected neighbour,
// and a year of hours edited as bad_weather/edits.csv says.
#include <gtest/gtest.h>

#include <filesystem>
#include <regex>

#include "dewgap/errors.hpp"
#include "dewgap/numerics/csv_text.hpp"
#include "run_cli.hpp"
#include "test_weather_support.hpp"

namespace dewgap::test {
namespace {

const std::string bad_weather_dir = tools_test_dir + "/bad_weather";

std::vector<std::string> bad_files() {
  auto files = files_in(bad_weather_dir, ".csv");
  std::erase_if(files, [](const std::string& path) { return path.ends_with("/edits.csv"); });
  return files;
}

std::string name_of(const std::string& path) {
  return std::filesystem::path(path).stem().string();
}

class BadWeather : public testing::TestWithParam<std::string> {};

TEST_P(BadWeather, IsRefusedWithTheExpectedLines) {
  const auto name = name_of(GetParam());
  const auto expected = text_of(bad_weather_dir + "/" + name + ".expected");
  EXPECT_FALSE(expected.empty());
  EXPECT_EQ(refusal(text_of(GetParam()), name + ".csv"), expected);
}

TEST_P(BadWeather, SaysFileLineAndColumnAndIsSafeToPrint) {
  const auto lines = lines_of(refusal(text_of(GetParam())));
  ASSERT_FALSE(lines.empty());
  EXPECT_LE(lines.size(), 21u);
  for (const auto& line : lines) {
    EXPECT_TRUE(std::regex_search(line, std::regex("^made\\.csv:([0-9]+:[0-9]+: .+| and [0-9]+ more)")))
        << line;
    for (const char c : line) EXPECT_GE(static_cast<unsigned char>(c), 0x20) << line;
  }
}

INSTANTIATE_TEST_SUITE_P(Files, BadWeather, testing::ValuesIn(bad_files()),
                         [](const auto& given) { return name_of(given.param); });

void edit(MadeWeather& made, const numerics::CsvTable& table, std::size_t row) {
  const auto first = static_cast<std::size_t>(table.number(row, "first"));
  const auto count = static_cast<std::size_t>(table.number(row, "count"));
  if (table.text(row, "value") == "drop") {
    made.drop(first, count);
    return;
  }
  for (std::size_t i = first; i < first + count; ++i)
    made.cell(i, table.text(row, "column")) = table.text(row, "value");
}

TEST(BadWeatherEdits, AreRefusedForWhatTheyAre) {
  const numerics::CsvTable table(text_of(bad_weather_dir + "/edits.csv"), "edits.csv");
  const auto good = made_weather();
  ASSERT_EQ(refusal(good.text()), "");
  ASSERT_GT(table.row_count(), 5u);
  for (std::size_t row = 0; row < table.row_count(); ++row) {
    auto made = good;
    edit(made, table, row);
    const auto first = static_cast<std::size_t>(table.number(row, "first"));
    const auto expected = replaced(table.text(row, "expected"), "LINE", std::to_string(made.line(first)));
    const auto told = refusal(made.text());
    EXPECT_NE(told.find(expected), std::string::npos) << table.text(row, "name") << "\n" << told;
    EXPECT_EQ(lines_of(told).size(), 1u) << told;  // nothing else is wrong with it
  }
}

TEST(BadWeatherEdits, SeveralFaultsAreToldAtOnceInTheOrderOfTheLines) {
  auto made = made_weather();
  made.cell(5, "wind_m_s") = "calm";
  for (std::size_t i = 100; i < 110; ++i) made.cell(i, "global_W_m2") = "";
  made.cell(3000, "air_temperature_C") = "999";
  made.drop(4000, 6);
  const auto lines = lines_of(refusal(made.text()));
  ASSERT_EQ(lines.size(), 4u);
  EXPECT_NE(lines[0].find("wind_m_s: \"calm\" is not a number"), std::string::npos) << lines[0];
  EXPECT_NE(lines[1].find("global_W_m2: 10 hours without a value"), std::string::npos) << lines[1];
  EXPECT_NE(lines[2].find("air_temperature_C: \"999\" is out of range"), std::string::npos) << lines[2];
  EXPECT_NE(lines[3].find("6 hours are missing before this row"), std::string::npos) << lines[3];
}

TEST(BadWeatherEdits, OfOneKindThreeAreToldAndTheRestCounted) {
  auto made = made_weather();
  for (auto& row : made.rows) row[made.position("wind_m_s")] = "calm";
  const auto lines = lines_of(refusal(made.text()));
  ASSERT_EQ(lines.size(), 3u);
  EXPECT_NE(lines[2].find("(and 8757 more like it)"), std::string::npos) << lines[2];
}

TEST(BadWeatherEdits, RepairCanBeRefused) {
  auto made = made_weather();
  made.cell(200, "wind_m_s") = "";
  EXPECT_EQ(refusal(made.text()), "");
  EXPECT_EQ(
      refusal(made.text(), "made.csv", {.longest_repair_h = 0}),
      fmt::format("made.csv:{}:27: wind_m_s: 1 hour without a value, from 9 January, 08:00; gaps are not to "
                  "be filled in\n",
                  made.line(200)));
  EXPECT_EQ(refusal(made_weather().text(), "made.csv", {.longest_repair_h = 0}), "");
}

TEST(BadWeatherEdits, OptionsOutsideTheirRangeThrow) {
  const auto made = made_weather();
  EXPECT_THROW(read_made(made, {.longest_repair_h = -1}), InvalidInput);
  EXPECT_THROW(read_made(made, {.longest_repair_h = 25}), InvalidInput);
  EXPECT_THROW(read_made(made, {.latitude_deg = 91.0}), InvalidInput);
  EXPECT_THROW(read_made(made, {.utc_offset_h = std::nan("")}), InvalidInput);
}

}  // namespace
}  // namespace dewgap::test
