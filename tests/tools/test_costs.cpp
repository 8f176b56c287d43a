// Costs of the money file: of a window, of what else could be done, and of each window of a house.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "folder.hpp"
#include "run_cli.hpp"
#include "tools/job/reader.hpp"

namespace dewgap::test {
namespace {

using Json = nlohmann::ordered_json;

const std::string prices = "[money]\ncurrency = \"EUR\"\nprice_per_kWh = 0.12\nefficiency = 0.85\n";
const std::string quince_row = examples_dir + "/house/quince-row.toml";
const std::string old_sash = examples_dir + "/old-sash.toml";

std::string report(const std::string& job, const std::string& money, const std::string& form = "--output=-") {
  const auto result =
      run_cli({"report", job, "--money", "-", "--samples", "32", "--window-hours", "0", form}, money);
  EXPECT_EQ(result.exit_code, 0) << result.err;
  return result.out;
}

Json document_of(const std::string& job, const std::string& money) {
  return Json::parse(report(job, money, "--json"));
}

const Json& rival(const Json& window, const std::string& kind) {
  for (const auto& one : window.at("rivals"))
    if (one.at("kind") == kind) return one;
  throw std::logic_error("no rival " + kind);
}

TEST(Costs, StandBesideEachRivalThatHasOne) {
  const auto money = prices + "cost = 140\ncost_repair_and_strip = 60\ncost_lined_curtains = 90\n";
  const auto document = document_of(old_sash, money);
  EXPECT_EQ(rival(document, "repair and draught-strip").at("cost_currency"), 60.0);
  const auto& curtains = rival(document, "lined curtains at night");
  EXPECT_EQ(curtains.at("cost_currency"), 90.0);
  const auto heat_kWh = curtains.at("heat_saved_kWh_per_year").at("p50").get<double>();
  EXPECT_NEAR(curtains.at("cost_per_kWh_saved_a_year_currency").at("p50").get<double>(), 90.0 / heat_kWh,
              1e-12);
  // Medians of a case's inverse: between two cases they may lie apart by what the cases do.
  EXPECT_NEAR(curtains.at("payback_years").at("p50").get<double>(), 90.0 * 0.85 / 0.12 / heat_kWh,
              0.01 * 90.0 * 0.85 / 0.12 / heat_kWh);
  EXPECT_EQ(rival(document, "the sheet").at("cost_currency"), 140.0);
  EXPECT_EQ(rival(document, "the sheet and draught-strip").at("cost_currency"), 200.0);
  EXPECT_FALSE(rival(document, "shutters at night").contains("cost_currency"));
  EXPECT_FALSE(rival(document, "do nothing").contains("cost_currency"));
}

TEST(Costs, ARivalWithoutOneSaysSo) {
  const auto count = [](const std::string& html) {
    std::size_t found = 0;
    for (auto at = html.find("no cost given"); at != std::string::npos;
         at = html.find("no cost given", at + 1))
      ++found;
    return found;
  };
  const auto none = count(report(old_sash, prices));
  EXPECT_GE(none, 4u);
  EXPECT_EQ(count(report(old_sash, prices + "cost_shutters = 400\n")), none - 1);
  const auto without_money = run_cli({"report", old_sash, "--samples", "32", "--window-hours", "0"});
  EXPECT_EQ(count(without_money.out), 0u) << "without prices there is no column of money";
}

std::string costs_of(const std::string& window, int cost) {
  return "\n[[money.windows]]\nname = \"" + window + "\"\ncost = " + std::to_string(cost) + "\n";
}

std::vector<std::string> order_for_money(const Json& document) {
  std::vector<std::string> names;
  for (const auto& step : document.at("answer").at("order_for_money").at("steps"))
    names.push_back(step.at("name").get<std::string>());
  return names;
}

TEST(Costs, AHouseGoesBySavingPerCostWhereTheyDiffer) {
  const Folder folder;
  const auto three = folder.with("three.toml", example_house_of(3));
  const auto alike = document_of(three, prices + "cost = 100\n");
  const auto by_saving = order_for_money(alike);
  ASSERT_GE(by_saving.size(), 2u);
  const auto dear = document_of(three, prices + "cost = 100\n" + costs_of(by_saving.front(), 100'000));
  const auto by_cost = order_for_money(dear);
  EXPECT_EQ(by_cost.back(), by_saving.front()) << "what saves most costs a thousand times as much";
  EXPECT_EQ(by_cost.front(), by_saving.at(1));
  for (const auto& window : dear.at("windows")) {
    if (!window.contains("rivals")) continue;
    const bool is_dear = window.at("answer").at("job").at("name") == by_saving.front();
    EXPECT_EQ(rival(window, "the sheet").at("cost_currency"), is_dear ? 100'000.0 : 100.0);
  }
  const auto& record = dear.at("run_record").at("money_file").get<std::string>();
  EXPECT_NE(record.find("[[money.windows]]\nname = \"" + by_saving.front() + "\"\ncost = 100000\n"),
            std::string::npos)
      << record;
}

TEST(Costs, AHouseSaysForWhichWindowsNoneWasGiven) {
  const Folder folder;
  const auto three = folder.with("three.toml", example_house_of(3));
  const auto document = document_of(three, prices + costs_of("Landing fixed light", 50));
  const auto& order = document.at("answer").at("order_for_money");
  const auto why = order.at("not_by_cost_because").get<std::string>();
  EXPECT_NE(why.find("Back bedroom casement"), std::string::npos) << why;
  EXPECT_EQ(why.find("Landing"), std::string::npos) << why;
  EXPECT_TRUE(order.at("steps").at(0).contains("saved_kWh_per_year_per_m2_of_sheet"));
}

/// Of the window that --window picks, the record keeps its own costs alone.
TEST(Costs, AWindowOfAHouseKeepsItsOwn) {
  const auto money = prices + costs_of("Landing fixed light", 50) + costs_of("Back bedroom casement", 70);
  const auto result = run_cli({"report", quince_row, "--money", "-", "--window", "2", "--samples", "16",
                               "--window-hours", "0", "--json"},
                              money);
  ASSERT_EQ(result.exit_code, 0) << result.err;
  const auto document = Json::parse(result.out);
  EXPECT_EQ(rival(document, "the sheet").at("cost_currency"), 70.0);
  EXPECT_EQ(document.at("run_record").at("money_file").get<std::string>().find("Landing"), std::string::npos);
}

TEST(Costs, AWindowThatTheJobHasNotIsRefused) {
  const Folder folder;
  const auto path = folder.with("money.toml", prices + costs_of("Attic", 50) + costs_of("Attic", 60));
  const auto result = run_cli({"report", quince_row, "--money", path});
  EXPECT_EQ(result.exit_code, 2);
  EXPECT_NE(result.err.find(path + ":7:8: money.windows[1].name: \"Attic\" is no window of the job"),
            std::string::npos)
      << result.err;
  EXPECT_NE(
      result.err.find(path + ":11:8: money.windows[2].name: \"Attic\" is the name of money.windows[1] too"),
      std::string::npos)
      << result.err;
}

TEST(Costs, AreReadIntoTheirPlaces) {
  const auto read = tools::read_money(prices + "cost_shutters = 400\n" + costs_of("left", 50) +
                                      "cost_lined_curtains = 80\n");
  EXPECT_EQ(tools::problem_lines("money", read.problems), "");
  EXPECT_EQ(read.answers.rival_costs.shutters, 400.0);
  EXPECT_FALSE(read.answers.rival_costs.lined_curtains);
  ASSERT_EQ(read.answers.window_costs.size(), 1u);
  EXPECT_EQ(read.answers.window_costs[0].name, "left");
  EXPECT_EQ(read.answers.window_costs[0].sheet, 50.0);
  EXPECT_EQ(read.answers.window_costs[0].rivals.lined_curtains, 80.0);
}

}  // namespace
}  // namespace dewgap::test
