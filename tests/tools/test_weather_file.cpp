// A year of hours from a CSV text: what is read, moved, filled in and told.
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/climate/plane_irradiance.hpp"
#include "test_weather_support.hpp"

namespace dewgap::test {
namespace {

using std::chrono::April;
using std::chrono::February;
using std::chrono::January;
using std::chrono::July;
using std::chrono::year;

bool has_note(const tools::WeatherFile& file, const std::string& part) {
  return std::any_of(file.notes.begin(), file.notes.end(),
                     [&](const std::string& note) { return note.find(part) != std::string::npos; });
}

void expect_same_weather(const HourlyYear& one, const HourlyYear& other, double tolerance = 0.0) {
  ASSERT_EQ(one.air_temperature_C.size(), other.air_temperature_C.size());
  for (std::size_t i = 0; i < one.air_temperature_C.size(); ++i) {
    ASSERT_NEAR(one.air_temperature_C[i], other.air_temperature_C[i], tolerance) << i;
    ASSERT_NEAR(one.vapour_pressure_Pa[i], other.vapour_pressure_Pa[i], 100.0 * tolerance) << i;
    ASSERT_NEAR(one.global_W_m2[i], other.global_W_m2[i], 100.0 * tolerance) << i;
  }
}

TEST(WeatherFile, AWholeYearIsReadAsItStands) {
  const auto file = read_made(made_weather());
  EXPECT_EQ(file.year.air_temperature_C.size(), 8760u);
  EXPECT_EQ(file.repaired_hours, 0u);
  EXPECT_EQ(file.longest_repaired_gap_h, 0u);
  EXPECT_EQ(file.year.site.latitude_deg, 51.0);
  EXPECT_EQ(file.year.site.utc_offset_h, 1.0);
  EXPECT_EQ(file.year.elevation_m, 120.0);
  EXPECT_EQ(file.year.source, "made for a test");
  EXPECT_NEAR(file.year.air_temperature_C[4000], made_temperature_C(4000), 5e-4);
  EXPECT_NEAR(file.year.vapour_pressure_Pa[4000], vapour_pressure_Pa(file.year.air_temperature_C[4000], 0.8),
              1e-9);
  EXPECT_EQ(file.year.wind_m_s[17], 3.5);
  EXPECT_TRUE(file.year.modelled.sun_split);
  EXPECT_TRUE(file.year.modelled.cloud_cover);
  EXPECT_FALSE(file.year.modelled.wind);
  EXPECT_EQ(file.notes.size(), 2u);
}

TEST(WeatherFile, LineEndsMarksQuotesAndBlanksDoNotMatter) {
  const auto made = made_weather();
  const auto plain = read_made(made).year;
  std::string text = "\xEF\xBB\xBF";
  for (const char c : made.text()) {
    if (c == ',')
      text += " , ";
    else if (c == '\n')
      text += "\r\n";
    else
      text += c;
  }
  text.resize(text.size() - 2);  // the last line without its end
  const auto start = text.find("2023-01-01T00:00");
  text.replace(start, 16, "\t\"2023-01-01T00:00\" ");
  expect_same_weather(tools::read_weather(text, "-").year, plain);
}

TEST(WeatherFile, UnitsThatConvertExactlyAreRead) {
  auto made = made_weather();
  const auto plain = read_made(made).year;
  made.names = {"TIME_START", "Air_Temperature_F", "relative_humidity_share", "wind_km_h", "global_kJ_m2"};
  for (auto& row : made.rows) {
    row[1] = fmt::format("{:.10f}", 1.8 * std::stod(row[1]) + 32.0);
    row[2] = "0.8";
    row[3] = "12.6";
    row[4] = fmt::format("{:.10f}", 3.6 * std::stod(row[4]));
  }
  const auto converted = read_made(made).year;
  expect_same_weather(converted, plain, 1e-9);
  EXPECT_NEAR(converted.wind_m_s[0], 3.5, 1e-12);
}

TEST(WeatherFile, ALeapYearHas8784Hours) {
  const auto file = read_made(made_weather(year(2024) / January / 1, 8784));
  EXPECT_EQ(file.year.air_temperature_C.size(), 8784u);
  auto without_leap_day = made_weather(year(2024) / January / 1, 8784);
  without_leap_day.drop(24 * 59, 24);
  EXPECT_NE(refusal(without_leap_day.text()).find("24 hours are missing before this row, from 29 February"),
            std::string::npos);
}

// A heating year, and years that begin about a leap day.
TEST(WeatherFile, AYearThatBeginsElsewhereIsPutInOrder) {
  const auto plain = read_made(made_weather()).year;
  const auto file = read_made(made_weather(year(2022) / July / 1));
  EXPECT_TRUE(has_note(file, "begins on 1 July, 00:00"));
  expect_same_weather(file.year, plain);
  const auto leap = read_made(made_weather(year(2024) / January / 1, 8784)).year;
  expect_same_weather(read_made(made_weather(year(2023) / July / 1, 8784)).year, leap);
  expect_same_weather(read_made(made_weather(year(2024) / February / 29, 8784)).year, leap);
  expect_same_weather(read_made(made_weather(year(2024) / std::chrono::March / 1, 8760)).year, plain);
}

TEST(WeatherFile, HourEndingEqualsShiftedHourStarting) {
  auto made = made_weather();
  const auto plain = read_made(made).year;
  made.names[0] = "time_end";
  const auto end = made.rows;
  for (std::size_t i = 0; i + 1 < made.rows.size(); ++i) made.rows[i][0] = end[i + 1][0];
  made.rows.back()[0] = "2023-12-31T24:00";
  const auto file = read_made(made);
  EXPECT_TRUE(has_note(file, "end of each hour"));
  expect_same_weather(file.year, plain);
  made.rows.back()[0] = "2024-01-01T00:00:00";
  expect_same_weather(read_made(made).year, plain);
}

MadeWeather by_month_day_hour(const MadeWeather& made, const std::string& hour_name) {
  MadeWeather parts{made.comments, {"month", "day", hour_name}, {}};
  parts.names.insert(parts.names.end(), made.names.begin() + 1, made.names.end());
  for (const auto& row : made.rows) {
    const int hour = std::stoi(row[0].substr(11, 2)) + (hour_name == "hour_end" ? 1 : 0);
    parts.rows.push_back({row[0].substr(5, 2), row[0].substr(8, 2), std::to_string(hour)});
    parts.rows.back().insert(parts.rows.back().end(), row.begin() + 1, row.end());
  }
  return parts;
}

TEST(WeatherFile, MonthDayAndHourTellATypicalYear) {
  const auto plain = read_made(made_weather()).year;
  for (const auto* hour : {"hour_start", "hour_end"}) {
    expect_same_weather(read_made(by_month_day_hour(made_weather(), hour)).year, plain);
    const auto july = read_made(by_month_day_hour(made_weather(year(2022) / July / 1), hour));
    expect_same_weather(july.year, plain);
    EXPECT_TRUE(has_note(july, "begins on 1 July, 00:00"));
    const auto leap = by_month_day_hour(made_weather(year(2024) / January / 1, 8784), hour);
    EXPECT_EQ(read_made(leap).year.air_temperature_C.size(), 8784u);
  }
}

// Stamps on a clock with summer time; the year is kept by standard time.
TEST(WeatherFile, SummerTimeIsPutOnStandardTime) {
  auto made = made_weather();
  const auto plain = read_made(made).year;
  made.comments.erase(made.comments.begin() + 2);  // utc_offset_h comes from the times
  const auto times = made.rows;
  const std::size_t begin = 24 * (31 + 28 + 25) + 2;  // 26 March, 02:00
  const std::size_t end = 24 * (365 - 31 - 30 - 3) + 2;
  for (std::size_t i = 0; i < made.rows.size(); ++i) {
    const bool summer = i >= begin && i < end;
    made.rows[i][0] = (summer ? times[i + 1][0] + "+02:00" : times[i][0] + "+0100");
  }
  const auto file = read_made(made);
  EXPECT_EQ(file.year.site.utc_offset_h, 1.0);
  EXPECT_TRUE(has_note(file, "one clock, UTC+1 all year"));
  expect_same_weather(file.year, plain);
  for (auto& row : made.rows) row[0].resize(16);
  EXPECT_NE(refusal(made.text(), "made.csv", {.utc_offset_h = 1.0}).find("a clock with summer time?"),
            std::string::npos);
}

TEST(WeatherFile, UtcStampsGoToTheClockThatIsAskedFor) {
  auto made = made_weather();
  const auto plain = read_made(made).year;
  const auto before = iso_text(std::chrono::local_days(year(2022) / std::chrono::December / 31), 23);
  for (std::size_t i = made.rows.size() - 1; i > 0; --i) made.rows[i][0] = made.rows[i - 1][0] + "Z";
  made.rows[0][0] = before + "Z";
  expect_same_weather(read_made(made).year, plain);
}

TEST(WeatherFile, OptionsGoBeforeTheFile) {
  auto made = made_weather();
  made.comments.clear();
  const auto file = read_made(made, {.latitude_deg = 51.0, .longitude_deg = 10.0, .utc_offset_h = 1.0});
  EXPECT_EQ(file.year.site.longitude_deg, 10.0);
  EXPECT_EQ(file.year.elevation_m, 0.0);
  EXPECT_TRUE(has_note(file, "elevation is not given"));
  EXPECT_EQ(file.year.source, "weather file made.csv");
  const auto moved = read_made(made_weather(), {.latitude_deg = 50.0});
  EXPECT_EQ(moved.year.site.latitude_deg, 50.0);
  EXPECT_TRUE(has_note(moved, "latitude_deg: 50 was given and goes before the file's 51"));
}

TEST(WeatherFile, UnknownColumnsAreToldAndLeftOut) {
  auto made = made_weather();
  for (const auto* name : {"pressure_Pa", "wind_gust_m_s", "air_temperature_flag", "year"}) {
    made.names.emplace_back(name);
    for (auto& row : made.rows) row.emplace_back("word");
  }
  const auto file = read_made(made);
  EXPECT_TRUE(has_note(file, "Not used: columns pressure_Pa, wind_gust_m_s, air_temperature_flag, year."));
  expect_same_weather(file.year, read_made(made_weather()).year);
}

TEST(WeatherFile, WindIsTakenAsConstantWhenMissing) {
  auto made = made_weather();
  made.names[3] = "remark";
  const auto file = read_made(made);
  EXPECT_TRUE(file.year.modelled.wind);
  EXPECT_TRUE(has_note(file, "4 m/s in every hour"));
  EXPECT_EQ(file.year.wind_m_s, std::vector<double>(8760, default_wind_m_s));
}

// Summer sun in January, and facing north.
TEST(WeatherFile, ASouthernSite) {
  const SunSite wellington{-41.3, 174.8, 12.0};
  const auto made = made_weather(year(2023) / January / 1, 8760, wellington);
  const auto file = read_made(made);
  EXPECT_EQ(file.notes.size(), 2u);  // no complaint about the clock
  const auto north = plane_irradiance_of_year(file.year, {90.0, 0.0});
  const auto south = plane_irradiance_of_year(file.year, {90.0, 180.0});
  double sum_north = 0.0;
  double sum_south = 0.0;
  for (std::size_t i = 24 * 151; i < 24 * 243; ++i) {
    sum_north += north[i].total_W_m2();
    sum_south += south[i].total_W_m2();
  }
  EXPECT_GT(sum_north, 2.0 * sum_south);
  // A wrong sign would move the sun by 23.3 h here and look right; a wrong longitude does not.
  auto elsewhere = made;
  elsewhere.comments[1] = "longitude_deg: 80";
  EXPECT_NE(refusal(elsewhere.text()).find("of the sun falls into hours when it is down"), std::string::npos);
}

}  // namespace
}  // namespace dewgap::test
