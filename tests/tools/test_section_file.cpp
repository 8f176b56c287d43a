// Section files: what is read is the section meant, and what is wrong is told at its lines.
#include <gtest/gtest.h>

#include <filesystem>
#include <regex>

#include "run_cli.hpp"
#include "solved_file.hpp"
#include "tools/section/materials.hpp"

namespace dewgap::test {
namespace {

using namespace dewgap::tools;

class BadSection : public testing::TestWithParam<std::string> {};

TEST_P(BadSection, IsRefusedWithTheExpectedLines) {
  const auto& path = GetParam();
  const auto result = run_cli({"section", path, "--svg"});
  EXPECT_EQ(result.exit_code, 2);
  EXPECT_EQ(result.out, "");
  const auto expected = text_of(path.substr(0, path.size() - 5) + ".expected");
  EXPECT_FALSE(expected.empty());
  EXPECT_EQ(replaced(result.err, tools_test_dir + "/bad_section/", ""), expected);
  for (const auto& line : lines_of(expected))
    EXPECT_TRUE(std::regex_search(line, std::regex("^[a-z_]+\\.toml:[0-9]+:[0-9]+: .+"))) << line;
}

INSTANTIATE_TEST_SUITE_P(Corpus, BadSection,
                         testing::ValuesIn(files_in(tools_test_dir + "/bad_section", ".toml")),
                         [](const testing::TestParamInfo<std::string>& tested) {
                           return std::filesystem::path(tested.param).stem().string();
                         });

const std::string wall_sides = R"(
[[sides]]
name = "room"
kind = "room"
temperature_C = 20
resistance_m2K_W = 0.13
on_x_mm = [300]
[[sides]]
name = "outdoors"
kind = "outdoors"
temperature_C = -5
resistance_m2K_W = 0.04
on_x_mm = [0]
[[sides]]
name = "ends"
kind = "cut-off"
on_y_mm = [0, 200]
)";

TEST(SectionFile, LayersAreAWallOfResistancesInRow) {
  const auto solved = solved_file(R"([section]
name = "wall"
[materials]
"lime render" = 0.8
[stack]
along = "x"
from_mm = [0, 0]
across_mm = 200
[[layers]]
name = "brick"
material = "brick"
thickness_mm = 215
[[layers]]
name = "air"
conductance_W_m2K = 5.5
thickness_mm = 70
[[layers]]
name = "render"
material = "lime render"
thickness_mm = 15
)" + wall_sides);
  const double brick_W_mK = carried_conductivity_W_mK("brick").value();
  const double resistance_m2K_W = 0.13 + 0.215 / brick_W_mK + 1.0 / 5.5 + 0.015 / 0.8 + 0.04;
  ASSERT_TRUE(solved.result.coupling.has_value());
  EXPECT_NEAR(solved.result.coupling->value_W_mK, 0.2 / resistance_m2K_W, 1e-9);
  // Every isothermal face: room's is what the resistances say.
  EXPECT_NEAR(solved.result.lowest_room_face->temperature_C, 20.0 - 25.0 * 0.13 / resistance_m2K_W, 1e-6);
  EXPECT_NEAR(least_temperature_factor(solved).value(), 1.0 - 0.13 / resistance_m2K_W, 1e-7);
  EXPECT_GT(misting_humidity(solved).value(), 0.5);
  EXPECT_LT(misting_humidity(solved).value(), 1.0);
}

TEST(SectionFile, ExampleOfIso10211IsTheSectionOfItsTable) {
  const auto solved = solved_file(text_of(section_example("iso-10211-case-2")));
  ASSERT_EQ(solved.result.status, SectionStatus::converged);
  // reference/iso_10211, from memory; the tolerance is the standard's criterion.
  EXPECT_NEAR(solved.result.heat.front().flow_W_m, 9.5, 0.1);
  EXPECT_NEAR(solved.result.watched.at(0).temperature_C, 7.1, 0.1);
  EXPECT_NEAR(solved.result.watched.at(1).temperature_C, 0.8, 0.1);
}

TEST(SectionFile, ReadsFillsSidesAndPlacesAsTheyStand) {
  const auto read = read_section(text_of(section_example("sash-with-sheet")));
  ASSERT_TRUE(read.problems.empty());
  const auto& section = read.file.section;
  ASSERT_EQ(section.items.size(), 8U);
  EXPECT_EQ(std::get<SolidFill>(section.items[1].fill).conductivity_W_mK, 0.4);
  EXPECT_EQ(std::get<GapFill>(section.items[4].fill).conductance_W_m2K, 5.9);
  EXPECT_EQ(std::get<CavityFill>(section.items[5].fill).ventilation, CavityVentilation::unventilated);
  EXPECT_EQ(section.items[7].polygon.at(2).x_m, 0.054);
  const auto& room = std::get<AirSide>(section.boundaries.at(0).condition);
  EXPECT_EQ(room.role, AirRole::room);
  EXPECT_EQ(room.corners.value().surface_resistance_m2K_W, 0.20);
  EXPECT_EQ(room.corners.value().reach_m, CornerFilm{}.reach_m);
  EXPECT_TRUE(std::holds_alternative<CutOff>(section.boundaries.at(2).condition));
  EXPECT_EQ(read.file.shown.value().high.y_m, 0.140);
}

TEST(SectionFile, AnOpenCavityTakesTheAirOfItsSide) {
  const std::string slit = R"([section]
name = "slit"
cavities = "solved walls"
[[items]]
name = "wall"
material = "brick"
rectangle_mm = [0, 0, 300, 200]
[[items]]
name = "slit"
cavity = "open to outdoors"
rectangle_mm = [0, 90, 100, 110]
replaces = ["wall"]
)" + wall_sides;
  const auto open = solved_file(slit);
  const auto shut = solved_file(replaced(slit, "open to outdoors", "unventilated"));
  EXPECT_EQ(open.file.cavities, CavityRule::solved_walls);
  EXPECT_GT(open.result.coupling->value_W_mK, shut.result.coupling->value_W_mK);
  EXPECT_TRUE(open.result.cavities.empty());
  EXPECT_EQ(shut.result.cavities.size(), 1U);
}

TEST(SectionFile, MaterialsOfOneKindHaveHatchesOfTheirOwn) {
  HatchChoice hatches;
  EXPECT_EQ(hatches.hatch_of("softwood"), Material::timber);
  EXPECT_EQ(hatches.hatch_of("old putty"), Material::putty);
  EXPECT_NE(hatches.hatch_of("hardwood"), Material::timber);
  EXPECT_EQ(hatches.hatch_of("softwood"), Material::timber);
  EXPECT_NE(hatches.hatch_of("straw"), hatches.hatch_of("hardwood"));
  for (const auto& name : carried_materials()) EXPECT_GT(carried_conductivity_W_mK(name).value_or(0.0), 0.0);
}

}  // namespace
}  // namespace dewgap::test
