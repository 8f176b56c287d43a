#include <gtest/gtest.h>

#include "assessment/survey_cases.hpp"
#include "dewgap/assessment/vent_remedies_kernel.hpp"
#include "dewgap/climate/synthesised_year.hpp"

namespace dewgap::test {
namespace {

const std::vector<VentOption> two{VentOption::sealed, VentOption::weep_to_outdoors};

class VentDrying : public testing::Test {
 protected:
  VentDrying() {
    cases_.beliefs = beliefs_for(survey_);
    cases_.samples = draw_samples(cases_.beliefs, 2, 1, 1.0);
    runs_.cases = {0, 1};
    runs_.counts = {1.0, 1.0};
  }

  Survey survey_ = worn_sash_survey();
  Setting setting_ = setting_for(survey_);
  YearSetting year_ = year_setting(setting_, synthesised_year(setting_.place).hours);
  VentCases cases_;
  VentRuns runs_;
  Progress nobody_;
};

TEST_F(VentDrying, HoursAreCountedAndWithinTheBound) {
  HourBudget budget(4 * year_.outdoor_C.size(), nobody_);
  const auto drying = drying_of(year_, cases_, runs_, two, budget);
  ASSERT_EQ(drying.size(), 2u);
  EXPECT_GT(budget.spent(), 0u);
  EXPECT_LE(budget.spent(), budget.most());
  for (const auto& option : drying) {
    ASSERT_TRUE(option.not_in_a_year_share.has_value());
    EXPECT_EQ(option.days.has_value(), *option.not_in_a_year_share <= 0.1);
    if (option.days) {
      EXPECT_GT(option.days->p10, 0.0);
      EXPECT_LE(option.days->p90, 366.0);
    }
  }
}

TEST_F(VentDrying, WithoutHoursNothingIsSaid) {
  HourBudget budget(100, nobody_);
  for (const auto& option : drying_of(year_, cases_, runs_, two, budget)) {
    EXPECT_FALSE(option.days.has_value());
    EXPECT_FALSE(option.not_in_a_year_share.has_value());
  }
  EXPECT_EQ(budget.spent(), 0u);
}

}  // namespace
}  // namespace dewgap::test
