// The edge worked out by conduction, from job file to text, JSON and report.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "run_cli.hpp"
#include "schema_complaints.hpp"
#include "tools/answer/figures_text.hpp"

namespace dewgap::test {
namespace {

using nlohmann::json;

const std::vector<std::string> steady{"--samples", "64", "--window-hours", "0"};

std::string job_of(const std::string& example, const std::string& edge) {
  return text_of(examples_dir + "/" + example + ".toml") + edge;
}

std::string answer_of(const std::string& verb, const std::string& job, bool as_json) {
  std::vector<std::string> arguments{verb, "-"};
  arguments.insert(arguments.end(), steady.begin(), steady.end());
  if (as_json) arguments.emplace_back("--json");
  const auto result = run_cli(arguments, job);
  EXPECT_EQ(result.exit_code, 0) << result.err;
  return result.out;
}
std::string text_answer_of(const std::string& job) {
  return answer_of("assess", job, false);
}
json json_answer_of(const std::string& job) {
  return json::parse(answer_of("assess", job, true));
}

/// Text with its line breaks and indents as single blanks.
std::string on_one_line(std::string text) {
  text = replaced(std::move(text), "\n  ", " ");
  return replaced(std::move(text), "\n", " ");
}

TEST(Edge, NoOrNotAskedForIsTheSameAnswer) {
  for (const auto* example : {"old-sash", "steel-casement"}) {
    const auto asked_not = text_answer_of(job_of(example, ""));
    EXPECT_EQ(text_answer_of(job_of(example, "\n[edge]\nwork_out = \"no\"\n")), asked_not);
    EXPECT_EQ(asked_not.find("by conduction"), std::string::npos);
    EXPECT_FALSE(json_answer_of(job_of(example, "")).contains("edge"));
  }
}

TEST(Edge, TextSaysWhatJsonSays) {
  for (const auto* example : {"old-sash", "steel-casement"}) {
    const auto job = job_of(example, "\n[edge]\nwork_out = \"yes\"\n");
    const auto document = json_answer_of(job);
    EXPECT_EQ(complaints(document), "") << example;
    const auto& edge = document.at("edge");
    const auto two = [](const json& range) { return tools::figure(range.at("middle").get<double>(), 2); };
    const auto& mould = edge.at("coldest_in_room_with_sheet").at("mould_from_room_humidity_pct");
    const auto text = on_one_line(text_answer_of(job));
    const auto& now = edge.at("coldest_in_room_now");
    const auto& with_sheet = edge.at("coldest_in_room_with_sheet");
    for (const auto& said :
         {"now: " + now.at("part").get<std::string>() + ", fRsi " + two(now.at("factor")) + ";",
          "sheet: " + with_sheet.at("part").get<std::string>() + ", fRsi " + two(with_sheet.at("factor")),
          "if the room is above " + tools::ranged({mould.at("p10"), mould.at("p50"), mould.at("p90")}, 0) +
              " %",
          std::string("In the gap nothing is colder than the middle of the old glass.")})
      EXPECT_NE(text.find(said), std::string::npos) << example << ": " << said << "\n" << text;
    for (const auto& line : lines_of(text_answer_of(job))) EXPECT_LE(line.size(), 62u) << line;
  }
}

TEST(Edge, WhatIsColderInTheGapIsNamed) {
  auto job = job_of("painted-shut-light", "\n[edge]\nwork_out = \"yes\"\n");
  job = replaced(job, "cover = \"frame\"", "cover = \"reveal\"");
  job = replaced(job, "frame = \"hardwood\"", "frame = \"softwood\"");
  job = replaced(job, "glass_to_fixing_face_mm = [24]", "glass_to_fixing_face_mm = [80]");
  const auto edge = json_answer_of(job).at("edge").at("coldest_in_gap");
  const auto factor = edge.at("factor_of_centre").at("middle").get<double>();
  ASSERT_LT(factor, 0.995);
  EXPECT_NE(on_one_line(text_answer_of(job))
                .find("Coldest in the gap: " + edge.at("part").get<std::string>() + ", over outdoors " +
                      tools::figure(factor, 2) + " of the middle of the old glass."),
            std::string::npos);
}

TEST(Edge, MovesTheWindow) {
  const auto before = json_answer_of(job_of("steel-casement", ""));
  const auto after = json_answer_of(job_of("steel-casement", "\n[edge]\nwork_out = \"yes\"\n"));
  const auto middle = [](const json& answer, const char* key) {
    return answer.at("now_and_with_sheet").at(key).at("p50").get<double>();
  };
  EXPECT_EQ(middle(before, "glass_u_now_W_m2K"), middle(after, "glass_u_now_W_m2K"));
  EXPECT_NE(middle(before, "window_u_now_W_m2K"), middle(after, "window_u_now_W_m2K"));
}

TEST(Edge, ReportHasItsFigures) {
  const auto job = job_of("old-sash", "\n[edge]\nwork_out = \"yes\"\nrail_face_mm = 75\n");
  const auto document = json::parse(answer_of("report", job, true));
  EXPECT_EQ(complaints(document, {"schema", "--report"}), "");
  const auto& factor = document.at("answer").at("edge").at("coldest_in_room_with_sheet").at("factor");
  const auto page = answer_of("report", job, false);
  EXPECT_NE(
      page.find("data-figure=\"/answer/edge/coldest_in_room_with_sheet/factor/middle\" data-form=\"2\">" +
                tools::figure(factor.at("middle").get<double>(), 2) + "<"),
      std::string::npos);
  EXPECT_NE(document.at("run_record").at("job_file").get<std::string>().find("rail_face_mm = 75"),
            std::string::npos);
}

TEST(Edge, AHoldShowsNothingOfIt) {
  const auto job = job_of("hold-way-out", "\n[edge]\nwork_out = \"yes\"\n");
  EXPECT_FALSE(json_answer_of(job).contains("edge"));
  EXPECT_EQ(text_answer_of(job).find("conduction"), std::string::npos);
}

TEST(Edge, AWindowOfAHouseMayHaveItsOwn) {
  const auto house = example_house_of(1) + "\n[windows.edge]\nwork_out = \"yes\"\n";
  EXPECT_NE(answer_of("assess", house, true).find("coldest_in_room_with_sheet"), std::string::npos);
}

}  // namespace
}  // namespace dewgap::test
