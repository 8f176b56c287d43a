// What stands against cutting is told alike by every verb that could print a size, and none of them prints
// one.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <regex>

#include "run_cli.hpp"

namespace dewgap::test {
namespace {

using nlohmann::json;

const std::vector<std::string> steady_only{"--samples", "32", "--window-hours", "0"};

std::string out_of(const std::string& verb, const std::string& job, const std::string& option = {}) {
  std::vector<std::string> arguments{verb, "-"};
  if (!option.empty()) arguments.push_back(option);
  arguments.insert(arguments.end(), steady_only.begin(), steady_only.end());
  const auto result = run_cli(arguments, job);
  EXPECT_EQ(result.exit_code, 0) << result.err;
  return result.out;
}

/// The lines of a text made one.
std::string joined(const std::string& text) {
  return replaced(replaced(text, "\n  ", " "), "\n", " ");
}

/// A key's line made anew in the old sash's job, or put into its section.
std::string with(std::string job, const std::string& section, const std::string& key,
                 const std::string& value) {
  const auto line = key + " = " + value;
  const std::regex given("\n" + key + " = [^\n]*");
  if (std::regex_search(job, given)) return std::regex_replace(job, given, "\n" + line);
  return replaced(std::move(job), "[" + section + "]\n", "[" + section + "]\n" + line + "\n");
}

/// Dry and sound, so that nothing but the change stands in the way.
std::string sound_job() {
  auto job = text_of(examples_dir + "/old-sash.toml");
  job = with(job, "timber", "water_pools", "\"no\"");
  job = with(job, "room", "washing_dried", "\"no\"");
  return job;
}

struct Change {
  std::string section;
  std::string key;
  std::string value;
  std::string reason;  ///< part of it; empty: it may be cut
};

const std::vector<Change>& changes() {
  static const std::vector<Change> all{
      {"window", "catch_stands_out_mm", "40", "Catch stands 40.0 mm out"},
      {"window", "handle_stands_out_mm", "40", "Handle stands 40.0 mm out"},
      {"window", "stay_stands_out_mm", "12", "Stay stands 12.0 mm out"},
      {"window", "shutter_mm", "5", "Shutter comes to 5.0 mm"},
      {"window", "blind_mm", "5", "Blind comes to 5.0 mm"},
      {"window", "screw_depth_mm", "8", "Under 15 mm of timber"},
      {"window", "fixing_face_mm", "12", "too narrow"},
      {"window", "fixing_face_mm", "25", ""},
      {"window", "blind_mm", "\"none\"", ""},
      {"sheet", "stock_mm", "[600, 800]", "larger than stock, 600 mm x 800 mm"},
      {"sheet", "stock_mm", "[1250, 2050]", ""}};
  return all;
}

void expect_no_size(const std::string& text, const std::string& form) {
  for (const auto* part : {"CUT: ", "Cut acrylic", "mm wide x", "mm high", "width_mm\":", "cut width",
                           "pilot ", "fixing 1", "Shopping", "turn clips, screws", " wide x "})
    EXPECT_FALSE(holds(text, part)) << form << ": " << part;
}

TEST(DoNotCut, EveryVerbTellsTheSame) {
  for (const auto& change : changes()) {
    const auto job = with(sound_job(), change.section, change.key, change.value);
    const bool refused = !change.reason.empty();
    SCOPED_TRACE(change.key + " " + change.value);
    const auto text = joined(out_of("assess", job));
    const auto answer = json::parse(out_of("assess", job, "--json"));
    const auto set_out = json::parse(out_of("setting-out", job, "--json")).at("windows").at(0);
    ASSERT_NE(answer.at("headline"), "leave") << text;
    EXPECT_EQ(answer.contains("do_not_cut_yet"), refused);
    EXPECT_EQ(answer.contains("cut_and_fix"), !refused);
    EXPECT_EQ(set_out.at("state"), refused ? "refused" : "set_out");
    const auto message = out_of("message", job);
    if (!refused) {
      EXPECT_TRUE(holds(text, "CUT: 4 mm acrylic")) << text;
      EXPECT_TRUE(holds(message, "Cut 4 mm acrylic")) << message;
      EXPECT_EQ(set_out.at("cut_and_fix").at("width_mm"), answer.at("cut_and_fix").at("width_mm"));
      continue;
    }
    EXPECT_EQ(answer.at("headline"), "fit_after");
    // a blind right before acrylic is in the way and would soften it
    ASSERT_EQ(answer.at("do_not_cut_yet").size(), change.value == "5" ? 2u : 1u)
        << answer.at("do_not_cut_yet");
    const auto reason = answer.at("do_not_cut_yet").at(0).get<std::string>();
    EXPECT_TRUE(holds(reason, change.reason)) << reason;
    EXPECT_TRUE(holds(text, "DO NOT CUT YET: " + reason)) << text;
    EXPECT_TRUE(holds(answer.at("after").dump(), change.reason));
    EXPECT_EQ(set_out.at("reasons"), answer.at("do_not_cut_yet"));
    EXPECT_TRUE(holds(message, "Do not cut yet: ")) << message;
    expect_no_size(text, "assess");
    expect_no_size(message, "message");
    for (const std::string form : {"", "--svg", "--csv", "--json"})
      expect_no_size(out_of("setting-out", job, form), "setting-out " + form);
  }
}

TEST(DoNotCut, TheReportSaysSoAndSetsNoHoleOut) {
  const auto job = with(sound_job(), "window", "catch_stands_out_mm", "40");
  const auto document = json::parse(out_of("report", job, "--json"));
  EXPECT_FALSE(document.contains("setting_out"));
  EXPECT_TRUE(document.at("answer").contains("do_not_cut_yet"));
  const auto page = out_of("report", job);
  EXPECT_TRUE(holds(page, "<strong>Do not cut yet:</strong> Catch stands 40.0 mm out"));
  EXPECT_FALSE(holds(page, "Each hole"));
  const auto sound = out_of("report", sound_job());
  EXPECT_FALSE(holds(sound, "Do not cut yet"));
  EXPECT_TRUE(holds(sound, "Each hole"));
}

TEST(DoNotCut, ASheetThatWouldSoftenInTheSunIsRefusedAsThatMaterial) {
  auto job = with(with(sound_job(), "window", "blind_mm", "60"), "sheet", "material", "\"PETG\"");
  const auto answer = json::parse(out_of("assess", job, "--json"));
  const auto& sun = answer.at("sun_on_sheet");
  EXPECT_EQ(sun.at("severity"), "blocks");
  EXPECT_GT(sun.at("sheet_C").get<double>(), sun.at("limit_C").get<double>());
  EXPECT_EQ(answer.at("do_not_cut_yet"), json::array({sun.at("sentence")}));
  EXPECT_TRUE(holds(joined(out_of("assess", job)), "DO NOT CUT YET: In full sun"));
  const auto page = out_of("setting-out", job);
  EXPECT_TRUE(holds(page, ">blocks<"));
  EXPECT_TRUE(holds(page, "take another material, or no blind that can be dark"));
  job = with(job, "sheet", "material", "\"polycarbonate\"");
  EXPECT_TRUE(json::parse(out_of("assess", job, "--json")).contains("cut_and_fix"));
}

TEST(DoNotCut, TheSunIsOnTheSettingOutSheetAndInTheReport) {
  const auto job = sound_job();
  EXPECT_TRUE(holds(out_of("setting-out", job), "In full sun the sheet reaches about "));
  const auto set_out = json::parse(out_of("setting-out", job, "--json")).at("windows").at(0);
  EXPECT_EQ(set_out.at("sun_on_sheet"), json::parse(out_of("assess", job, "--json")).at("sun_on_sheet"));
  EXPECT_TRUE(holds(out_of("report", job), "data-figure=\"/answer/sun_on_sheet/limit_C\""));
}

TEST(DoNotCut, HoldHasNothingOfIt) {
  auto job = with(sound_job(), "window", "catch_stands_out_mm", "40");
  job = with(with(job, "settle_first", "burning", "\"stove\""), "window", "blind_mm", "5");
  std::string all;
  for (const std::string verb : {"assess", "message", "setting-out", "report"})
    all += joined(out_of(verb, job));
  for (const std::string verb : {"assess", "setting-out", "report"}) all += out_of(verb, job, "--json");
  EXPECT_TRUE(holds(all, "HOLD"));
  for (const auto* part : {"Catch stands", "Blind comes", "full sun the sheet", "sun_on_sheet", "do_not_cut"})
    EXPECT_FALSE(holds(all, part)) << part;
}

TEST(DoNotCut, ASheetHeldByBeadsIsToldNothingOfScrews) {
  auto job = with(sound_job(), "sheet", "cover", "\"reveal\"");
  const auto page = out_of("setting-out", job);
  EXPECT_TRUE(holds(page, "Beads round the reveal")) << "it is held by them";
  EXPECT_FALSE(holds(page, "Keep screws inside"));
  EXPECT_TRUE(holds(page, "ask about cables"));
}

}  // namespace
}  // namespace dewgap::test
