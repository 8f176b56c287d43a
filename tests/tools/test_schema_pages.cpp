// Real output of report and setting-out against the published schemas.
#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "run_cli.hpp"
#include "schema_complaints.hpp"

namespace dewgap::test {
namespace {

using nlohmann::json;

const std::vector<std::string> report_schema{"schema", "--report"};
const std::vector<std::string> setting_out_schema{"schema", "--setting-out"};

/// What a verb says of a job as JSON, few cases, no year of hours unless asked for.
json document_of(const std::string& verb, const std::string& job, std::vector<std::string> more = {}) {
  std::vector<std::string> arguments{verb, "-", "--json", "--samples", "16"};
  if (std::find(more.begin(), more.end(), "--window-hours") == more.end())
    more.insert(more.end(), {"--window-hours", "0"});
  arguments.insert(arguments.end(), more.begin(), more.end());
  const auto result = run_cli(arguments, job);
  EXPECT_EQ(result.exit_code, 0) << result.err;
  return json::parse(result.out);
}

/// Jobs of every kind: a fit, timber and steel; a hold, and one for consent alone; one to leave; one that
/// cannot be done as measured; a house.
std::vector<std::pair<std::string, std::string>> jobs_of_every_kind() {
  const auto sash = text_of(examples_dir + "/old-sash.toml");
  return {{"fit", sash},
          {"steel", text_of(examples_dir + "/steel-casement.toml")},
          {"film", text_of(examples_dir + "/thin-film.toml")},
          {"hold", text_of(examples_dir + "/hold-way-out.toml")},
          {"pending", replaced(sash, "\"not protected\"", "\"consent pending\"")},
          {"leave", text_of(examples_dir + "/damp-shower-room.toml")},
          {"refused", replaced(sash, "catch_stands_out_mm = 4\n", "catch_stands_out_mm = 40\n")},
          {"house", text_of(examples_dir + "/house/quince-row.toml")}};
}

TEST(Schema, FitsReportsOfEveryKind) {
  const std::vector<std::string> money{"--money", examples_dir + "/money.toml"};
  for (const auto& [kind, job] : jobs_of_every_kind())
    EXPECT_EQ(complaints(document_of("report", job, kind == "house" ? std::vector<std::string>{} : money),
                         report_schema),
              "")
        << kind;
}

TEST(Schema, FitsAReportWithAYearOfFewCases) {
  const auto document =
      document_of("report", text_of(examples_dir + "/old-sash.toml"), {"--window-hours", "1500000"});
  EXPECT_EQ(complaints(document, report_schema), "");
  const auto& mornings = document.at("rivals").at(0).at("misty_mornings");
  EXPECT_LT(document.at("answer").at("year").at("cases_run"), 40);
  EXPECT_FALSE(mornings.contains("p10")) << mornings;
}

TEST(Schema, RefusesAReportThatIsNotOne) {
  const auto jobs = jobs_of_every_kind();
  const auto whole = document_of("report", jobs.front().second);
  const auto refuses = [](json report, const std::string& pointer, const json& value) {
    report[json::json_pointer(pointer)] = value;
    EXPECT_NE(complaints(report, report_schema), "") << pointer;
  };
  refuses(whole, "/score", 7);
  refuses(whole, "/rivals/0/score", 7);
  refuses(whole, "/section/gap_width_mm", "wide");
  refuses(whole, "/run_record/options/threads", 2);
  refuses(whole, "/proposed_holes", json::object());
  auto without = whole;
  without.erase("rivals");
  EXPECT_NE(complaints(without, report_schema), "");
  auto held = document_of("report", text_of(examples_dir + "/hold-way-out.toml"));
  refuses(held, "/rivals", whole.at("rivals"));
  refuses(held, "/answer", whole.at("answer"));
}

TEST(Schema, FitsSettingOutOfEveryKind) {
  std::set<std::string> states;
  for (const auto& [kind, job] : jobs_of_every_kind()) {
    const auto document = document_of("setting-out", job);
    EXPECT_EQ(complaints(document, setting_out_schema), "") << kind;
    for (const auto& window : document.at("windows")) states.insert(window.at("state").get<std::string>());
  }
  EXPECT_EQ(states, (std::set<std::string>{"hold", "leave", "refused", "set_out"}));
}

TEST(Schema, RefusesASettingOutThatIsNotOne) {
  const auto whole = document_of("setting-out", text_of(examples_dir + "/old-sash.toml"));
  ASSERT_EQ(whole.at("windows").at(0).at("state"), "set_out");
  for (const auto* state : {"hold", "leave", "refused"}) {
    auto other = whole;
    other["windows"][0]["state"] = state;
    EXPECT_NE(complaints(other, setting_out_schema), "") << state << " with a sheet to cut";
  }
  auto stranger = whole;
  stranger["windows"][0]["marks"][0]["score"] = 7;
  EXPECT_NE(complaints(stranger, setting_out_schema), "");
}

}  // namespace
}  // namespace dewgap::test
