#include <gtest/gtest.h>

#include "assessment/year_cases.hpp"
#include "dewgap/errors.hpp"

namespace dewgap::test {
namespace {

constexpr std::size_t first_of_june = 273 * 24;  // in columns that begin in September
constexpr std::size_t first_of_january = 122 * 24;

TEST(DryingRun, SummerDriesSoonerThanWinter) {
  const YearCase at(worn_sash_survey());
  const auto sample = middle_sample(at.survey);
  const auto days = [&](std::size_t start_hour) {
    return days_until_dry(at.year, sample, VentOption::breaks_bottom, 100.0, 0.22, start_hour);
  };
  ASSERT_TRUE(days(first_of_june).has_value());
  ASSERT_TRUE(days(first_of_january).has_value());
  EXPECT_LT(*days(first_of_june), *days(first_of_january));
  EXPECT_GT(*days(first_of_june), 1.0);
}

TEST(DryingRun, MoreWaterTakesLonger) {
  auto survey = worn_sash_survey();
  survey.window.frame = FrameKind::steel;  // nothing soaks away
  const YearCase at(survey);
  const auto sample = middle_sample(survey);
  const auto days = [&](double pool_g_m2) {
    return days_until_dry(at.year, sample, VentOption::breaks_bottom_longer, pool_g_m2, 0.1, first_of_june);
  };
  ASSERT_TRUE(days(50.0).has_value());
  ASSERT_TRUE(days(500.0).has_value());
  EXPECT_LT(*days(50.0), *days(500.0));
}

TEST(DryingRun, AGapTooTightToDryHasNoDays) {
  auto survey = worn_sash_survey();
  survey.window.frame = FrameKind::steel;
  const YearCase at(survey);
  auto sample = middle_sample(survey);
  for (const auto unknown : {Unknown::joint_leakage, Unknown::putty_leakage, Unknown::seal_leakage}) {
    sample[unknown] = 1e-6;
  }
  sample[Unknown::tape_vapour_resistance] = 2000.0;
  sample[Unknown::gusts_per_s] = 0.0;
  EXPECT_FALSE(
      days_until_dry(at.year, sample, VentOption::sealed, 50000.0, 0.1, first_of_january).has_value());
}

TEST(DryingRun, WithoutItsSheetOnlyTheTimberHasToDry) {
  const YearCase at(worn_sash_survey());
  const auto sample = middle_sample(at.survey);
  const std::size_t late_spring = at.year.off_hour + 24;
  const auto dry_wood = days_until_dry(at.year, sample, VentOption::off_in_summer, 5000.0, 0.12, late_spring);
  ASSERT_TRUE(dry_wood.has_value());
  EXPECT_DOUBLE_EQ(*dry_wood, 1.0 / 24.0);
  const auto wet_wood = days_until_dry(at.year, sample, VentOption::off_in_summer, 5000.0, 0.3, late_spring);
  ASSERT_TRUE(wet_wood.has_value());
  EXPECT_GT(*wet_wood, 1.0);
}

TEST(DryingRun, ImpossibleStartsThrow) {
  const YearCase at(worn_sash_survey());
  const auto sample = middle_sample(at.survey);
  EXPECT_THROW(days_until_dry(at.year, sample, VentOption::sealed, -1.0, 0.2, 0), InvalidInput);
  EXPECT_THROW(days_until_dry(at.year, sample, VentOption::sealed, 10.0, 3.0, 0), InvalidInput);
  EXPECT_THROW(days_until_dry(at.year, sample, VentOption::sealed, 10.0, 0.2, 8760), InvalidInput);
}

}  // namespace
}  // namespace dewgap::test
