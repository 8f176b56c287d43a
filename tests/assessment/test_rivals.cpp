#include "dewgap/assessment/rivals.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "assessment/survey_cases.hpp"
#include "dewgap/assessment/rivals_kernel.hpp"

namespace dewgap::test {
namespace {

std::vector<RivalKind> kinds_of(const std::vector<Rival>& list) {
  std::vector<RivalKind> kinds;
  std::transform(list.begin(), list.end(), std::back_inserter(kinds), [](const Rival& r) { return r.kind; });
  return kinds;
}

const Rival& find(const std::vector<Rival>& list, RivalKind kind) {
  const auto at =
      std::find_if(list.begin(), list.end(), [kind](const Rival& rival) { return rival.kind == kind; });
  EXPECT_NE(at, list.end()) << name_of(kind);
  return *at;
}

TEST(Rivals, AllSevenOfAWornSash) {
  const auto list = rivals(worn_sash_survey(), quick_options());
  EXPECT_EQ(kinds_of(list), (std::vector{RivalKind::do_nothing, RivalKind::repair_and_strip,
                                         RivalKind::lined_curtains, RivalKind::shutters, RivalKind::sheet,
                                         RivalKind::sheet_off_in_summer, RivalKind::sheet_and_strip}));
  for (const auto& rival : list) {
    EXPECT_LE(rival.heat_saved_kWh.p10, rival.heat_saved_kWh.p90);
    EXPECT_FALSE(rival.sentence.empty());
    EXPECT_FALSE(rival.damp.empty());
    EXPECT_EQ(rival.against_sheet.has_value(), rival.kind != RivalKind::sheet);
    EXPECT_FALSE(rival.money.has_value()) << "nobody gave a price";
  }
}

TEST(Rivals, TheSheetIsTheAnswersToTheDigit) {
  const auto survey = worn_sash_survey();
  const auto answer = assess(survey, quick_options());
  const auto list = rivals(survey, quick_options(), answer);
  const auto& sheet = find(list, RivalKind::sheet);
  const auto& side = answer.figures->now_and_with;
  EXPECT_EQ(sheet.heat_saved_kWh.p50, side.heat_saved_kWh.p50);
  EXPECT_EQ(sheet.heat_saved_kWh.p10, side.heat_saved_kWh.p10);
  EXPECT_EQ(sheet.frost_room_face_C.p50, side.room_face_after_C.p50);
  EXPECT_EQ(sheet.draught_m3_h.p90, side.draught_after_m3_h.p90);
  const auto& nothing = find(list, RivalKind::do_nothing);
  EXPECT_EQ(nothing.frost_room_face_C.p50, side.room_face_before_C.p50);
  EXPECT_EQ(nothing.draught_m3_h.p50, side.draught_before_m3_h.p50);
  const auto& vent = answer.figures->vents.at(index_of(answer.figures->vent));
  EXPECT_EQ(sheet.month_margin_K.p50, vent.month_margin_K.p50);
  EXPECT_NEAR(sheet.dry_month_share, vent.dry_share, 1e-12);
}

TEST(Rivals, EachDoesWhatItMust) {
  const auto list = rivals(worn_sash_survey(), quick_options());
  const auto& nothing = find(list, RivalKind::do_nothing);
  const auto& strip = find(list, RivalKind::repair_and_strip);
  const auto& curtains = find(list, RivalKind::lined_curtains);
  const auto& shutters = find(list, RivalKind::shutters);
  const auto& sheet = find(list, RivalKind::sheet);
  EXPECT_EQ(nothing.heat_saved_kWh.p10, 0.0);
  EXPECT_EQ(nothing.heat_saved_kWh.p90, 0.0);
  EXPECT_GT(strip.heat_saved_kWh.p50, 0.0);
  EXPECT_LT(strip.draught_m3_h.p50, nothing.draught_m3_h.p50);
  EXPECT_EQ(strip.frost_pane_C.p50, nothing.frost_pane_C.p50);
  EXPECT_LE(strip.frost_margin_K.p50, nothing.frost_margin_K.p50) << "stopped draught carried moisture away";
  EXPECT_LT(curtains.frost_pane_C.p50, nothing.frost_pane_C.p50 - 1.0) << "colder behind the curtain";
  EXPECT_NE(curtains.sentence.find("K colder"), std::string::npos) << curtains.sentence;
  EXPECT_LT(curtains.frost_margin_K.p50, nothing.frost_margin_K.p50);
  EXPECT_GT(shutters.heat_saved_kWh.p50, curtains.heat_saved_kWh.p50);
  EXPECT_GT(sheet.heat_saved_kWh.p50, curtains.heat_saved_kWh.p50);
  EXPECT_EQ(nothing.against_sheet->sheet_warmer_share, 1.0);
  EXPECT_NEAR(nothing.against_sheet->sheet_saves_more_kWh.p50, sheet.heat_saved_kWh.p50, 1e-9);
  EXPECT_EQ(nothing.against_sheet->rival_saves_more_share, 0.0);
  EXPECT_EQ(curtains.against_sheet->rival_warmer_share, 1.0) << "the cloth's face";
  for (const auto& rival : list) {
    if (rival.against_sheet) {
      const auto& against = *rival.against_sheet;
      EXPECT_LE(against.sheet_saves_more_share + against.rival_saves_more_share, 1.0 + 1e-12);
      EXPECT_LE(against.sheet_drier_share + against.rival_drier_share, 1.0 + 1e-12);
    }
  }
  const auto& off = *find(list, RivalKind::sheet_off_in_summer).against_sheet;
  EXPECT_EQ(off.sheet_saves_more_share + off.rival_saves_more_share, 0.0) << "a tie in winter";
  EXPECT_LT(find(list, RivalKind::sheet_and_strip).draught_m3_h.p50, sheet.draught_m3_h.p50);
}

TEST(Rivals, OnlyThoseThatTheWindowCanHave) {
  auto survey = worn_sash_survey();
  survey.window.kind = WindowKind::fixed_light;
  EXPECT_EQ(kinds_of(rivals(survey, quick_options())),
            (std::vector{RivalKind::do_nothing, RivalKind::lined_curtains, RivalKind::shutters,
                         RivalKind::sheet, RivalKind::sheet_off_in_summer}));
  survey = worn_sash_survey();
  survey.joints.weather_stripped = true;
  survey.sheet.curtain_gap_m = 0.08;
  EXPECT_EQ(kinds_of(rivals(survey, quick_options())),
            (std::vector{RivalKind::do_nothing, RivalKind::sheet, RivalKind::sheet_off_in_summer}));
  EXPECT_EQ(offered_rivals(worn_sash_survey(), VentOption::off_in_summer).size(), 6u);
}

TEST(Rivals, AnOpenGateLeavesNothingToCompare) {
  auto survey = worn_sash_survey();
  survey.settle_first.burning.reset();
  EXPECT_TRUE(rivals(survey, quick_options()).empty());
  const auto held = assess(survey, quick_options());
  EXPECT_TRUE(rivals(survey, quick_options(), held).empty());
  EXPECT_TRUE(rivals(worn_sash_survey(), quick_options(), held).empty());
}

TEST(Rivals, MoneyIsTheUsersOwn) {
  auto survey = worn_sash_survey();
  survey.money = MoneyTerms{.price_per_kWh = 0.1, .system_efficiency = 0.8, .cost = 90.0, .life_years = 15.0};
  const auto list = rivals(survey, quick_options(), {.lined_curtains = 60.0});
  EXPECT_FALSE(find(list, RivalKind::do_nothing).money.has_value());
  const auto& strip = find(list, RivalKind::repair_and_strip);
  EXPECT_NEAR(strip.money->saved_per_year.p50, strip.heat_saved_kWh.p50 / 0.8 * 0.1, 1e-9);
  EXPECT_FALSE(strip.money->payback_years.has_value()) << "no cost was given for it";
  EXPECT_FALSE(strip.money->net_present_value.has_value());
  const auto& curtains = find(list, RivalKind::lined_curtains);
  ASSERT_TRUE(curtains.money->payback_years.has_value());
  EXPECT_NEAR(curtains.money->payback_years->p50, 60.0 / curtains.money->saved_per_year.p50, 0.05);
  EXPECT_TRUE(find(list, RivalKind::sheet).money->net_present_value.has_value());
}

TEST(Rivals, CostForEachKilowattHourIsTheUsersCostOverTheSaving) {
  auto survey = worn_sash_survey();
  survey.money = MoneyTerms{.price_per_kWh = 0.1, .cost = 90.0};
  const auto list = rivals(survey, quick_options(), {.repair_and_strip = 30.0});
  const auto& sheet = find(list, RivalKind::sheet);
  EXPECT_EQ(sheet.cost, 90.0);
  ASSERT_TRUE(sheet.cost_per_yearly_kWh.has_value());
  EXPECT_DOUBLE_EQ(sheet.cost_per_yearly_kWh->p10, 90.0 / sheet.heat_saved_kWh.p90);
  EXPECT_DOUBLE_EQ(sheet.cost_per_yearly_kWh->p50, 90.0 / sheet.heat_saved_kWh.p50);
  EXPECT_DOUBLE_EQ(sheet.cost_per_yearly_kWh->p90, 90.0 / sheet.heat_saved_kWh.p10);
  EXPECT_EQ(find(list, RivalKind::sheet_and_strip).cost, 120.0) << "both are bought";
  const auto& curtains = find(list, RivalKind::lined_curtains);
  EXPECT_FALSE(curtains.cost.has_value()) << "none was given, and none is built in";
  EXPECT_FALSE(curtains.cost_per_yearly_kWh.has_value());
  survey.money.reset();
  EXPECT_FALSE(find(rivals(survey, quick_options(), {.repair_and_strip = 30.0}), RivalKind::repair_and_strip)
                   .cost.has_value())
      << "without prices there is no money at all";
}

TEST(Rivals, TheBillCapsThemAll) {
  auto survey = worn_sash_survey();
  survey.building.bill_kWh = 20.0;
  for (const auto& rival : rivals(survey, quick_options())) {
    EXPECT_LE(rival.heat_saved_kWh.p90, 20.0) << rival.name;
  }
}

TEST(Rivals, StrippedJointsAreNeverLeakier) {
  const auto beliefs = beliefs_for(worn_sash_survey());
  const auto samples = draw_samples(beliefs, 256, 1, 1.0);
  std::size_t tighter = 0;
  for (std::size_t i = 0; i < samples.size(); ++i) {
    const auto stripped = with_stripped_joints(samples[i], i, 1);
    EXPECT_LE(stripped[Unknown::joint_leakage], samples[i][Unknown::joint_leakage]);
    tighter += stripped[Unknown::joint_leakage] < samples[i][Unknown::joint_leakage] ? 1u : 0u;
  }
  EXPECT_GT(tighter, 200u) << "most worn joints can be stripped tighter";
}

TEST(Rivals, TheYearIsTheAnswersOwn) {
  const auto survey = worn_sash_survey();
  AssessOptions options = quick_options();
  options.most_window_hours = 2'000'000;
  const auto answer = assess(survey, options);
  ASSERT_TRUE(answer.figures->year.has_value());
  ASSERT_FALSE(answer.figures->year->options.empty()) << answer.figures->year->not_settled_because;
  const auto list = rivals(survey, options, answer);
  const auto& sheet = find(list, RivalKind::sheet);
  EXPECT_EQ(sheet.heat_saved_kWh.p50, answer.figures->now_and_with.heat_saved_kWh.p50);
  EXPECT_EQ(find(list, RivalKind::do_nothing).misty_mornings->p50,
            answer.figures->year->as_it_is.misty_mornings.p50);
  EXPECT_TRUE(sheet.acceptable_share.has_value());
  EXPECT_FALSE(find(list, RivalKind::lined_curtains).misty_mornings.has_value());
}

}  // namespace
}  // namespace dewgap::test
