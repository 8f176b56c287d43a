// What to do after the first frosty mornings.
#include "tools/answer/frost_step.hpp"

#include <gtest/gtest.h>

#include "hand_made_advice.hpp"

namespace dewgap::test {
namespace {

using tools::FrostStep;

struct StepCase {
  std::string name;
  VentOption fitted = VentOption::sealed;
  VentOption choice = VentOption::sealed;
  double fitted_share = 0.9;
  double choice_share = 0.9;
  bool settled = true;
  WinterReading::Mist worst = WinterReading::Mist::edges;
  FrostStep step = FrostStep::keep;
};

void PrintTo(const StepCase& one, std::ostream* out) {
  *out << one.name;
}

constexpr auto edges = WinterReading::Mist::edges;
const std::vector<StepCase> step_cases{
    {"the_choice_hangs", VentOption::sealed, VentOption::sealed, 0.9, 0.9, true, edges, FrostStep::keep},
    {"good_enough_hangs", VentOption::sealed, VentOption::breaks_bottom, 0.75, 0.95, true, edges,
     FrostStep::keep},
    {"water_ran", VentOption::sealed, VentOption::sealed, 0.9, 0.9, true, WinterReading::Mist::runs,
     FrostStep::take_down},
    {"mist_all_over_is_no_run", VentOption::sealed, VentOption::sealed, 0.9, 0.9, true,
     WinterReading::Mist::all_over, FrostStep::keep},
    {"no_way_is_good", VentOption::sealed, VentOption::breaks_bottom, 0.2, 0.4, true, edges,
     FrostStep::take_down},
    {"breaks_are_better", VentOption::sealed, VentOption::breaks_bottom, 0.5, 0.9, true, edges,
     FrostStep::open_breaks},
    {"four_breaks_are_better", VentOption::sealed, VentOption::breaks_bottom_and_top, 0.5, 0.9, true, edges,
     FrostStep::open_breaks},
    {"breaks_are_not_settled", VentOption::sealed, VentOption::breaks_bottom, 0.5, 0.9, false, edges,
     FrostStep::keep_and_look},
    {"other_breaks_hang", VentOption::breaks_bottom, VentOption::breaks_bottom_and_top, 0.5, 0.9, true, edges,
     FrostStep::call},
    {"stripping_takes_tools", VentOption::sealed, VentOption::joints_stripped, 0.5, 0.9, true, edges,
     FrostStep::call}};

class FrostSteps : public testing::TestWithParam<StepCase> {};

TEST_P(FrostSteps, FollowTheYearAndWhatWasSeen) {
  const auto& one = GetParam();
  auto advice = hand_made_advice();
  advice.settled = one.settled;
  advice.tied.clear();
  advice.choice = one.choice;
  for (auto& option : advice.options) {
    option.acceptable_share = 0.1;
    if (option.option == one.fitted) option.acceptable_share = one.fitted_share;
    if (option.option == one.choice) option.acceptable_share = one.choice_share;
  }
  const std::vector<WinterReading> readings{{.date = "3 December", .outdoor_C = -4.0, .mist = edges},
                                            {.date = "4 December", .outdoor_C = -4.0, .mist = one.worst}};
  EXPECT_EQ(tools::frost_step(advice, one.fitted, readings), one.step);
  EXPECT_NE(tools::step_words(one.step), "");
  EXPECT_TRUE(tools::step_sentence(one.step, one.choice).ends_with('.'));
}

INSTANTIATE_TEST_SUITE_P(Table, FrostSteps, testing::ValuesIn(step_cases),
                         [](const testing::TestParamInfo<StepCase>& tested) { return tested.param.name; });

TEST(FrostStep, ATieWithTheChoiceStays) {
  auto advice = hand_made_advice();
  advice.choice = VentOption::sealed;
  advice.tied = {VentOption::breaks_bottom};
  for (auto& option : advice.options) option.acceptable_share = 0.6;
  EXPECT_EQ(tools::frost_step(advice, VentOption::breaks_bottom, {}), FrostStep::keep);
  EXPECT_EQ(tools::frost_step(advice, VentOption::weep_to_outdoors, {}), FrostStep::call);
}

TEST(FrostStep, WithoutSharesNothingIsCut) {
  auto advice = hand_made_advice();
  advice.settled = false;
  advice.options.clear();
  EXPECT_EQ(tools::frost_step(advice, VentOption::sealed, {}), FrostStep::keep_and_look);
}

}  // namespace
}  // namespace dewgap::test
