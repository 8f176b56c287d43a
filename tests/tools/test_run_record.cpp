// The run record of a report: what it holds, and that the same figures come from it.
#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "folder.hpp"
#include "run_cli.hpp"
#include "test_weather_support.hpp"
#include "tools/report/house_text.hpp"
#include "tools/weather/checksum.hpp"

namespace dewgap::test {
namespace {

using Json = nlohmann::ordered_json;

Json report_of(std::vector<std::string> arguments) {
  arguments.insert(arguments.begin(), "report");
  arguments.emplace_back("--json");
  const auto result = run_cli(arguments);
  EXPECT_EQ(result.exit_code, 0) << result.err;
  return Json::parse(result.out);
}

/// The record's own command, its files written into a folder.
std::vector<std::string> arguments_of(const Json& record, const Folder& folder,
                                      const std::string& weather_path) {
  std::vector<std::string> arguments{
      folder.with(record.at("job_file_name").get<std::string>(), record.at("job_file").get<std::string>())};
  if (record.contains("money_file"))
    arguments.insert(arguments.end(),
                     {"--money", folder.with("money.toml", record.at("money_file").get<std::string>())});
  const auto& options = record.at("options");
  if (record.contains("weather_file"))
    arguments.insert(arguments.end(), {"--weather", weather_path, "--longest-repair",
                                       std::to_string(options.at("longest_repair_h").get<int>())});
  for (const auto& [option, key] :
       {std::pair{"--samples", "samples"}, {"--seed", "seed"}, {"--window-hours", "most_window_hours"}})
    arguments.insert(arguments.end(), {option, std::to_string(options.at(key).get<std::uint64_t>())});
  return arguments;
}

/// What the files give stands in their order, which the record's are free to change.
void sort_given(Json& answer) {
  auto& given = answer.at("survey");
  std::stable_sort(given.begin(), given.end(), [](const Json& one, const Json& other) {
    return one.at("key").get<std::string>() < other.at("key").get<std::string>();
  });
}

Json with_sorted_surveys(Json document) {
  if (document.contains("windows"))
    for (auto& window : document.at("windows")) sort_given(window.at("answer"));
  else
    sort_given(document.at("answer"));
  return document;
}

void expect_made_again(const Json& document, const Folder& folder, const std::string& weather_path = {}) {
  const auto& record = document.at("run_record");
  const auto again = report_of(arguments_of(record, folder, weather_path));
  EXPECT_EQ(again.at("run_record"), record) << "the files of the record stay as they are";
  EXPECT_EQ(with_sorted_surveys(again), with_sorted_surveys(document));
}

const std::string recorded_house = examples_dir + "/house/quince-row.toml";
const std::string money = examples_dir + "/money.toml";

/// A year with a gap of five hours, which is filled in on request alone.
std::string weather_with_a_gap(const Folder& folder) {
  auto made = made_weather(std::chrono::year(2023) / std::chrono::January / 1, 8760, {51.5, -0.1, 0.0});
  for (std::size_t row = 0; row < made.rows.size(); ++row)
    made.cell(row, "relative_humidity_percent") = std::to_string(70 + row % 21);
  made.drop(1000, 5);
  return folder.with("site.csv", made.text());
}

TEST(RunRecord, AHouseIsMadeAgainFromItsOwnRecord) {
  const auto document =
      report_of({recorded_house, "--money", money, "--samples", "32", "--seed", "7", "--window-hours", "0"});
  const auto& record = document.at("run_record");
  EXPECT_EQ(record.at("command"),
            "dewgap report house.toml --money money.toml --samples 32 --seed 7 --window-hours 0");
  EXPECT_FALSE(document.at("windows").at(0).contains("run_record")) << "the house's record is the one";
  expect_made_again(document, Folder());
}

TEST(RunRecord, AHouseIsMadeAgainWithItsWeatherAndItsRepair) {
  const Folder folder;
  const auto path = weather_with_a_gap(folder);
  const std::vector<std::string> arguments{folder.with("two.toml", example_house_of(2)),
                                           "--weather",
                                           path,
                                           "--longest-repair",
                                           "6",
                                           "--samples",
                                           "16",
                                           "--window-hours",
                                           "0"};
  const auto document = report_of(arguments);
  const auto& record = document.at("run_record");
  EXPECT_EQ(record.at("options").at("longest_repair_h"), 6);
  EXPECT_NE(record.at("command").get<std::string>().find("--longest-repair 6"), std::string::npos);
  const auto& weather = record.at("weather_file");
  EXPECT_EQ(weather.at("name"), "site.csv");
  EXPECT_EQ(weather.at("rows"), 8755);
  EXPECT_EQ(weather.at("repaired_hours"), 5);
  EXPECT_EQ(weather.at("fnv1a_64"), tools::checksum_text(tools::fnv1a_64(text_of(path))));
  expect_made_again(document, folder, path);
}

TEST(RunRecord, AWindowIsMadeAgainWithItsWeatherAndItsRepair) {
  const Folder folder;
  const auto path = weather_with_a_gap(folder);
  const auto document =
      report_of({examples_dir + "/old-sash.toml", "--money", money, "--weather", path, "--longest-repair",
                 "5", "--samples", "16", "--seed", "3", "--window-hours", "800000"});
  expect_made_again(document, folder, path);
  auto other = document.at("run_record");
  other.at("options").at("longest_repair_h") = 4;
  auto refused = arguments_of(other, folder, path);
  refused.insert(refused.begin(), "report");
  EXPECT_EQ(run_cli(refused).exit_code, 2) << "the repair matters";
}

TEST(RunRecord, NamesMethodsAndSources) {
  const auto record =
      report_of({examples_dir + "/old-sash.toml", "--samples", "16", "--window-hours", "0"}).at("run_record");
  EXPECT_GE(record.at("methods").size(), 10u);
  EXPECT_GE(record.at("sources").size(), 5u);
  EXPECT_FALSE(record.contains("weather_file"));
  EXPECT_FALSE(record.at("options").contains("longest_repair_h"));
}

/// The published values of Fowler, Noll and Vo (from memory).
TEST(Checksum, IsThePublishedOne) {
  EXPECT_EQ(tools::checksum_text(tools::fnv1a_64("")), "cbf29ce484222325");
  EXPECT_EQ(tools::checksum_text(tools::fnv1a_64("a")), "af63dc4c8601ec8c");
  EXPECT_EQ(tools::checksum_text(tools::fnv1a_64("foobar")), "85944171f73967e8");
}

tools::GivenValue said(const std::string& key, const std::string& value) {
  return {key, {}, tools::GivenScalar(value), {}, Basis::described};
}

TEST(HouseText, WritesOnceWhatAllWindowsSay) {
  tools::GivenValue humid{"room.hygrometer.humidity_pct", 1, tools::GivenScalar(std::int64_t{58}), "per cent",
                          Basis::measured};
  const std::vector<std::vector<tools::GivenValue>> given{
      {said("job.name", "left"), said("place.nearest", "london"), said("settle_first.burning", "nothing"),
       said("window.facing", "north")},
      {said("job.name", "right"), said("place.nearest", "london"), said("settle_first.burning", "nothing"),
       said("window.facing", "south"), humid}};
  EXPECT_EQ(tools::house_text(given, "The row"),
            "[job]\nname = \"The row\"\n\n[place]\nnearest = \"london\"\n\n"
            "[[windows]]\nname = \"left\"\n\n[windows.settle_first]\nburning = \"nothing\"\n\n"
            "[windows.window]\nfacing = \"north\"\n\n"
            "[[windows]]\nname = \"right\"\n\n[windows.settle_first]\nburning = \"nothing\"\n\n"
            "[windows.window]\nfacing = \"south\"\n\n[[windows.room.hygrometer]]\nhumidity_pct = 58\n");
}

}  // namespace
}  // namespace dewgap::test
