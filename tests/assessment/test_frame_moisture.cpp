#include "dewgap/assessment/frame_moisture.hpp"

#include <gtest/gtest.h>

#include "assessment/year_cases.hpp"
#include "dewgap/assessment/frame_moisture_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap::test {
namespace {

/// The same hours as the vent decision runs: peaks and hours above the caution agree with its own.
TEST(FrameMoisture, IsTheTimberOfTheVentDecision) {
  const YearCase at(worn_sash_survey());
  for (const auto& sample : {middle_sample(at.survey), damp_sample(at.survey)}) {
    const auto years = run_sample_year(at.year, sample);
    for (const auto option : {VentOption::sealed, VentOption::breaks_bottom, VentOption::off_in_summer}) {
      const auto pair = paired_timber(at.year, sample, option);
      ASSERT_TRUE(pair.has_value());
      const auto& with = years.options.at(place_of(option));
      constexpr double rounding_of_float = 1e-6;
      EXPECT_NEAR(pair->without.peak_kg_kg, static_cast<double>(years.as_it_is.peak_timber),
                  rounding_of_float);
      EXPECT_NEAR(pair->with.peak_kg_kg, static_cast<double>(with.peak_timber), rounding_of_float);
      EXPECT_NEAR(pair->with.hours_above_caution, static_cast<double>(with.timber_hours_above_caution), 1e-2);
      EXPECT_NEAR(pair->without.hours_above_caution,
                  static_cast<double>(years.as_it_is.timber_hours_above_caution), 1e-2);
      EXPECT_NEAR(pair->with.longest_run_h, static_cast<double>(with.longest_timber_run_h), 1e-2);
    }
  }
}

TEST(FrameMoisture, TheMiddleCaseIsADifference) {
  const auto frame = frame_moisture(worn_sash_survey(), {.samples = 0});
  ASSERT_TRUE(frame.has_value());
  EXPECT_FALSE(frame->range.has_value());
  EXPECT_EQ(frame->without.start_kg_kg, frame->with.start_kg_kg);
  EXPECT_EQ(frame->threshold_kg_kg, 0.20);
  for (std::size_t m = 0; m < 12; ++m) {
    EXPECT_GT(frame->with.month_mean_kg_kg[m], 0.04);
    EXPECT_LE(frame->with.month_mean_kg_kg[m], frame->with.peak_kg_kg);
    EXPECT_NEAR(frame->month_difference_kg_kg[m],
                frame->with.month_mean_kg_kg[m] - frame->without.month_mean_kg_kg[m], 1e-15);
  }
  EXPECT_NEAR(frame->peak_difference_kg_kg, frame->with.peak_kg_kg - frame->without.peak_kg_kg, 1e-15);
  EXPECT_NE(frame->sentence.find("above 20 %"), std::string::npos);
}

TEST(FrameMoisture, PlausibleCasesGiveItsRange) {
  const auto frame = frame_moisture(worn_sash_survey(), {.samples = 4});
  ASSERT_TRUE(frame->range.has_value());
  EXPECT_EQ(frame->samples + frame->samples_left_out, 4u);
  EXPECT_LE(frame->range->peak_with_kg_kg.least, frame->range->peak_with_kg_kg.greatest);
  EXPECT_GE(frame->range->wetter_share, 0.0);
  EXPECT_LE(frame->range->wetter_share, 1.0);
}

TEST(FrameMoisture, MetalHoldsNone) {
  auto survey = worn_sash_survey();
  survey.window.frame = FrameKind::steel;
  EXPECT_FALSE(frame_moisture(survey).has_value());
}

TEST(FrameMoisture, RefusesNonsense) {
  auto survey = worn_sash_survey();
  EXPECT_THROW(frame_moisture(survey, {.samples = 5000}), InvalidInput);
  survey.settle_first.protection = Protection::consent_given;
  EXPECT_THROW(frame_moisture(survey, {.option = VentOption::weep_to_outdoors}), InvalidInput);
}

}  // namespace
}  // namespace dewgap::test
