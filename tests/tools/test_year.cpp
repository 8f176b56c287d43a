// One case through a year: by hour, by month, and on a terminal.
#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <regex>

#include "dewgap/numerics/csv_text.hpp"
#include "folder.hpp"
#include "run_cli.hpp"
#include "test_weather_support.hpp"
#include "tools/answer/plain_text.hpp"

namespace dewgap::test {
namespace {

using nlohmann::json;
using numerics::CsvTable;

std::string year(std::vector<std::string> options) {
  options.insert(options.begin(), {"year", examples_dir + "/old-sash.toml"});
  const auto result = run_cli(options);
  EXPECT_EQ(result.exit_code, 0) << result.err;
  EXPECT_EQ(result.err, "");
  return result.out;
}

/// Every column of a quantity ends in its unit.
void expect_units(const std::string& header) {
  const std::regex known("time|month|sheet|settled|misty_mornings|[a-z_]+_(C|pct|g_m2|l_h|W|h|kWh)");
  std::size_t columns = 0;
  for (const auto& name : lines_of(replaced(header, ",", "\n"))) {
    EXPECT_TRUE(std::regex_match(name, known)) << name;
    ++columns;
  }
  EXPECT_GT(columns, 10u);
}

double sum_of(const CsvTable& table, const std::string& column, std::size_t first, std::size_t end) {
  double sum = 0.0;
  for (std::size_t row = first; row < end; ++row) sum += table.number(row, column);
  return sum;
}

TEST(Year, HasEveryHourFromAutumnOn) {
  const auto text = year({"--option", "breaks_bottom"});
  expect_units(lines_of(text).front());
  const CsvTable table(text, "year.csv");
  ASSERT_EQ(table.row_count(), 8760u);
  EXPECT_EQ(table.text(0, "time"), "09-01T00:00");
  EXPECT_EQ(table.text(30 * 24, "time"), "10-01T00:00");
  EXPECT_EQ(table.text(8759, "time"), "08-31T23:00");
  for (std::size_t row = 0; row < table.row_count(); row += 97) {
    EXPECT_EQ(table.text(row, "sheet"), "on");
    EXPECT_EQ(table.text(row, "settled"), "yes");
    EXPECT_GE(table.number(row, "pane_film_g_m2"), 0.0);
    EXPECT_GT(table.number(row, "gap_C"), table.number(row, "outdoor_C") - 6.0);
  }
}

TEST(Year, MonthsAddUpToTheHoursAndToTheYear) {
  const CsvTable hours(year({"--option", "breaks_bottom"}), "hours.csv");
  const auto text = year({"--option", "breaks_bottom", "--monthly", "--csv"});
  expect_units(lines_of(text).front());
  const CsvTable months(text, "months.csv");
  ASSERT_EQ(months.row_count(), 13u);
  EXPECT_EQ(months.text(0, "month"), "9");
  EXPECT_EQ(months.text(12, "month"), "year");
  EXPECT_NEAR(months.number(0, "outdoor_C"), sum_of(hours, "outdoor_C", 0, 720) / 720.0, 0.01);
  EXPECT_NEAR(months.number(0, "heat_kWh"), sum_of(hours, "heat_W", 0, 720) / 1000.0, 0.01);
  for (const auto* column : {"hours_h", "hours_wet_h", "misty_mornings", "run_off_g_m2", "heat_kWh"})
    EXPECT_NEAR(sum_of(months, column, 0, 12), months.number(12, column), 0.7) << column;
  EXPECT_GT(months.number(12, "hours_wet_h"), 100.0) << "breaks wet this gap, else the sums say nothing";
  EXPECT_GT(months.number(12, "misty_mornings"), 10.0);
}

TEST(Year, JsonHasTheMonthsOfTheTable) {
  const auto document = json::parse(year({"--json", "--case", "1"}));
  const CsvTable months(year({"--monthly", "--csv", "--case", "1"}), "months.csv");
  ASSERT_EQ(document.at("months").size(), 12u);
  EXPECT_EQ(document.at("run").at("case"), 1);
  for (std::size_t i = 0; i < 12; ++i)
    EXPECT_NEAR(document.at("months").at(i).at("heat_kWh").get<double>(), months.number(i, "heat_kWh"),
                0.001);
  EXPECT_EQ(document.at("year").at("hours_h"), 8760);
}

TEST(Year, CaseOneIsWetterThanCaseAHundred) {
  const auto wet_hours = [](const char* number) {
    return json::parse(year({"--json", "--case", number})).at("year").at("hours_wet_h").get<double>();
  };
  EXPECT_GT(wet_hours("1"), wet_hours("100"));
}

TEST(Year, ASheetThatIsOffLeavesTheGapEmpty) {
  const CsvTable hours(year({"--option", "off_in_summer"}), "hours.csv");
  const auto off = std::size_t{8000};
  EXPECT_EQ(hours.text(off, "sheet"), "off");
  for (const auto* column : {"gap_C", "pane_face_C", "pool_g_m2", "timber_pct", "air_from_outdoors_l_h"})
    EXPECT_EQ(hours.text(off, column), "") << column;
  EXPECT_NE(hours.text(off, "heat_W"), "");
  const auto document = json::parse(year({"--option", "off_in_summer", "--json"}));
  EXPECT_FALSE(document.at("months").at(10).contains("gap_C"));
  EXPECT_EQ(document.at("months").at(10).at("sheet_hangs_h"), 0);
  EXPECT_LT(document.at("year").at("sheet_hangs_h"), 8760);
}

TEST(Year, OnATerminalFitsAPhone) {
  for (const auto* option : {"sealed", "off_in_summer"})
    for (const auto& line : lines_of(year({"--monthly", "--option", option})))
      EXPECT_LE(tools::columns_of(line), 62u) << line;
}

TEST(Year, RunsInTheWeatherOfAFile) {
  const Folder folder;
  auto made = made_weather();
  made.rows.at(100).at(1).clear();
  const auto path = folder.with("weather.csv", made.text());
  const auto document = json::parse(year({"--weather", path, "--json"}));
  EXPECT_EQ(document.at("weather").at("source"), "made for a test");
  EXPECT_EQ(document.at("weather_file").at("repaired_hours"), 1);
  EXPECT_NEAR(document.at("year").at("outdoor_C").get<double>(), 10.0, 0.1);
  const auto text = year({"--weather", path, "--monthly"});
  EXPECT_NE(text.find("hours repaired: 1"), std::string::npos) << text;
  const auto refused =
      run_cli({"year", examples_dir + "/old-sash.toml", "--weather", path, "--longest-repair", "0"});
  EXPECT_EQ(refused.exit_code, 2);
  EXPECT_EQ(refused.out, "");
  EXPECT_TRUE(refused.err.starts_with(path + ":")) << refused.err;
}

TEST(Year, ALeapYearHasItsDay) {
  const Folder folder;
  using namespace std::chrono;
  const auto path = folder.with("weather.csv", made_weather(2024y / January / 1, 8784).text());
  const CsvTable hours(year({"--weather", path}), "hours.csv");
  ASSERT_EQ(hours.row_count(), 8784u);
  std::size_t on_the_day = 0;
  for (std::size_t row = 0; row < hours.row_count(); ++row)
    on_the_day += hours.text(row, "time").starts_with("02-29") ? 1U : 0U;
  EXPECT_EQ(on_the_day, 24u);
}

TEST(Year, ToAFileIsWholeOrNotThere) {
  const Folder folder;
  const auto path = folder.file("year.csv");
  EXPECT_EQ(year({"--output", path}), "");
  EXPECT_EQ(text_of(path), year({}));
  EXPECT_FALSE(std::filesystem::exists(path + ".part"));
  const auto job =
      folder.with("job.toml", replaced(text_of(examples_dir + "/old-sash.toml"),
                                       "protection = \"not protected\"", "protection = \"consent given\""));
  const auto refused =
      run_cli({"year", job, "--option", "weep_to_outdoors", "--output", folder.file("none")});
  EXPECT_EQ(refused.exit_code, 2);
  EXPECT_NE(refused.err.find("cannot be offered"), std::string::npos) << refused.err;
  EXPECT_FALSE(std::filesystem::exists(folder.file("none")));
}

}  // namespace
}  // namespace dewgap::test
