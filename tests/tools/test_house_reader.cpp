// Job files of several windows.
#include <gtest/gtest.h>

#include <algorithm>

#include "run_cli.hpp"
#include "tools/job/house_reader.hpp"
#include "tools/job/starter.hpp"

namespace dewgap::tools {
namespace {

const std::string shared =
    "[place]\nnearest = \"london\"\n[building]\nfloors = 2\nbill_kWh = 9000\n"
    "[window]\nkind = \"casement\"\nframe = \"softwood\"\n"
    "opening_widths_mm = [903, 900, 901]\nopening_heights_mm = [1501, 1500, 1503]\n"
    "[sheet]\nmaterial = \"acrylic\"\ncover = \"frame\"\n";

std::string window(const std::string& name, const std::string& sections = {}) {
  return "[[windows]]\nname = \"" + name + "\"\n" + sections;
}

ReadHouse read_well(const std::string& text) {
  auto read = read_house(text);
  EXPECT_EQ(problem_lines("house", read.problems), "");
  return read;
}

std::string problems_of(const std::string& text) {
  return problem_lines("house", read_house(text).problems);
}

/// Line, from 1, of the first place where the text has `part`.
std::string line_of(const std::string& text, const std::string& part) {
  return std::to_string(1 +
                        std::count(text.begin(), text.begin() + static_cast<long>(text.find(part)), '\n'));
}

const std::string quince_row = test::examples_dir + "/house/quince-row.toml";

TEST(HouseReader, AFileWithoutWindowsReadsAsOne) {
  const auto text = test::text_of(test::examples_dir + "/old-sash.toml");
  const auto house = read_well(text);
  EXPECT_FALSE(house.has_windows);
  ASSERT_EQ(house.windows.size(), 1u);
  const auto job = read_job(text);
  EXPECT_EQ(house.windows[0].answers.survey.name, job.answers.survey.name);
  EXPECT_EQ(house.windows[0].given.size(), job.given.size());
  EXPECT_EQ(read_house("[place]\nnearest = 3\n").problems.size(),
            read_job("[place]\nnearest = 3\n").problems.size());
}

TEST(HouseReader, AWindowsOwnKeysOverrideTheSharedOnesOneByOne) {
  const auto house =
      read_well(shared + window("left", "[windows.window]\nglass_width_mm = 400\nkind = \"fixed light\"\n") +
                window("right",
                       "[windows.sheet]\ncover = \"sash\"\n[[windows.room.hygrometer]]\nroom_C = 18\n"
                       "humidity_pct = 50\noutdoor_C = 5\n[windows.building]\nfloor = 1\n"));
  ASSERT_EQ(house.windows.size(), 2u);
  const auto& left = house.windows[0].answers.survey;
  const auto& right = house.windows[1].answers.survey;
  EXPECT_EQ(left.name, "left");
  EXPECT_EQ(left.window.kind, WindowKind::fixed_light);
  EXPECT_DOUBLE_EQ(left.window.glass_width_m.value(), 0.4);
  EXPECT_DOUBLE_EQ(left.window.opening_widths_m[0], 0.903);
  EXPECT_EQ(left.sheet.cover, Cover::frame);
  EXPECT_TRUE(left.room.hygrometer.empty());
  EXPECT_EQ(right.window.kind, WindowKind::casement);
  EXPECT_FALSE(right.window.glass_width_m);
  EXPECT_EQ(right.sheet.cover, Cover::sash);
  EXPECT_EQ(right.sheet.material, SheetKind::acrylic);
  ASSERT_EQ(right.room.hygrometer.size(), 1u);
  EXPECT_EQ(right.building.floor, 1);
  EXPECT_EQ(right.building.floors, 2);
  EXPECT_EQ(left.building.bill_kWh, 9000.0);
  EXPECT_FALSE(left.building.floor);
}

TEST(HouseReader, ASharedSectionAfterAWindowHoldsForAllTheSame) {
  const auto house = read_well(window("first") + shared);
  EXPECT_EQ(house.windows[0].answers.survey.place.nearest, "london");
}

TEST(HouseReader, SafetyAnswersAreGivenForEachWindow) {
  const std::string answers =
      "way_out = \"not a way out\"\nburning = \"nothing\"\nfresh_air = \"another way\"\n"
      "protection = \"not protected\"\nold_glass = \"plain\"\n";
  const auto text =
      shared + "[settle_first]\nanswered_by = \"me\"\n" + answers + window("left") + window("right");
  const auto house = read_house(text);
  EXPECT_EQ(house.problems.size(), 5u);
  const auto lines = problem_lines("house", house.problems);
  for (const auto* key : {"way_out", "burning", "fresh_air", "protection", "old_glass"}) {
    const auto start = "house:" + line_of(text, std::string(key) + " = ") + ":1: settle_first." + key + ": ";
    EXPECT_NE(lines.find(start), std::string::npos) << start << "\n" << lines;
  }
  EXPECT_NE(lines.find("safety answers are given for each window"), std::string::npos);
  for (const auto& one : house.windows) EXPECT_FALSE(one.answers.survey.settle_first.way_out);

  const auto own = read_well(shared + "[settle_first]\nanswered_by = \"me\"\n" +
                             window("left", "[windows.settle_first]\n" + answers) + window("right"));
  EXPECT_EQ(own.windows[0].answers.survey.settle_first.way_out, WayOut::not_a_way_out);
  EXPECT_EQ(own.windows[0].answers.survey.settle_first.answered_by, "me");
  EXPECT_FALSE(own.windows[1].answers.survey.settle_first.way_out) << "an answer leaked to another window";
  EXPECT_EQ(own.windows[1].answers.survey.settle_first.answered_by, "me");
}

TEST(HouseReader, PlaceAndBuildingCannotDiffer) {
  const auto text = shared + window("left",
                                    "[windows.place]\nnearest = \"oslo\"\n[windows.building]\nfloor = 1\n"
                                    "hours_heated = 9\n[windows.house]\nname = \"x\"\n");
  const auto lines = problems_of(text);
  EXPECT_NE(lines.find("windows[1].place: is the same for all windows"), std::string::npos) << lines;
  EXPECT_NE(
      lines.find(":" + line_of(text, "hours_heated") + ":1: windows[1].building.hours_heated: is the same"),
      std::string::npos)
      << lines;
  EXPECT_NE(lines.find("windows[1].house: is the same for all windows"), std::string::npos) << lines;
  EXPECT_EQ(read_house(text).problems.size(), 3u) << lines;
}

TEST(HouseReader, ToldByPathLineColumnAndRange) {
  const auto text = shared + window("left") + window("right", "[windows.window]\nglass_width_mm = 0.9\n");
  const auto lines = problems_of(text);
  EXPECT_TRUE(lines.starts_with("house:" + line_of(text, "glass_width_mm") +
                                ":18: windows[2].window.glass_width_mm: 0.9 is out of range"))
      << lines;
  EXPECT_NE(lines.find("20 to 4000 mm"), std::string::npos) << lines;
}

TEST(HouseReader, WhatIsWrongForAllIsToldOnce) {
  const auto text = test::replaced(shared, "\"acrylic\"", "\"cheese\"") + window("left") + window("right");
  const auto house = read_house(text);
  ASSERT_EQ(house.problems.size(), 1u);
  EXPECT_TRUE(house.problems[0].what.starts_with("sheet.material: "));
  EXPECT_EQ(house.problems[0].what.find("so it is in"), std::string::npos);
}

TEST(HouseReader, WhatIsWrongOfASharedKeyForSomeNamesThem) {
  const auto text = shared + "[joints]\nrattles = \"perhaps\"\n" + window("a") +
                    window("b", "[windows.joints]\nrattles = \"yes\"\n") + window("c");
  const auto house = read_house(text);
  ASSERT_EQ(house.problems.size(), 1u);
  EXPECT_TRUE(house.problems[0].what.starts_with("joints.rattles: ")) << house.problems[0].what;
  EXPECT_TRUE(house.problems[0].what.ends_with("; so it is in windows[1], windows[3]"));
}

TEST(HouseReader, AContradictionWithASharedKeyStandsAtTheWindowsOwn) {
  const auto text = shared + window("a") + window("b", "[windows.window]\nglass_width_mm = 1200\n");
  const auto house = read_house(text);
  ASSERT_FALSE(house.problems.empty());
  for (const auto& problem : house.problems)
    EXPECT_TRUE(problem.what.starts_with("windows[2].window.glass_width_mm: 1200: ")) << problem.what;
}

TEST(HouseReader, AllProblemsOfAllWindowsAtOnceInTheOrderOfLines) {
  const auto text = shared + window("a", "[windows.window]\npanes = 0\n[windows.rom]\nuse = \"hall\"\n") +
                    window("a", "kind = \"casement\"\n[windows.sheet]\ntape_width = 3\n") + "[[windows]]\n";
  const auto house = read_house(text);
  const auto lines = problem_lines("house", house.problems);
  for (const auto* part :
       {"windows[1].window.panes: 0 is out of range", "windows[1].rom: unknown section; nearest known: room",
        "windows[2].name: \"a\" is the name of windows[1] too", "it belongs in [windows.window]",
        "windows[2].sheet.tape_width: unknown key; nearest known: tape_width_mm", "windows[3].name: missing"})
    EXPECT_NE(lines.find(part), std::string::npos) << part << "\n" << lines;
  EXPECT_EQ(house.problems.size(), 6u) << lines;
  EXPECT_TRUE(std::is_sorted(house.problems.begin(), house.problems.end(),
                             [](const auto& a, const auto& b) { return a.mark.line < b.mark.line; }));
}

TEST(HouseReader, AMissingSectionIsToldAtTheWindowThatLacksIt) {
  const auto without = shared.substr(0, shared.find("[sheet]"));
  const auto text =
      without + window("a", "[windows.sheet]\nmaterial = \"glass\"\ncover = \"frame\"\n") + window("b");
  const auto lines = problems_of(text);
  EXPECT_EQ(lines, "house:" + line_of(text, "[[windows]]\nname = \"b\"") +
                       ":1: windows[2].sheet.material: missing (permitted: \"acrylic\", \"polycarbonate\", "
                       "\"PETG\", \"glass\" or \"thin film\")\n" +
                       "house:" + line_of(text, "[[windows]]\nname = \"b\"") +
                       ":1: windows[2].sheet.cover: missing (permitted: \"glass\", \"sash\", \"frame\" or "
                       "\"reveal\")\n");
  EXPECT_EQ(read_house(without + window("a") + window("b")).problems.size(), 2u)
      << "lacking in all: told once";
}

TEST(HouseReader, NamesHaveOneToEightyBytes) {
  EXPECT_EQ(problems_of(shared + window(std::string(80, 'a'))), "");
  EXPECT_NE(problems_of(shared + window(std::string(81, 'a'))).find("windows[1].name: "), std::string::npos);
  EXPECT_NE(problems_of(shared + window("  ")).find("this names no window"), std::string::npos);
  EXPECT_NE(problems_of(shared + "[[windows]]\nname = 3\n").find("windows[1].name: 3 is a whole number"),
            std::string::npos);
}

TEST(HouseReader, AtMostSixtyWindows) {
  std::string text = shared;
  for (int i = 1; i <= 60; ++i) text += window("w" + std::to_string(i));
  EXPECT_EQ(read_well(text).windows.size(), 60u);
  const auto lines = problems_of(text + window("one more"));
  EXPECT_NE(lines.find("windows: 61 of them; at most 60 are read"), std::string::npos) << lines;
}

TEST(HouseReader, WindowsThatAreNoListAreSaidToBe) {
  for (const auto* wrong : {"windows = 3\n", "windows = []\n", "windows = [1, 2]\n"})
    EXPECT_NE(problems_of(wrong + shared).find("write [[windows]] above each"), std::string::npos) << wrong;
  EXPECT_NE(problems_of(shared + "[windows]\nname = \"x\"\n").find("write [[windows]] above each"),
            std::string::npos);
  const auto one = read_job(shared + window("left")).problems;
  ASSERT_EQ(one.size(), 1u);
  EXPECT_TRUE(one[0].what.starts_with("windows: "));
}

TEST(HouseReader, TheHousesOwnFacts) {
  const auto house = read_well("[house]\nventilation_limit_m3_h = 25\n[job]\nname = \"Row\"\n" + shared +
                               window("left", "[windows.job]\nnote = \"own\"\n"));
  EXPECT_EQ(house.house.name, "Row");
  EXPECT_EQ(house.house.ventilation_limit_m3_h, 25.0);
  EXPECT_EQ(house.windows[0].answers.survey.name, "left");
  EXPECT_EQ(house.windows[0].answers.survey.note, "own");
  EXPECT_EQ(
      read_well("[house]\nname = \"Own\"\n[job]\nname = \"Row\"\n" + shared + window("left")).house.name,
      "Own");
  EXPECT_NE(problems_of("[job]\nname = 3\n" + shared + window("left")).find("job.name: 3"),
            std::string::npos);
  EXPECT_NE(
      problems_of(shared + window("left", "[windows.job]\nname = \"x\"\n")).find("windows[1].job.name: "),
      std::string::npos);
}

TEST(HouseReader, TheStarterReadsAndAnswersNoSafetyQuestion) {
  const auto house = read_well(starter_house());
  ASSERT_EQ(house.windows.size(), 2u);
  for (const auto& one : house.windows) {
    EXPECT_FALSE(one.answers.survey.settle_first.way_out);
    EXPECT_FALSE(one.answers.survey.settle_first.old_glass);
  }
  EXPECT_EQ(test::run_cli({"starter", "--house"}).out, starter_house());
}

TEST(HouseReader, TheExampleHouseReads) {
  const auto house = read_well(test::text_of(quince_row));
  EXPECT_EQ(house.windows.size(), 5u);
  EXPECT_TRUE(test::text_of(quince_row).starts_with("# Invented: "));
}

TEST(WindowOption, PicksByNameOrNumberAndElseListsTheWindows) {
  const auto none = test::run_cli({"assess", quince_row});
  EXPECT_EQ(none.exit_code, 2);
  EXPECT_EQ(none.out, "");
  EXPECT_NE(none.err.find("quince-row.toml holds 5; give --window"), std::string::npos) << none.err;
  EXPECT_NE(none.err.find("  4 Bathroom casement\n"), std::string::npos) << none.err;
  for (const auto* verb : {"assess", "vent", "year"})
    for (const auto* which : {"5", "Front bedroom, over the porch"}) {
      const auto held = test::run_cli({verb, quince_row, "--window", which});
      EXPECT_EQ(held.exit_code, 0) << held.err;
      EXPECT_NE(held.out.find("HOLD"), std::string::npos) << held.out;
    }
  const auto wrong = test::run_cli({"vent", quince_row, "--window", "6"});
  EXPECT_EQ(wrong.exit_code, 2);
  EXPECT_NE(wrong.err.find("quince-row.toml has no such window, but:"), std::string::npos);
  EXPECT_EQ(test::run_cli({"assess", test::examples_dir + "/hold-way-out.toml", "--window", "1"}).exit_code,
            0);
  EXPECT_EQ(test::run_cli({"assess", test::examples_dir + "/hold-way-out.toml", "--window", "2"}).exit_code,
            2);
}

}  // namespace
}  // namespace dewgap::tools
