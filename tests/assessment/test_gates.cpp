#include <gtest/gtest.h>

#include <functional>
#include <string>
#include <vector>

#include "assessment/survey_cases.hpp"
#include "dewgap/assessment/gates.hpp"

namespace dewgap::test {
namespace {

struct GateCase {
  std::string name;
  GateKind kind;
  bool answered;
  std::function<void(SettleFirst&)> answer;
};

std::vector<GateCase> holding_answers() {
  return {
      {"way out not answered", GateKind::way_out, false, [](SettleFirst& a) { a.way_out.reset(); }},
      {"might be a way out", GateKind::way_out, true,
       [](SettleFirst& a) { a.way_out = WayOut::might_be_needed; }},
      {"burning not answered", GateKind::burning, false, [](SettleFirst& a) { a.burning.reset(); }},
      {"open fire", GateKind::burning, true, [](SettleFirst& a) { a.burning = Burning::open_fire; }},
      {"flued gas fire", GateKind::burning, true,
       [](SettleFirst& a) { a.burning = Burning::flued_gas_fire; }},
      {"stove", GateKind::burning, true, [](SettleFirst& a) { a.burning = Burning::stove; }},
      {"boiler in the room", GateKind::burning, true,
       [](SettleFirst& a) { a.burning = Burning::boiler_in_room; }},
      {"flueless heater", GateKind::burning, true,
       [](SettleFirst& a) { a.burning = Burning::flueless_heater; }},
      {"fresh air not answered", GateKind::fresh_air, false, [](SettleFirst& a) { a.fresh_air.reset(); }},
      {"only this window", GateKind::fresh_air, true,
       [](SettleFirst& a) { a.fresh_air = FreshAir::only_this_window; }},
      {"protection not answered", GateKind::protection, false, [](SettleFirst& a) { a.protection.reset(); }},
      {"consent pending", GateKind::protection, true,
       [](SettleFirst& a) { a.protection = Protection::consent_pending; }},
      {"consent not sought", GateKind::protection, true,
       [](SettleFirst& a) { a.protection = Protection::consent_not_sought; }},
      {"glass not answered", GateKind::old_glass, false, [](SettleFirst& a) { a.old_glass.reset(); }},
      {"historic glass", GateKind::old_glass, true,
       [](SettleFirst& a) { a.old_glass = OldGlassKind::leaded_painted_or_historic; }},
  };
}

TEST(Gates, EveryUnsafeOrUnansweredQuestionHoldsAndLeavesNoFigures) {
  for (const auto& gate : holding_answers()) {
    SCOPED_TRACE(gate.name);
    auto survey = worn_sash_survey();
    gate.answer(survey.settle_first);
    const auto answer = assess(survey, quick_options());
    EXPECT_EQ(answer.headline, Headline::hold);
    EXPECT_FALSE(answer.figures.has_value());
    EXPECT_FALSE(answer.cautions.empty());
    ASSERT_EQ(answer.open_gates.size(), 1u);
    EXPECT_EQ(answer.open_gates[0].kind, gate.kind);
    EXPECT_EQ(answer.open_gates[0].answered, gate.answered);
  }
}

TEST(Gates, NothingAnsweredHoldsOnAllFive) {
  EXPECT_EQ(open_gates(SettleFirst{}).size(), 5u);
}

TEST(Gates, SafeAnswersOpen) {
  EXPECT_TRUE(open_gates(all_settled()).empty());
  auto answers = all_settled();
  answers.burning = Burning::balanced_flue;
  answers.protection = Protection::consent_given;
  EXPECT_TRUE(open_gates(answers).empty());
}

}  // namespace
}  // namespace dewgap::test
