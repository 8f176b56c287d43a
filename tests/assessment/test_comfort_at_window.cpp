#include "dewgap/assessment/comfort_at_window.hpp"

#include <gtest/gtest.h>

#include <limits>

#include "assessment/survey_cases.hpp"
#include "dewgap/errors.hpp"

namespace dewgap::test {
namespace {

void expect_ordered(const Spread& spread) {
  EXPECT_LE(spread.p10, spread.p50);
  EXPECT_LE(spread.p50, spread.p90);
}

TEST(ComfortAtWindow, TheSheetWarmsAndCalms) {
  const auto comfort = comfort_at_window(worn_sash_survey());
  EXPECT_EQ(comfort.samples, 64u);
  EXPECT_EQ(comfort.samples_left_out, 0u);
  EXPECT_GT(comfort.operative_gain_K.p10, 0.0);
  EXPECT_GT(comfort.asymmetry_cut_K.p10, 0.0);
  EXPECT_GT(comfort.downdraught_cut_m_s.p10, 0.0);
  EXPECT_GT(comfort.after.window_radiant_C.p50, comfort.before.window_radiant_C.p50 + 1.0);
  for (const auto* side : {&comfort.before, &comfort.after}) {
    expect_ordered(side->operative_C);
    expect_ordered(side->radiant_asymmetry_K);
    expect_ordered(side->mean_vote);
    EXPECT_LT(side->operative_C.p90, comfort.room_C.p90);
    EXPECT_GT(side->mean_radiant_C.p50, side->window_radiant_C.p50);
    EXPECT_LT(side->downdraught_C.p50, comfort.room_C.p50);
    EXPECT_GE(side->mean_vote_dissatisfied_per_cent.p10, 5.0);
  }
}

/// Geometry by hand: 0.90 x 1.40 m from 0.2 m over the abdomen, 1 m away, is 2 (0.0949 - 0.0248).
TEST(ComfortAtWindow, SaysWhatItRestsOn) {
  const auto comfort = comfort_at_window(worn_sash_survey());
  EXPECT_NEAR(comfort.view_factor, 0.1404, 0.0005);
  EXPECT_EQ(comfort.conditions.size(), 4u);
  EXPECT_TRUE(comfort.flags.has(ValidityFlag::downdraught_over_sill));
  EXPECT_NEAR(comfort.before.radiant_asymmetry_K.p50,
              comfort.view_factor * (comfort.room_C.p50 - comfort.before.window_radiant_C.p50), 0.6);
}

TEST(ComfortAtWindow, FurtherAwayIsWarmer) {
  const auto near_by = comfort_at_window(worn_sash_survey(), {.distance_m = 0.5});
  const auto far_off = comfort_at_window(worn_sash_survey(), {.distance_m = 3.0});
  EXPECT_GT(far_off.before.operative_C.p50, near_by.before.operative_C.p50);
  EXPECT_LT(far_off.before.radiant_asymmetry_K.p50, near_by.before.radiant_asymmetry_K.p50);
  EXPECT_LT(far_off.before.downdraught_m_s.p50, near_by.before.downdraught_m_s.p50);
}

TEST(ComfortAtWindow, IsTheSameAgainAndRefusesNonsense) {
  const auto survey = worn_sash_survey();
  EXPECT_EQ(comfort_at_window(survey).operative_gain_K.p50, comfort_at_window(survey).operative_gain_K.p50);
  EXPECT_THROW(comfort_at_window(survey, {.samples = 3}), InvalidInput);
  EXPECT_THROW(comfort_at_window(survey, {.distance_m = std::numeric_limits<double>::quiet_NaN()}),
               InvalidInput);
  auto protected_survey = survey;
  protected_survey.settle_first.protection = Protection::consent_given;
  EXPECT_THROW(comfort_at_window(protected_survey, {.option = VentOption::weep_to_outdoors}), InvalidInput);
}

}  // namespace
}  // namespace dewgap::test
