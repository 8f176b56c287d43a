// dewgap section: its forms say what the library says; a failure says what was reached.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <regex>
#include <sstream>

#include "dewgap/window/section_readings.hpp"
#include "folder.hpp"
#include "run_cli.hpp"
#include "schema_complaints.hpp"
#include "solved_file.hpp"
#include "tools/answer/plain_text.hpp"
#include "tools/failure.hpp"
#include "tools/verbs/section.hpp"

namespace dewgap::test {
namespace {

using nlohmann::json;

const std::vector<std::string> section_schema{"schema", "--section"};

TEST(SectionVerb, EveryExampleRunsAndFitsANarrowPage) {
  for (const auto& path : files_in(examples_dir + "/section", ".toml")) {
    const auto result = run_cli({"section", path});
    EXPECT_EQ(result.exit_code, 0) << path << result.err;
    const auto lines = lines_of(result.out);
    ASSERT_GT(lines.size(), 8U) << path;
    EXPECT_TRUE(lines.front().starts_with("Lowest on the room side: ")) << lines.front();
    for (const auto& line : lines) EXPECT_LE(tools::columns_of(line), 62U) << line;
  }
}

TEST(SectionVerb, JsonFitsItsSchemaAndHoldsTheLibrarysFigures) {
  for (const auto* name : {"sash-bottom-rail", "sash-with-sheet"}) {
    const auto result = run_cli({"section", section_example(name), "--json"});
    ASSERT_EQ(result.exit_code, 0) << result.err;
    const auto document = json::parse(result.out);
    EXPECT_EQ(complaints(document, section_schema), "");
    const auto solved = solved_file(text_of(section_example(name)));
    EXPECT_EQ(document.at("coupling").at("value_W_mK"), solved.result.coupling->value_W_mK);
    EXPECT_EQ(document.at("coupling").at("error_bound_W_mK"), solved.result.coupling->error_bound_W_mK);
    EXPECT_EQ(document.at("lowest_on_room_side").at("temperature_C"),
              solved.result.lowest_room_face->temperature_C);
    EXPECT_EQ(document.at("temperature_factor"), temperature_factor(solved.result, "room"));
    EXPECT_EQ(document.at("sides").at(0).at("heat_into_section_W_m"), solved.result.heat.at(0).flow_W_m);
    EXPECT_EQ(document.at("cavities").size(), solved.result.cavities.size());
    EXPECT_EQ(document.at("points").size(), solved.file.points.size());
    auto stranger = document;
    stranger["score"] = 7;
    EXPECT_NE(complaints(stranger, section_schema), "");
    auto without = document;
    without.erase("sides");
    EXPECT_NE(complaints(without, section_schema), "");
  }
}

TEST(SectionVerb, CsvIsTheProfileAlongTheRoomSide) {
  const auto path = section_example("sash-bottom-rail");
  const auto lines = lines_of(run_cli({"section", path, "--csv"}).out);
  const auto solved = solved_file(text_of(path));
  const auto profile = profile_along(solved.result, "room");
  ASSERT_EQ(lines.size(), profile.size() + 1);
  EXPECT_EQ(lines.front(), "side,along_mm,x_mm,y_mm,temperature_C");
  double lowest_C = 1e9;
  for (std::size_t i = 0; i < profile.size(); ++i) {
    const double printed_C = std::stod(lines[i + 1].substr(lines[i + 1].rfind(',') + 1));
    EXPECT_NEAR(printed_C, profile[i].temperature_C, 5.1e-5);
    lowest_C = std::min(lowest_C, printed_C);
  }
  EXPECT_NEAR(lowest_C, solved.result.lowest_room_face->temperature_C, 5.1e-5);
}

TEST(SectionVerb, ABoundThatIsNotReachedIsExitCodeOneWithWhatWas) {
  const auto result =
      run_cli({"section", section_example("sash-bottom-rail"), "--bound", "1e-8", "--most-cells", "2000"});
  EXPECT_EQ(result.exit_code, 1);
  EXPECT_EQ(result.out, "");
  EXPECT_NE(result.err.find("stopped at the greatest number of cells"), std::string::npos) << result.err;
  EXPECT_TRUE(std::regex_search(
      result.err, std::regex("L2D 1\\.25[0-9]* W/\\(m K\\), wrong by [0-9.e-]+ at most; lowest on the room")))
      << result.err;
}

TEST(SectionVerb, EveryStatusButConvergedIsAFailure) {
  for (const auto status : {SectionStatus::cell_limit, SectionStatus::pass_limit,
                            SectionStatus::cavities_unsettled, SectionStatus::not_balanced}) {
    tools::SectionVerb verb;
    verb.path = section_example("sash-bottom-rail");
    verb.compute = [status](const dewgap::Section& section, const SectionOptions& options) {
      auto result = solve_section(section, options);
      result.status = status;
      return result;
    };
    std::istringstream in;
    std::ostringstream out, err;
    EXPECT_EQ(tools::exit_code_of([&] { verb.run({in, out, err}); }, err), 1);
    EXPECT_EQ(out.str(), "");
    EXPECT_NE(err.str().find(explain(status)), std::string::npos) << err.str();
  }
}

TEST(SectionVerb, PointsAloneWhereTheHeatHasNoLimit) {
  auto text = text_of(section_example("sash-with-sheet"));
  text = replaced(text, "resistance_m2K_W = 0.13", "resistance_m2K_W = 0");
  text = replaced(text, "\ncorner_resistance_m2K_W = 0.20", "");
  const auto result = run_cli({"section", "-", "--points-only", "--json"}, text);
  ASSERT_EQ(result.exit_code, 0) << result.err;
  const auto document = json::parse(result.out);
  EXPECT_EQ(complaints(document, section_schema), "");
  EXPECT_FALSE(document.contains("coupling"));
  EXPECT_EQ(document.at("points").size(), 1U);
  EXPECT_EQ(run_cli({"section", section_example("sash-bottom-rail"), "--points-only"}).exit_code, 2);
}

TEST(SectionVerb, TheFileIsNeverOverwritten) {
  const Folder folder;
  const auto path = folder.file("rail.toml");
  std::filesystem::copy_file(section_example("sash-bottom-rail"), path);
  EXPECT_EQ(run_cli({"section", path, "--output", path}).exit_code, 2);
  EXPECT_EQ(text_of(path), text_of(section_example("sash-bottom-rail")));
}

}  // namespace
}  // namespace dewgap::test
