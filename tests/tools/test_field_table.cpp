#include <gtest/gtest.h>

#include <set>

#include "run_cli.hpp"
#include "tools/job/compass.hpp"
#include "tools/job/field.hpp"
#include "tools/job/reader.hpp"
#include "tools/job/spelling.hpp"
#include "tools/job/starter.hpp"
#include "tools/job/survey_check_kernel.hpp"
#include "tools/job/syntax_hint.hpp"

namespace dewgap::tools {
namespace {

TEST(FieldTable, EveryPathOccursOnceAndItsSectionIsKnown) {
  for (const auto* table : {&job_table(), &money_table()}) {
    std::set<std::string> paths;
    for (const auto& field : table->fields) {
      EXPECT_TRUE(paths.insert(field.path()).second) << field.path();
      EXPECT_NE(table->find_section(field.section), nullptr) << field.path();
      EXPECT_FALSE(field.help.empty()) << field.path();
      EXPECT_FALSE(permitted_text(field.rule).empty()) << field.path();
    }
    EXPECT_FALSE(paths.empty());
  }
}

TEST(FieldTable, OnlyQuestionsToSettleFirstHaveNoExample) {
  for (const auto& field : job_table().fields)
    EXPECT_EQ(field.example.empty(), field.need == Need::settle_first) << field.path();
}

TEST(FieldTable, AKeyInMillimetresOrPerCentSaysSo) {
  for (const auto& field : job_table().fields) {
    const auto unit = unit_text(field.rule);
    EXPECT_EQ(unit == millimetres.symbol, field.key.ends_with("_mm")) << field.path();
    EXPECT_EQ(unit == per_cent.symbol, field.key.ends_with("_pct")) << field.path();
  }
}

TEST(Units, RoundTripsKeepTheValue) {
  for (const Unit unit : {millimetres, per_cent, celsius, plain})
    for (const double value : {0.0, 0.1, 3.0, 12.7, 63.0, 903.0, 1501.0, 4000.0})
      EXPECT_NEAR(unit.from_base(unit.to_base(value)), value, 1e-15 * (1.0 + value)) << unit.symbol;
  EXPECT_DOUBLE_EQ(millimetres.to_base(903.0), 0.903);
  EXPECT_DOUBLE_EQ(per_cent.to_base(63.0), 0.63);
}

TEST(Compass, EightWordsGoRoundOnce) {
  EXPECT_EQ(compass_bearing_deg("north"), 0.0);
  EXPECT_EQ(compass_bearing_deg("north-east"), 45.0);
  EXPECT_EQ(compass_bearing_deg("north-west"), 315.0);
  EXPECT_FALSE(compass_bearing_deg("up"));
}

TEST(Spelling, CountsEdits) {
  EXPECT_EQ(edit_distance("kitten", "sitting"), 3u);
  EXPECT_EQ(edit_distance("", "abc"), 3u);
  EXPECT_EQ(edit_distance("same", "same"), 0u);
  EXPECT_EQ(nearest_word("glas_width_mm", {"glass_height_mm", "glass_width_mm"}), "glass_width_mm");
  EXPECT_EQ(nearest_word("zzzzzzzz", {"kind", "frame"}), "") << "nothing is near";
}

TEST(Spelling, GuessesAPermittedWordOnlyWhenASlipOrTwoAway) {
  EXPECT_EQ(nearest_permitted("Alumnium", {"steel", "aluminium"}), "aluminium");
  EXPECT_EQ(nearest_permitted("pvcu", {"softwood", "PVC-U"}), "PVC-U");
  EXPECT_EQ(nearest_permitted("protected", {"not protected", "consent given"}), "") << "the opposite";
  EXPECT_EQ(nearest_permitted("a way out", {"not a way out", "might be needed"}), "") << "the opposite";
  EXPECT_EQ(nearest_permitted("cheese", {"steel", "softwood"}), "");
}

TEST(SyntaxHint, SaysWhatToWriteInstead) {
  EXPECT_EQ(syntax_hint("thickness_mm = 4,5"), "use a point: 4.5");
  EXPECT_EQ(syntax_hint("temperature_C=-1,25  # cold, or so"), "use a point: -1.25");
  EXPECT_EQ(syntax_hint("nearest = london"), "put words in straight quotes: \"london\"");
  EXPECT_EQ(syntax_hint("x = \xE2\x80\x9Cnot known\xE2\x80\x9D"),
            "put words in straight quotes: \"not known\"");
  EXPECT_EQ(syntax_hint("use = 'don't know'"), "put words in straight quotes: \"don't know\"");
  EXPECT_EQ(syntax_hint("feelers = [coin, \"paper\"]"), "put words in straight quotes, \"like this\"");
  EXPECT_EQ(syntax_hint("catch_mm = 12 mm"), "give the number alone; its unit is in the key");
}

TEST(SyntaxHint, IsSilentWhereItWouldMislead) {
  for (const auto* line : {"", "widths_mm = [903,900", "[window", "x = \"half a word", "x = 1.2.3", "x = ,"})
    EXPECT_EQ(syntax_hint(line), std::string()) << line;
}

TEST(SyntaxHint, KnowsOtherWaysToSayNotKnown) {
  for (const auto* text : {"unknown", "Dont know", "don't know", "don\xE2\x80\x99t know", " ? "})
    EXPECT_TRUE(means_not_known(text)) << text;
  for (const auto* text : {"", "known", "steel", "no"}) EXPECT_FALSE(means_not_known(text)) << text;
}

TEST(SurveyCheck, FieldPathsOfTheLibraryFindTheirKeys) {
  EXPECT_EQ(job_key_of("window.opening_widths"), "window.opening_widths_mm");
  EXPECT_EQ(job_key_of("window.opening_widths_m"), "window.opening_widths_mm");
  EXPECT_EQ(job_key_of("window.diagonals"), "window.diagonals_mm");
  EXPECT_EQ(job_key_of("expert.room_humidity"), "expert.room_humidity_pct");
  EXPECT_EQ(job_key_of("building.floor"), "building.floor");
  EXPECT_EQ(job_key_of("no.such"), "");
}

TEST(Starter, TheListOfFieldsIsUpToDate) {
  EXPECT_EQ(test::text_of(test::tools_dir + "/job_fields.md"), field_list(job_table()))
      << "write it anew: dewgap starter --table > tools/job_fields.md";
}

TEST(Starter, AsksEachSafetyQuestionAndAnswersNone) {
  const auto text = starter_file(job_table());
  for (const auto& field : job_table().fields) {
    if (field.need != Need::settle_first) continue;
    const auto line = "\n# " + std::string(field.key) + " =\n";
    EXPECT_NE(text.find(line), std::string::npos) << field.path();
    EXPECT_EQ(text.find("\n" + std::string(field.key) + " ="), std::string::npos) << field.path();
  }
  const auto read = read_job(text);
  EXPECT_EQ(problem_lines("starter", read.problems), "");
  EXPECT_FALSE(read.answers.survey.settle_first.way_out);
  EXPECT_FALSE(read.answers.survey.settle_first.old_glass);
}

TEST(Starter, SaysNothingTwiceInOneSection) {
  for (const auto* table : {&job_table(), &money_table()})
    for (const auto& field : table->fields)
      EXPECT_NE(field.help, table->find_section(field.section)->help) << field.path();
}

TEST(Starter, ReadsAsAMoneyFile) {
  EXPECT_EQ(problem_lines("starter", read_money(starter_file(money_table())).problems), "");
}

/// The starter job, but a casement where the word says that the sash swings.
std::string starter_for(std::string_view word) {
  const bool swings = word == "inwards" || word == "outwards";
  return test::replaced(starter_file(job_table()), "\nkind = \"sliding sash\"",
                        swings ? "\nkind = \"casement\"" : "\nkind = \"sliding sash\"");
}

TEST(Starter, EveryExampleAndEveryPermittedWordIsTaken) {
  for (const auto& field : job_table().fields) {
    const auto* words = std::get_if<WordRule>(&field.rule);
    if (words == nullptr) continue;
    for (const auto word : words->words) {
      const auto text = test::replaced(starter_for(word),
                                       "\n" + std::string(field.key) + " = " + std::string(field.example),
                                       "\n" + std::string(field.key) + " = \"" + std::string(word) + "\"");
      EXPECT_EQ(problem_lines(field.path(), read_job(text).problems), "") << word;
    }
  }
}

}  // namespace
}  // namespace dewgap::tools
