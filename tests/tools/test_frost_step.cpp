// What to do after the first frosty mornings: a test for every row of the table, and what it is read from.
#include "tools/answer/frost_step.hpp"

#include <gtest/gtest.h>

#include <set>

#include "hand_made_advice.hpp"

namespace dewgap::test {
namespace {

using tools::FrostFindings;
using tools::FrostStep;
using Mist = WinterReading::Mist;

/// Three clear mornings under a sheet that is the choice and a FIT.
FrostFindings all_well() {
  return {.mornings = 3, .best_share = 0.9, .hangs_share = 0.9, .hangs_wins = true};
}

struct StepCase {
  std::string name;
  FrostStep step = FrostStep::keep;
  void (*change)(FrostFindings&) = nullptr;
};

void PrintTo(const StepCase& one, std::ostream* out) {
  *out << one.name;
}

void put_breaks(FrostFindings& f) {
  f.hangs_wins = false;
  f.hangs_share = 0.5;
  f.breaks_are_new = true;
}

const std::vector<StepCase> step_cases{
    {"all_well", FrostStep::keep, [](FrostFindings&) {}},
    {"a_fit_that_is_not_the_choice", FrostStep::keep, [](FrostFindings& f) { f.hangs_wins = false; }},
    {"water_ran", FrostStep::take_down, [](FrostFindings& f) { f.water_ran = true; }},
    {"water_ran_on_a_mild_morning", FrostStep::take_down,
     [](FrostFindings& f) {
       f.water_ran = true;
       f.mornings = 0;
     }},
    {"no_frosty_morning", FrostStep::look_after_frost, [](FrostFindings& f) { f.mornings = 0; }},
    {"no_frosty_morning_and_wet_timber", FrostStep::look_after_frost,
     [](FrostFindings& f) {
       f.mornings = 0;
       f.water_gets_in = true;
     }},
    {"no_way_is_good", FrostStep::take_down, [](FrostFindings& f) { f.best_share = f.hangs_share = 0.4; }},
    {"no_way_is_good_but_the_mornings_are_clear_against_it", FrostStep::keep_and_look,
     [](FrostFindings& f) {
       f.best_share = f.hangs_share = 0.4;
       f.against_model = true;
     }},
    {"no_way_is_good_and_one_misty_morning_goes_against_it", FrostStep::take_down,
     [](FrostFindings& f) {
       f.best_share = f.hangs_share = 0.4;
       f.against_model = true;
       f.misty = 1;
     }},
    {"mostly_misty_and_short_of_a_fit", FrostStep::take_down,
     [](FrostFindings& f) {
       f.misty = 2;
       f.best_share = f.hangs_share = 0.69;
     }},
    {"mostly_misty_and_breaks_not_settled", FrostStep::take_down,
     [](FrostFindings& f) {
       put_breaks(f);
       f.misty = 3;
       f.settled = false;
     }},
    {"mostly_misty_and_breaks_against_the_model", FrostStep::take_down,
     [](FrostFindings& f) {
       put_breaks(f);
       f.misty = 3;
       f.against_model = true;
     }},
    {"wet_timber", FrostStep::mend_first, [](FrostFindings& f) { f.water_gets_in = true; }},
    {"wet_timber_before_breaks", FrostStep::mend_first,
     [](FrostFindings& f) {
       put_breaks(f);
       f.misty = 3;
       f.water_gets_in = true;
     }},
    {"wet_timber_without_shares", FrostStep::mend_first,
     [](FrostFindings& f) {
       f.has_shares = f.settled = false;
       f.water_gets_in = true;
     }},
    {"mostly_misty_and_settled_on_breaks", FrostStep::open_breaks,
     [](FrostFindings& f) {
       put_breaks(f);
       f.misty = 2;
     }},
    {"mostly_misty_and_held_to_be_harmless", FrostStep::keep_and_dry, [](FrostFindings& f) { f.misty = 3; }},
    {"half_of_four_misty", FrostStep::keep_and_dry,
     [](FrostFindings& f) {
       f.mornings = 4;
       f.misty = 2;
     }},
    {"mostly_misty_without_shares", FrostStep::keep_and_dry,
     [](FrostFindings& f) {
       f.misty = 3;
       f.has_shares = f.settled = false;
       f.best_share = f.hangs_share = 0.0;
     }},
    {"without_shares_nothing_is_cut", FrostStep::keep_and_look,
     [](FrostFindings& f) {
       put_breaks(f);
       f.has_shares = f.settled = false;
       f.best_share = f.hangs_share = 0.0;
     }},
    {"not_settled", FrostStep::keep_and_look, [](FrostFindings& f) { f.settled = false; }},
    {"against_the_model", FrostStep::keep_and_look, [](FrostFindings& f) { f.against_model = true; }},
    {"one_misty_morning_of_three", FrostStep::keep_and_look, [](FrostFindings& f) { f.misty = 1; }},
    {"one_morning_and_misty", FrostStep::keep_and_look, [](FrostFindings& f) { f.mornings = f.misty = 1; }},
    {"the_best_but_no_fit", FrostStep::keep_and_look,
     [](FrostFindings& f) { f.best_share = f.hangs_share = 0.6; }},
    {"breaks_are_better", FrostStep::open_breaks, put_breaks},
    {"breaks_are_not_settled", FrostStep::keep_and_look,
     [](FrostFindings& f) {
       put_breaks(f);
       f.settled = false;
     }},
    {"it_takes_more_than_a_knife", FrostStep::call, [](FrostFindings& f) {
       f.hangs_wins = false;
       f.hangs_share = 0.5;
     }}};

class FrostSteps : public testing::TestWithParam<StepCase> {};

TEST_P(FrostSteps, FollowTheTable) {
  auto found = all_well();
  GetParam().change(found);
  EXPECT_EQ(tools::frost_step(found), GetParam().step);
}

INSTANTIATE_TEST_SUITE_P(Table, FrostSteps, testing::ValuesIn(step_cases),
                         [](const testing::TestParamInfo<StepCase>& tested) { return tested.param.name; });

/// Whatever else is found, what was seen outranks what is worked out.
TEST(FrostStep, MistOverAThirdOrMoreIsNeverPlainlyKept) {
  for (unsigned bits = 0; bits < 64; ++bits)
    for (const double share : {0.0, 0.6, 1.0})
      for (std::size_t misty = 1; misty <= 3; ++misty) {
        const FrostFindings found{.mornings = 3,
                                  .misty = misty,
                                  .against_model = (bits & 1U) != 0,
                                  .water_gets_in = (bits & 2U) != 0,
                                  .has_shares = (bits & 4U) != 0,
                                  .settled = (bits & 8U) != 0,
                                  .best_share = share,
                                  .hangs_share = share,
                                  .hangs_wins = (bits & 16U) != 0,
                                  .breaks_are_new = (bits & 32U) != 0};
        EXPECT_NE(tools::frost_step(found), FrostStep::keep) << bits << " " << share << " " << misty;
      }
}

TEST(FrostStep, WordsAreThereForEachAndDiffer) {
  std::set<std::string_view> words;
  std::set<std::string_view> keys;
  for (const auto step :
       {FrostStep::keep, FrostStep::keep_and_look, FrostStep::keep_and_dry, FrostStep::look_after_frost,
        FrostStep::mend_first, FrostStep::open_breaks, FrostStep::take_down, FrostStep::call}) {
    words.insert(tools::step_words(step));
    keys.insert(tools::json_word(step));
    EXPECT_TRUE(tools::step_sentence(step, VentOption::breaks_bottom).ends_with('.'));
  }
  EXPECT_EQ(words.size(), 8u);
  EXPECT_EQ(keys.size(), 8u);
}

Morning morning(Mist mist, bool used = true) {
  return {.reading = {.date = "3 December", .outdoor_C = -4.0, .mist = mist}, .used = used};
}

TEST(FrostFindings, CountFrostyMorningsAndTheirMist) {
  auto advice = hand_made_advice();
  advice.mornings = {morning(Mist::none), morning(Mist::edges), morning(Mist::lower_third),
                     morning(Mist::all_over), morning(Mist::all_over, false)};
  const auto found = tools::frost_findings(advice, VentOption::sealed, {});
  EXPECT_EQ(found.mornings, 4u);
  EXPECT_EQ(found.misty, 2u);
  EXPECT_TRUE(found.mostly_misty());
  EXPECT_FALSE(found.water_ran);
  EXPECT_FALSE(found.water_gets_in);
  advice.mornings.push_back(morning(Mist::runs, false));
  EXPECT_TRUE(tools::frost_findings(advice, VentOption::sealed, {}).water_ran);
}

TEST(FrostFindings, ReadTheYear) {
  auto advice = hand_made_advice();
  advice.choice = VentOption::breaks_bottom;
  advice.tied = {VentOption::breaks_bottom_longer};
  const auto found = tools::frost_findings(advice, VentOption::sealed, {});
  EXPECT_DOUBLE_EQ(found.hangs_share, 0.87);
  EXPECT_DOUBLE_EQ(found.best_share, 0.84);
  EXPECT_FALSE(found.hangs_wins);
  EXPECT_TRUE(found.breaks_are_new);
  const auto other = tools::frost_findings(advice, VentOption::breaks_bottom_longer, {});
  EXPECT_TRUE(other.hangs_wins);
  EXPECT_FALSE(other.breaks_are_new);
  advice.options.clear();
  EXPECT_FALSE(tools::frost_findings(advice, VentOption::sealed, {}).has_shares);
}

TEST(FrostFindings, UnderTenPerCentGoesAgainstTheModel) {
  auto advice = hand_made_advice();
  advice.mornings_foretold_share = 0.10;
  EXPECT_FALSE(tools::frost_findings(advice, VentOption::sealed, {}).against_model);
  advice.mornings_foretold_share = 0.099;
  EXPECT_TRUE(tools::frost_findings(advice, VentOption::sealed, {}).against_model);
  advice.mornings_foretold_share.reset();
  EXPECT_FALSE(tools::frost_findings(advice, VentOption::sealed, {}).against_model);
}

TEST(FrostFindings, OnlyWaterThatNoTapeMendsGetsIn) {
  const auto advice = hand_made_advice();
  const auto gets_in = [&](MendKind kind) {
    return tools::frost_findings(advice, VentOption::sealed, {{kind, "Mend it."}}).water_gets_in;
  };
  EXPECT_TRUE(gets_in(MendKind::water));
  EXPECT_FALSE(gets_in(MendKind::window));
  EXPECT_FALSE(gets_in(MendKind::obstacle));
  EXPECT_FALSE(gets_in(MendKind::setting_out));
}

}  // namespace
}  // namespace dewgap::test
