#include "tools/job/reader.hpp"

#include <gtest/gtest.h>

#include <locale>

#include "run_cli.hpp"
#include "tools/job/toml_tree.hpp"

namespace dewgap::tools {
namespace {

const std::string shortest_job =
    "[place]\nnearest = \"london\"\n[window]\nkind = \"casement\"\nframe = \"softwood\"\n"
    "opening_widths_mm = [903, 900, 901]\nopening_heights_mm = [1501, 1500, 1503]\n"
    "[sheet]\nmaterial = \"acrylic\"\ncover = \"frame\"\n";

Survey read_well(const std::string& text) {
  const auto read = read_job(text);
  EXPECT_EQ(problem_lines("job", read.problems), "");
  return read.answers.survey;
}

TEST(Reader, TheShortestJobLeavesTheRestUnknown) {
  const auto survey = read_well(shortest_job);
  EXPECT_EQ(survey.place.nearest, "london");
  EXPECT_DOUBLE_EQ(survey.window.opening_widths_m.at(0), 0.903);
  EXPECT_DOUBLE_EQ(survey.window.opening_heights_m.at(2), 1.503);
  EXPECT_FALSE(survey.window.diagonals_m);
  EXPECT_FALSE(survey.settle_first.way_out);
  EXPECT_FALSE(survey.settle_first.burning);
  EXPECT_FALSE(survey.settle_first.fresh_air);
  EXPECT_FALSE(survey.settle_first.protection);
  EXPECT_FALSE(survey.settle_first.old_glass);
  EXPECT_TRUE(survey.joints.feelers.empty());
}

TEST(Reader, PartsInTheWayAndWhatTheSupplierHas) {
  const auto unknown = read_well(shortest_job);
  EXPECT_FALSE(unknown.window.moves);
  EXPECT_FALSE(unknown.window.blind.there);
  EXPECT_EQ(unknown.sheet.grade, SheetGrade::not_known);
  EXPECT_FALSE(unknown.sheet.stock);
  auto job = test::replaced(shortest_job, "[sheet]\n",
                            "moves = \"outwards\"\nhandle_stands_out_mm = 31\nstay_stands_out_mm = 8\n"
                            "shutter_mm = \"none\"\nblind_mm = -4\n[sheet]\n");
  const auto survey = read_well(job + "grade = \"cast\"\nstock_mm = [1250, 2050]\n");
  EXPECT_EQ(survey.window.moves, SashMoves::outwards);
  EXPECT_DOUBLE_EQ(survey.window.handle_stands_out_m.value(), 0.031);
  EXPECT_DOUBLE_EQ(survey.window.stay_stands_out_m.value(), 0.008);
  EXPECT_EQ(survey.window.shutter.there, HungPart::There::no);
  EXPECT_FALSE(survey.window.shutter.clearance_m);
  EXPECT_EQ(survey.window.blind.there, HungPart::There::yes);
  EXPECT_DOUBLE_EQ(survey.window.blind.clearance_m.value(), -0.004);
  EXPECT_EQ(survey.sheet.grade, SheetGrade::cast);
  EXPECT_DOUBLE_EQ(survey.sheet.stock.value().height_m, 2.05);
  auto sash = test::replaced(shortest_job, "\"casement\"", "\"sliding sash\"");
  sash = test::replaced(sash, "[sheet]\n", "between_sashes_mm = 14\n[sheet]\n");
  EXPECT_DOUBLE_EQ(read_well(sash).window.between_sashes_m.value(), 0.014);
}

TEST(Reader, FillsEveryPartOfTheSurvey) {
  const auto survey = read_well(test::text_of(test::examples_dir + "/old-sash.toml"));
  EXPECT_EQ(survey.window.kind, WindowKind::sliding_sash);
  EXPECT_EQ(survey.window.glass_to_fixing_face_m, (std::vector<double>{0.032, 0.074}));
  EXPECT_EQ(survey.window.facing_compass_deg, 45.0);
  EXPECT_EQ(survey.window.pane_count, 2);
  EXPECT_EQ(survey.sheet.tape, TapeKind::closed_cell_foam);
  EXPECT_DOUBLE_EQ(survey.sheet.tape_thickness_m.value(), 0.005);
  ASSERT_EQ(survey.joints.feelers.size(), 8u);
  EXPECT_EQ(survey.joints.feelers.at(5), Feeler::coin);
  EXPECT_EQ(survey.tissue.meeting_rail, TissueWay::out);
  EXPECT_EQ(survey.tissue.extract_on, false);
  EXPECT_EQ(survey.room.centre_mists, CentreMists::cool_days);
  ASSERT_EQ(survey.room.hygrometer.size(), 2u);
  EXPECT_DOUBLE_EQ(survey.room.hygrometer.at(1).relative_humidity, 0.61);
  EXPECT_DOUBLE_EQ(survey.room.hygrometer.at(0).outdoor_C, 5.0);
  EXPECT_EQ(survey.timber.bottom_rail, TimberFeel::firm);
  EXPECT_EQ(survey.building.outlook, Shelter::suburb);
  EXPECT_EQ(survey.settle_first.burning, Burning::nothing);
  EXPECT_EQ(survey.settle_first.answered_by, "the householder, at the window");
}

TEST(Reader, TicksAreYesAndNoOrTrueAndFalse) {
  for (const auto* yes : {"\"yes\"", "\"Yes\"", "true"})
    EXPECT_EQ(read_well(shortest_job + "[timber]\nwater_pools = " + yes).timber.water_pools, true);
  for (const auto* no : {"\"no\"", "false"})
    EXPECT_EQ(read_well(shortest_job + "[timber]\nwater_pools = " + no).timber.water_pools, false);
}

TEST(Reader, FacingIsAWordOrDegrees) {
  const auto job = [](const std::string& facing) {
    return test::replaced(shortest_job, "[window]\n", "[window]\nfacing = " + facing + "\n");
  };
  EXPECT_EQ(read_well(job("\"south-west\"")).window.facing_compass_deg, 225.0);
  EXPECT_EQ(read_well(job("\"North\"")).window.facing_compass_deg, 0.0);
  EXPECT_EQ(read_well(job("12.5")).window.facing_compass_deg, 12.5);
  EXPECT_EQ(read_well(job("\"not known\"")).window.facing_compass_deg, std::nullopt);
}

TEST(Reader, NotKnownIsTakenByEveryFieldThatIsNotNeeded) {
  for (const auto& field : job_table().fields) {
    if (field.section == "room.hygrometer") continue;
    const auto header = "[" + std::string(field.section) + "]\n";
    const auto line = std::string(field.key) + " = \"not known\"\n";
    const bool has_section = shortest_job.find(header) != std::string::npos;
    if (field.need == Need::required) continue;
    const auto text =
        has_section ? test::replaced(shortest_job, header, header + line) : shortest_job + header + line;
    EXPECT_EQ(problem_lines(field.path(), read_job(text).problems), "");
  }
  EXPECT_TRUE(read_well(shortest_job + "[room]\nhygrometer = \"not known\"\n").room.hygrometer.empty());
}

TEST(Reader, NotKnownIsNoAnswerWhereNothingCanBeWorkedOutWithout) {
  for (const auto* line : {"kind = \"casement\"", "material = \"acrylic\"", "nearest = \"london\""}) {
    const std::string whole(line);
    const auto key = whole.substr(0, whole.find(' '));
    const auto read = read_job(test::replaced(shortest_job, whole, key + " = \"not known\""));
    ASSERT_EQ(read.problems.size(), 1u) << line;
    EXPECT_NE(read.problems.front().what.find(key), std::string::npos);
  }
}

/// What is said about a job with one line more under [window].
std::string told_of(const std::string& line) {
  return problem_lines(
      "job", read_job(test::replaced(shortest_job, "[window]\n", "[window]\n" + line + "\n")).problems);
}

TEST(Reader, OtherWaysToSayNotKnownPointAtIt) {
  for (const auto* line : {"facing = \"unknown\"", "diagonals_mm = \"dont know\"", "panes = \"don't know\""})
    EXPECT_NE(told_of(line).find("write \"not known\""), std::string::npos) << told_of(line);
  const auto needed = read_job(test::replaced(shortest_job, "\"casement\"", "\"unknown\""));
  ASSERT_EQ(needed.problems.size(), 1u);
  EXPECT_NE(needed.problems.front().what.find("is no answer here"), std::string::npos);
  EXPECT_EQ(problem_lines("job", read_job(shortest_job + "[job]\nname = \"unknown\"\n").problems), "");
}

TEST(Reader, AFaultOfSyntaxComesWithAHintOnItsOwnLine) {
  const auto lines = test::lines_of(told_of("catch_stands_out_mm = 4,5"));
  ASSERT_EQ(lines.size(), 2u);
  EXPECT_TRUE(lines.back().starts_with("job:4:") && lines.back().ends_with(": hint: use a point: 4.5"))
      << lines.back();
  EXPECT_EQ(test::lines_of(told_of("panes = 1.2.3")).size(), 1u) << "nothing to guess";
}

TEST(Reader, ANearWordIsGuessed) {
  EXPECT_NE(told_of("facing = \"northeast\"").find("is \"north-east\" meant?"), std::string::npos);
}

TEST(Reader, RangesAreThoseOfTheLibrary) {
  const auto problem_count = [](const std::string& lines) {
    return read_job(shortest_job + lines).problems.size();
  };
  EXPECT_EQ(problem_count("[room]\ntemperature_C = 9.9\n"), 1u);
  EXPECT_EQ(problem_count("[room]\ntemperature_C = 10\n"), 0u);
  EXPECT_EQ(problem_count("[expert]\nframe_u_value_W_m2K = 10.1\n"), 1u);
  EXPECT_EQ(problem_count("[expert]\nframe_u_value_W_m2K = 0.3\n"), 0u);
  EXPECT_EQ(problem_count("[expert]\nmean_pressure_Pa = -20.1\n"), 1u);
  EXPECT_EQ(problem_count("[expert]\nmean_pressure_Pa = 20\n"), 0u);
  EXPECT_EQ(problem_count("thickness_mm = 1.9\n"), 1u) << "a rigid sheet, told by the library";
  EXPECT_EQ(problem_count("thickness_mm = 2\n"), 0u);
}

TEST(Reader, MoneyIsKeptInTheUnitsOfTheLibrary) {
  const auto read = read_money(test::text_of(test::examples_dir + "/money.toml"));
  EXPECT_EQ(problem_lines("money", read.problems), "");
  EXPECT_EQ(read.answers.currency, "EUR");
  EXPECT_DOUBLE_EQ(read.answers.money.price_per_kWh, 0.12);
  EXPECT_DOUBLE_EQ(read.answers.money.system_efficiency, 0.85);
  EXPECT_DOUBLE_EQ(read.answers.money.discount_rate, 0.03);
  EXPECT_DOUBLE_EQ(read.answers.money.life_years.value(), 15.0);
}

TEST(Reader, SaysEverythingThatIsWrongAtOnceInTheOrderOfTheLines) {
  const auto read = read_job(test::text_of(test::tools_test_dir + "/bad_input/all_at_once.toml"));
  ASSERT_GE(read.problems.size(), 5u);
  for (std::size_t i = 1; i < read.problems.size(); ++i)
    EXPECT_LE(read.problems[i - 1].mark.line, read.problems[i].mark.line);
}

/// A comma for the decimal point and dots between thousands, as in much of Europe.
class CommaLocale : public std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

TEST(Reader, NumbersDoNotDependOnTheLocale) {
  const auto plain = test::run_cli(
      {"assess", test::examples_dir + "/old-sash.toml", "--samples", "32", "--window-hours", "0", "--json"});
  const auto plain_text = test::run_cli(
      {"assess", test::examples_dir + "/old-sash.toml", "--samples", "32", "--window-hours", "0"});
  const std::locale before = std::locale::global(std::locale(std::locale::classic(), new CommaLocale));
  const auto survey = read_well(test::text_of(test::examples_dir + "/steel-casement.toml"));
  const auto json = test::run_cli(
      {"assess", test::examples_dir + "/old-sash.toml", "--samples", "32", "--window-hours", "0", "--json"});
  const auto text = test::run_cli(
      {"assess", test::examples_dir + "/old-sash.toml", "--samples", "32", "--window-hours", "0"});
  std::locale::global(before);
  EXPECT_DOUBLE_EQ(survey.sheet.tape_width_m.value(), 0.0127);
  EXPECT_EQ(json.out, plain.out);
  EXPECT_EQ(text.out, plain_text.out);
}

TEST(TomlTree, ATextThatStopsTheParsersOwnAssertionIsAFault) {
  const auto toml = read_toml("[\nc\n");
  ASSERT_TRUE(toml.fault);
  EXPECT_EQ(toml.fault->mark.line, 1);
}

TEST(TomlTree, AnUnquotedLetterBeyondAsciiIsAFaultAndAQuotedOneIsNot) {
  EXPECT_TRUE(read_toml("cl\xD1\xA4").fault);
  EXPECT_TRUE(read_toml("\xC3\xA9 = 1").fault);
  EXPECT_TRUE(read_toml("a = \xC3\xA9").fault);
  EXPECT_FALSE(read_toml("a = \"\xC3\xA9\"   # \xC3\xA9").fault);
}

TEST(TomlTree, DeepNestingIsAFault) {
  EXPECT_TRUE(read_toml("a = " + std::string(1000, '[') + std::string(1000, ']')).fault);
  std::string dotted = "a";
  for (int i = 0; i < 1500; ++i) dotted += ".a";
  EXPECT_TRUE(read_toml(dotted + " = 1").fault) << "a line this long is not read";
}

TEST(TomlTree, ADottedKeyAsDeepAsALineAllowsIsRead) {
  std::string dotted = "a";
  while (dotted.size() < most_line_bytes - 10) dotted += ".a";
  const auto read = read_job(dotted + " = 1");
  EXPECT_FALSE(read.problems.empty());
}

TEST(TomlTree, ALargeTextIsRefusedBeforeItIsRead) {
  const auto toml = read_toml(std::string(most_input_bytes + 1, '#'));
  ASSERT_TRUE(toml.fault);
  EXPECT_NE(toml.fault->what.find("larger than"), std::string::npos);
}

}  // namespace
}  // namespace dewgap::tools
