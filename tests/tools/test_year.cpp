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

const SunSite in_london{51.5, -0.1, 0.0};

std::string year_answer(std::vector<std::string> options, const std::string& job = "old-sash.toml") {
  options.insert(options.begin(), {"year", examples_dir + "/" + job});
  const auto result = run_cli(options);
  EXPECT_EQ(result.exit_code, 0) << result.err;
  EXPECT_EQ(result.err, "");
  return result.out;
}

/// The first line that is no comment.
std::string header_of(const std::string& text) {
  for (const auto& line : lines_of(text))
    if (!line.starts_with("#")) return line;
  return {};
}

/// Every column of a quantity ends in its unit.
void expect_units(const std::string& header) {
  const std::regex known(
      "time|month|sheet|settled|misty_mornings|[a-z_]+_(C|pct|g_m2|l_h|W|h|kWh|m_s|deg|W_m2)");
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
  const auto text = year_answer({"--option", "breaks_bottom"});
  expect_units(header_of(text));
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
  const CsvTable hours(year_answer({"--option", "breaks_bottom"}), "hours.csv");
  const auto text = year_answer({"--option", "breaks_bottom", "--monthly", "--csv"});
  expect_units(header_of(text));
  const CsvTable months(text, "months.csv");
  ASSERT_EQ(months.row_count(), 13u);
  EXPECT_EQ(months.text(0, "month"), "9");
  EXPECT_EQ(months.text(12, "month"), "year");
  EXPECT_NEAR(months.number(0, "outdoor_C"), sum_of(hours, "outdoor_C", 0, 720) / 720.0, 0.01);
  EXPECT_NEAR(months.number(0, "heat_through_window_kWh"),
              sum_of(hours, "heat_through_window_W", 0, 720) / 1000.0, 0.01);
  for (const auto* column :
       {"hours_h", "hours_wet_h", "misty_mornings", "run_off_g_m2", "heat_through_window_kWh"})
    EXPECT_NEAR(sum_of(months, column, 0, 12), months.number(12, column), 0.7) << column;
  EXPECT_GT(months.number(12, "hours_wet_h"), 100.0) << "breaks wet this gap, else the sums say nothing";
  EXPECT_GT(months.number(12, "misty_mornings"), 10.0);
}

TEST(Year, JsonHasTheMonthsOfTheTable) {
  const auto document = json::parse(year_answer({"--json", "--case", "1"}));
  const CsvTable months(year_answer({"--monthly", "--csv", "--case", "1"}), "months.csv");
  ASSERT_EQ(document.at("months").size(), 12u);
  EXPECT_EQ(document.at("run").at("case"), 1);
  for (std::size_t i = 0; i < 12; ++i)
    EXPECT_NEAR(document.at("months").at(i).at("heat_through_window_kWh").get<double>(),
                months.number(i, "heat_through_window_kWh"), 0.001);
  EXPECT_EQ(document.at("year").at("hours_h"), 8760);
}

TEST(Year, HoursTellRoomWindAndSun) {
  const CsvTable hours(year_answer({"--option", "off_in_summer"}), "hours.csv");
  double most_sun = 0.0;
  for (std::size_t row = 0; row < hours.row_count(); row += 13) {
    EXPECT_GE(hours.number(row, "room_C"), hours.number(row, "outdoor_C"));
    EXPECT_GT(hours.number(row, "wind_m_s"), 0.0);
    EXPECT_GE(hours.number(row, "wind_angle_deg"), 0.0);
    EXPECT_LE(hours.number(row, "wind_angle_deg"), 180.0);
    most_sun = std::max(most_sun, hours.number(row, "sun_on_window_W_m2"));
  }
  EXPECT_GT(most_sun, 100.0);
  EXPECT_LT(most_sun, 1000.0);
  EXPECT_NEAR(sum_of(hours, "wind_m_s", 0, 8760) / 8760.0, 4.0, 0.001) << "London has no wind of its own";
}

TEST(Year, SaysThatItsHeatIsNotTheSaving) {
  const std::string words = "not the saving";
  for (const auto& options : {std::vector<std::string>{}, {"--monthly"}, {"--monthly", "--csv"}}) {
    const auto text = replaced(year_answer(options), "\n  ", " ");
    EXPECT_NE(text.find(words), std::string::npos) << text.substr(0, 500);
    EXPECT_NE(text.find("modelled from outdoor air plus an excess"), std::string::npos);
  }
  const auto schema = run_cli({"schema", "--year"}).out;
  EXPECT_NE(schema.find(words), std::string::npos);
}

TEST(Year, MetalHasNoTimberToTell) {
  const std::string job = "steel-casement.toml";
  const CsvTable hours(year_answer({}, job), "hours.csv");
  const CsvTable months(year_answer({"--monthly", "--csv"}, job), "months.csv");
  EXPECT_EQ(hours.text(100, "timber_pct"), "");
  EXPECT_NE(hours.text(100, "pool_g_m2"), "");
  EXPECT_EQ(months.text(0, "timber_max_pct"), "");
  const auto document = json::parse(year_answer({"--json"}, job));
  EXPECT_TRUE(document.at("months").at(0).at("timber_max_pct").is_null());
  EXPECT_TRUE(document.at("year").at("timber_max_pct").is_null());
}

TEST(Year, TimberAtTheCapIsMarked) {
  const auto text = replaced(year_answer({"--monthly", "--case", "1"}, "damp-shower-room.toml"), "\n  ", " ");
  EXPECT_NE(text.find("120.0*"), std::string::npos) << text;
  EXPECT_NE(text.find("as full of water as the model lets it be"), std::string::npos) << text;
  EXPECT_EQ(year_answer({"--monthly"}).find('*'), std::string::npos);
}

TEST(Year, SaysWhichCaseItIsAndWhatItStandsFor) {
  const auto document = json::parse(year_answer({"--json", "--case", "1"}, "steel-casement.toml"));
  const auto& run = document.at("run");
  const auto cases = run.at("cases_that_differ").get<std::size_t>();
  EXPECT_LT(cases, 100u);
  EXPECT_TRUE(run.at("cases_in_order").get<bool>());
  EXPECT_GE(run.at("share_of_weight").get<double>(), 0.01);
  const auto text = replaced(year_answer({"--monthly", "--case", "1"}, "steel-casement.toml"), "\n  ", " ");
  EXPECT_NE(text.find(fmt::format("plausible case 1 of {} (1: least margin over the dew point", cases)),
            std::string::npos)
      << text;
  const auto refused =
      run_cli({"year", examples_dir + "/steel-casement.toml", "--case", std::to_string(cases + 1)});
  EXPECT_EQ(refused.exit_code, 2);
  EXPECT_EQ(refused.out, "");
  EXPECT_NE(refused.err.find(fmt::format("--case {}", cases + 1)), std::string::npos) << refused.err;
}

TEST(Year, CaseOneIsWetterThanCaseAHundred) {
  const auto wet_hours = [](const char* number) {
    return json::parse(year_answer({"--json", "--case", number})).at("year").at("hours_wet_h").get<double>();
  };
  EXPECT_GT(wet_hours("1"), wet_hours("100"));
}

TEST(Year, ASheetThatIsOffLeavesTheGapEmpty) {
  const CsvTable hours(year_answer({"--option", "off_in_summer"}), "hours.csv");
  const auto off = std::size_t{8000};
  EXPECT_EQ(hours.text(off, "sheet"), "off");
  for (const auto* column : {"gap_C", "pane_face_C", "pool_g_m2", "timber_pct", "air_from_outdoors_l_h"})
    EXPECT_EQ(hours.text(off, column), "") << column;
  EXPECT_NE(hours.text(off, "heat_through_window_W"), "");
  const auto document = json::parse(year_answer({"--option", "off_in_summer", "--json"}));
  EXPECT_FALSE(document.at("months").at(10).contains("gap_C"));
  EXPECT_EQ(document.at("months").at(10).at("sheet_hangs_h"), 0);
  EXPECT_LT(document.at("year").at("sheet_hangs_h"), 8760);
}

TEST(Year, OnATerminalFitsAPhone) {
  for (const auto* option : {"sealed", "off_in_summer"})
    for (const auto& line : lines_of(year_answer({"--monthly", "--option", option})))
      EXPECT_LE(tools::columns_of(line), 62u) << line;
}

TEST(Year, RunsInTheWeatherOfAFile) {
  const Folder folder;
  using namespace std::chrono;
  auto made = made_weather(2023y / January / 1, 8760, in_london);
  made.rows.at(100).at(1).clear();
  for (std::size_t row = 0; row < made.rows.size(); ++row)
    made.cell(row, "relative_humidity_percent") = std::to_string(70 + row % 21);
  const auto path = folder.with("weather.csv", made.text());
  const auto document = json::parse(year_answer({"--weather", path, "--json"}));
  EXPECT_EQ(document.at("weather").at("source"), "made for a test");
  EXPECT_EQ(document.at("weather_file").at("repaired_hours"), 1);
  EXPECT_NEAR(document.at("year").at("outdoor_C").get<double>(), 10.0, 0.1);
  const auto text = year_answer({"--weather", path, "--monthly"});
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
  auto made = made_weather(2024y / January / 1, 8784, in_london);
  for (std::size_t row = 0; row < made.rows.size(); ++row)
    made.cell(row, "relative_humidity_percent") = std::to_string(70 + row % 21);
  const auto path = folder.with("weather.csv", made.text());
  const CsvTable hours(year_answer({"--weather", path}), "hours.csv");
  ASSERT_EQ(hours.row_count(), 8784u);
  std::size_t on_the_day = 0;
  for (std::size_t row = 0; row < hours.row_count(); ++row)
    on_the_day += hours.text(row, "time").starts_with("02-29") ? 1U : 0U;
  EXPECT_EQ(on_the_day, 24u);
}

TEST(Year, ToAFileIsWholeOrNotThere) {
  const Folder folder;
  const auto path = folder.file("year.csv");
  EXPECT_EQ(year_answer({"--output", path}), "");
  EXPECT_EQ(text_of(path), year_answer({}));
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
