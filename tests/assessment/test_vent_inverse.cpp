#include <gtest/gtest.h>

#include <cmath>

#include "assessment/survey_cases.hpp"
#include "dewgap/assessment/vent_inverse_kernel.hpp"

namespace dewgap::test {
namespace {

TEST(VentInverse, DrynessThatIsNotMonotoneGivesAUnion) {
  // Dry where the sine of the logarithm is positive: (1, e^pi) and (e^2pi, 600).
  const auto dry =
      dry_intervals(1.0 / 1.5, 600.0, 48, [](double x) { return std::optional(std::sin(std::log(x))); });
  ASSERT_EQ(dry.size(), 2u);
  const double pi = std::acos(-1.0);
  EXPECT_NEAR(dry[0].low, 1.0, 0.005);
  EXPECT_NEAR(dry[0].high, std::exp(pi), 0.005 * std::exp(pi));
  EXPECT_NEAR(dry[1].low, std::exp(2.0 * pi), 0.005 * std::exp(2.0 * pi));
  EXPECT_EQ(dry[1].high, 600.0);
}

TEST(VentInverse, AlwaysAndNeverDry) {
  const auto always = dry_intervals(0.01, 10.0, 8, [](double) { return std::optional(1.0); });
  ASSERT_EQ(always.size(), 1u);
  EXPECT_NEAR(always[0].low, 0.01, 1e-12);
  EXPECT_EQ(always[0].high, 10.0);
  EXPECT_TRUE(dry_intervals(0.01, 10.0, 8, [](double) { return std::optional(-1.0); }).empty());
}

TEST(VentInverse, AScanWithAHoleIsNoAnswer) {
  const auto holed = dry_intervals(
      0.01, 10.0, 8, [](double x) { return x > 1.0 ? std::optional<double>{} : std::optional(1.0); });
  EXPECT_TRUE(holed.empty());
}

/// A case in the middle of every prior.
UnknownValues middle_of(const Survey& survey) {
  const auto beliefs = beliefs_for(survey);
  UnknownValues middle;
  for (std::size_t j = 0; j < unknown_count; ++j) {
    middle.value[j] = beliefs[j].fixed.value_or(beliefs[j].prior.p50);
  }
  return middle;
}

TEST(VentInverse, IntervalsHoldWhatTheSteadyGapSays) {
  auto survey = worn_sash_survey();
  survey.expert.vapour_excess_Pa = 450.0;
  const auto setting = setting_for(survey);
  const auto middle = middle_of(survey);
  const auto answers = inverse_answers(setting, middle, VentOption::sealed);
  ASSERT_FALSE(answers.room_humidity.empty());
  EXPECT_LT(answers.room_humidity.front().high, 0.95);
  const auto margin_K = [&](double leakage_m3_h_m) {
    auto sample = middle;
    sample[Unknown::seal_leakage] = leakage_m3_h_m;
    const auto month = month_moment(setting, sample, excess_factor_of(setting, sample, VentOption::sealed));
    return solve_gap(
               gap_case_for(setting, sample, month, VentOption::sealed, CurtainState::open, TapeFault::none))
        .margin_K;
  };
  // Inside an interval dry; just outside a found edge wet.
  for (const auto& band : answers.seal_leakage) {
    EXPECT_LT(band.low, band.high);
    EXPECT_GE(margin_K(std::sqrt(band.low * band.high)), 0.0);
  }
  for (const auto& bands : {answers.seal_leakage, answers.outdoor_leakage, answers.room_humidity}) {
    for (std::size_t i = 1; i < bands.size(); ++i) {
      EXPECT_LT(bands[i - 1].high, bands[i].low);
    }
  }
}

TEST(VentInverse, SealingRaisesTheRoomsHumidityWithWhatItStops) {
  const auto survey = worn_sash_survey();
  const auto setting = setting_for(survey);
  auto leaky = middle_of(survey);
  leaky[Unknown::joint_leakage] = 3.0;
  auto tight = leaky;
  tight[Unknown::joint_leakage] = 0.01;
  const double rise = room_humidity_rise(setting, leaky, VentOption::sealed);
  EXPECT_GT(rise, room_humidity_rise(setting, tight, VentOption::sealed));
  EXPECT_GT(rise, 0.0);
  EXPECT_LT(rise, 0.3);
}

}  // namespace
}  // namespace dewgap::test
