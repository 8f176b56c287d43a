// Weather files that pass line by line and yet cannot be right, or are to be doubted.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "dewgap/climate/places.hpp"
#include "folder.hpp"
#include "hand_made_advice.hpp"
#include "hand_made_answer.hpp"
#include "run_cli.hpp"
#include "test_weather_support.hpp"
#include "tools/answer/json_vent.hpp"
#include "tools/answer/plain_text.hpp"
#include "tools/answer/text_answer.hpp"
#include "tools/answer/text_vent.hpp"
#include "tools/answer/words.hpp"
#include "tools/weather/place_check.hpp"

namespace dewgap::test {
namespace {

using nlohmann::json;

const SunSite london{51.5, -0.1, 0.0};
const SunSite wellington{-41.3, 174.8, 12.0};

MadeWeather weather_at(const SunSite& site) {
  return made_weather(std::chrono::year(2023) / std::chrono::January / 1, 8760, site);
}

/// As weather_at, with humidity that changes.
MadeWeather usual_weather(const SunSite& site) {
  auto made = weather_at(site);
  for (std::size_t row = 0; row < made.rows.size(); ++row)
    made.cell(row, "relative_humidity_percent") = std::to_string(70 + row % 21);
  return made;
}

void rename(MadeWeather& made, const std::string& name, const std::string& other) {
  made.names.at(made.position(name)) = other;
}

/// The text with its line breaks taken out.
std::string unwrapped(const std::string& text) {
  return replaced(text, "\n  ", " ");
}

TEST(WeatherPlausible, CelsiusUnderFahrenheitIsRefused) {
  auto made = weather_at(london);
  rename(made, "air_temperature_C", "air_temperature_F");
  const auto told = refusal(made.text());
  EXPECT_TRUE(holds(told, "made.csv:6:12: air_temperature_F: the warmest month's mean would be -8.0 C"))
      << told;
  EXPECT_EQ(lines_of(told).size(), 1u) << told;
}

TEST(WeatherPlausible, FahrenheitUnderCelsiusIsRefused) {
  auto made = weather_at(london);
  for (std::size_t row = 0; row < made.rows.size(); ++row)
    made.cell(row, "air_temperature_C") = fmt::format("{:.2f}", 28.0 + made_temperature_C(row));
  const auto told = refusal(made.text());
  EXPECT_TRUE(holds(told, "the year's mean would be 38.0 C (expected: -60 to 36 C)")) << told;
}

TEST(WeatherPlausible, SummerInTheWrongHalfOfTheYearIsRefused) {
  auto made = weather_at(london);
  made.comments.front() = "latitude_deg: -51.5";
  const auto told = refusal(made.text());
  EXPECT_TRUE(holds(told, "made.csv:6:12: air_temperature_C: June to August have")) << told;
  EXPECT_TRUE(holds(told, "latitude -51.5: a colder June to August")) << told;
}

TEST(WeatherPlausible, ColdPlacesAreNotRefused) {
  auto polar = weather_at({78.2, 15.6, 1.0});
  for (std::size_t row = 0; row < polar.rows.size(); ++row)
    polar.cell(row, "air_temperature_C") = fmt::format("{:.2f}", made_temperature_C(row) - 15.0);
  EXPECT_EQ(refusal(polar.text()), "");
  auto high = weather_at({46.5, 8.0, 1.0});  // a summit of 3571 m
  for (std::size_t row = 0; row < high.rows.size(); ++row)
    high.cell(row, "air_temperature_C") = fmt::format("{:.2f}", made_temperature_C(row) - 18.0);
  high.comments.at(3) = "elevation_m: 3571";
  EXPECT_EQ(refusal(high.text()), "");
}

TEST(WeatherPlausible, CloudInSharesUnderPerCentIsRefused) {
  auto made = usual_weather(london);
  made.names.emplace_back("cloud_cover_percent");
  for (std::size_t row = 0; row < made.rows.size(); ++row)
    made.rows[row].push_back(row % 2 == 0 ? "0.4" : "1");
  EXPECT_TRUE(holds(refusal(made.text()), "cloud_cover_percent: the largest value of the year is 1 %"));
}

TEST(WeatherPlausible, WhatIsSeldomRightIsAWarning) {
  EXPECT_TRUE(read_made(usual_weather(london)).warnings.empty());
  auto made = weather_at(london);  // humidity 80 % in every hour
  for (std::size_t row = 0; row < made.rows.size(); ++row) made.cell(row, "wind_m_s") = "0";
  const auto warnings = read_made(made).warnings;
  ASSERT_EQ(warnings.size(), 2u);
  EXPECT_EQ(warnings[0], "The weather file's humidity hardly changes: 80 % in every hour.");
  EXPECT_EQ(warnings[1], "The weather file's mean wind is 0.0 m/s; usual is 0.3 to 12 m/s.");
}

TEST(WeatherPlausible, FiguresAreThoseOfTheHours) {
  const auto file = read_made(usual_weather(london));
  EXPECT_NEAR(file.figures.mean_C, 10.0, 0.01);
  EXPECT_NEAR(file.figures.coldest_month_C(), 2.2, 0.2);
  EXPECT_NEAR(file.figures.warmest_month_C(), 17.8, 0.2);
  EXPECT_NEAR(file.figures.relative_humidity, 0.80, 0.001);
  EXPECT_NEAR(file.figures.relative_humidity_sd, 0.0606, 0.001);
  EXPECT_NEAR(file.figures.wind_m_s, 3.5, 1e-9);
  EXPECT_EQ(file.figures.latitude_deg, 51.5);
}

TEST(WeatherPlausible, NamesTheColumnsItDoesNotUse) {
  auto made = usual_weather(london);
  made.names.insert(made.names.end(), {"rain_mm", "soil", "flag_7"});
  for (auto& row : made.rows) row.insert(row.end(), {"1", "2", "3"});
  const auto file = read_made(made);
  EXPECT_EQ(file.ignored_columns, (std::vector<std::string>{"rain_mm", "soil", "flag_7"}));
  tools::UsedWeather used{.ignored_columns = file.ignored_columns, .figures = file.figures};
  const auto sentence = tools::weather_file_sentence(used);
  EXPECT_TRUE(holds(sentence, "; not used: rain_mm, soil and 1 more.")) << sentence;
  EXPECT_TRUE(holds(sentence, "FILE: 51.5 N, 0.1 W; mean 10.0 C, coldest month 2.")) << sentence;
  EXPECT_LE(tools::wrapped(sentence, 62, "", "  ").size(), 3u);
}

TEST(WeatherAtPlace, TheSamePlaceIsNotDoubted) {
  const auto figures = read_made(usual_weather(london)).figures;
  EXPECT_TRUE(tools::doubts_at_place(figures, {.nearest = "london"}).empty());
  EXPECT_TRUE(tools::doubts_at_place(figures, {.nearest = "no such place"}).empty());
  EXPECT_FALSE(tools::other_hemisphere(figures, {.nearest = "london"}));
}

TEST(WeatherAtPlace, DistanceIsDoubtedUnlessTheJobSaysSo) {
  const auto figures = read_made(usual_weather(london)).figures;
  const auto doubts = tools::doubts_at_place(figures, {.nearest = "dublin"});  // 468 km
  ASSERT_EQ(doubts.size(), 1u);
  EXPECT_EQ(doubts[0],
            "The weather file's station (51.5 N, 0.1 W) lies 468 km from the job's place, Dublin.");
  EXPECT_TRUE(tools::doubts_at_place(figures, {.nearest = "dublin", .distance_km = 230.0}).empty());
}

TEST(WeatherAtPlace, TemperatureAndHumidityAreHeldAgainstTheNormals) {
  auto figures = read_made(usual_weather(london)).figures;
  const double january_C = find_place("london")->months[0].mean_C;
  figures.month_C[0] = january_C - 7.9;
  EXPECT_TRUE(tools::doubts_at_place(figures, {.nearest = "london"}).empty());
  figures.month_C[0] = january_C - 8.1;
  figures.relative_humidity = 0.45;
  const auto doubts = tools::doubts_at_place(figures, {.nearest = "london"});
  ASSERT_EQ(doubts.size(), 2u);
  EXPECT_TRUE(holds(doubts[0], "C in January and")) << doubts[0];
  EXPECT_TRUE(holds(doubts[1], "relative humidity is 45 % on average, London's 76 %")) << doubts[1];
  // A high job's normals are colder.
  EXPECT_EQ(tools::doubts_at_place(figures, {.nearest = "london", .elevation_m = 900.0}).size(), 1u);
}

TEST(WeatherAtPlace, TheOtherHemisphereIsRefused) {
  const Folder folder;
  const auto made = weather_at(wellington);
  ASSERT_EQ(refusal(made.text()), "");
  const auto path = folder.with("weather.csv", made.text());
  const auto refused = run_cli({"year", examples_dir + "/old-sash.toml", "--weather", path, "--monthly"});
  EXPECT_EQ(refused.exit_code, 2);
  EXPECT_EQ(refused.out, "");
  EXPECT_EQ(refused.err, path +
                             ":1:1: latitude_deg: -41.3 lies on the other side of the equator than the job's "
                             "place, London (expected: about 51.5, north positive)\n");
}

TEST(WeatherTold, WarningsStandInTextInJsonAndOnStderr) {
  const Folder folder;
  const auto path = folder.with("weather.csv", weather_at({43.6, 10.4, 1.0}).text());
  const std::string warning = "lies 1180 km from the job's place, London.";
  for (const auto* form : {"--monthly", "--json", "--csv"}) {
    const auto told = run_cli({"year", examples_dir + "/old-sash.toml", "--weather", path, form});
    EXPECT_EQ(told.exit_code, 0) << told.err;
    EXPECT_EQ(lines_of(told.err).size(), 2u) << told.err;  // and that humidity never changes
    EXPECT_TRUE(holds(told.err, path + ": WARNING: The weather file's station")) << told.err;
    EXPECT_TRUE(holds(unwrapped(told.out), warning)) << form;
    if (std::string(form) == "--json") {
      EXPECT_EQ(json::parse(told.out).at("weather_file").at("warnings").size(), 2u);
    }
  }
}

TEST(WeatherTold, AnswersAndVentDecisionsEchoTheFile) {
  tools::UsedWeather used;
  used.figures = read_made(usual_weather(london)).figures;
  used.warnings = {"It is to be doubted."};
  used.ignored_columns = {"rain_mm"};
  auto answered = hand_made_answer();
  answered.weather = used;
  auto advised = hand_made_advised_job();
  advised.job.weather = used;
  for (const auto& text : {tools::text_answer(answered), tools::text_vent(advised)}) {
    EXPECT_TRUE(holds(text, "WARNING: It is to be doubted.")) << text;
    EXPECT_TRUE(holds(unwrapped(text), "humidity 80 %, wind 3.5 m/s")) << text;
    EXPECT_TRUE(holds(unwrapped(text), "not used: rain_mm.")) << text;
    EXPECT_LT(text.find("WARNING"), text.find("FILE: ")) << "at the top";
  }
  const auto told = json::parse(tools::json_vent(advised)).at("weather_file");
  EXPECT_EQ(told.at("ignored_columns"), json({"rain_mm"}));
  EXPECT_NEAR(told.at("outdoor_humidity_pct").get<double>(), 80.0, 0.1);
}

}  // namespace
}  // namespace dewgap::test
