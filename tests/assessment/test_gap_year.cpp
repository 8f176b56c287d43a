#include "dewgap/assessment/gap_year.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

#include "assessment/year_cases.hpp"
#include "dewgap/errors.hpp"

namespace dewgap::test {
namespace {

const GapYearOptions quick{.prior_samples = 256};

struct Counted {
  GapYearSummary summary;
  std::size_t rows = 0;
  double hours_wet = 0.0;
  std::size_t misty_mornings = 0;
};

Counted counted(const Survey& survey, VentOption option, const GapYearOptions& options = quick) {
  Counted all;
  all.summary = gap_year(survey, option, std::nullopt, options, [&](const GapHourRow& row) {
    ++all.rows;
    all.hours_wet += row.wet_share;
    all.misty_mornings += row.misty_at_8 ? 1U : 0U;
  });
  return all;
}

UnknownValues sample_of(const GapYearSummary& summary) {
  UnknownValues sample;
  for (const auto& value : summary.values) sample[value.unknown] = value.value;
  return sample;
}

/// The rows add up to what the vent decision counts for the same case.
TEST(GapYear, AddsUpToTheYearOfTheSameSample) {
  const YearCase at(worn_sash_survey());
  for (const auto option : {VentOption::breaks_bottom, VentOption::off_in_summer}) {
    const auto rows = counted(at.survey, option);
    const auto years = run_sample_year(at.year, sample_of(rows.summary));
    const auto& year = years.options.at(place_of(option));
    EXPECT_EQ(rows.rows, 8760u);
    EXPECT_EQ(rows.summary.unsettled_hours, 0u);
    constexpr double rounding_of_float_h = 1e-2;
    EXPECT_NEAR(rows.hours_wet, static_cast<double>(year.hours_wet), rounding_of_float_h) << name_of(option);
    EXPECT_EQ(static_cast<double>(rows.misty_mornings), static_cast<double>(year.misty_mornings));
  }
  EXPECT_GT(counted(at.survey, VentOption::breaks_bottom).hours_wet, 10.0) << "else the sums say nothing";
}

TEST(GapYear, StartsWhenTheSheetGoesUp) {
  std::vector<std::size_t> hours;
  gap_year(worn_sash_survey(), VentOption::sealed, std::nullopt, quick, [&](const GapHourRow& row) {
    if (!hours.empty()) {
      EXPECT_EQ(row.hour_of_year, (hours.back() + 1) % 8760);
    }
    if (row.hour_of_year == 0) {
      EXPECT_EQ(row.month, 0u);
      EXPECT_EQ(row.day_of_month, 1u);
    }
    hours.push_back(row.hour_of_year);
  });
  EXPECT_EQ(hours.front(), 24u * 243u) << "1 September";
}

TEST(GapYear, CasesStandForAllFromTheWettest) {
  const auto survey = worn_sash_survey();
  GapYearOptions options = quick;
  const auto wet_hours = [&](std::size_t number) {
    options.plausible_case = number;
    return counted(survey, VentOption::sealed, options).hours_wet;
  };
  EXPECT_GT(wet_hours(1), wet_hours(counted(survey, VentOption::sealed).summary.case_count));
  options.plausible_case = 7;
  const auto once = counted(survey, VentOption::sealed, options);
  EXPECT_EQ(once.hours_wet, counted(survey, VentOption::sealed, options).hours_wet);
}

TEST(GapYear, CasesDifferAndTheirWeightsAreTheWhole) {
  auto survey = worn_sash_survey();
  auto options = quick;  // a reading leaves few cases with weight
  options.readings = {{.date = "a morning", .outdoor_C = -4.0, .mist = WinterReading::Mist::all_over}};
  const auto all = gap_year(survey, VentOption::sealed, std::nullopt, options, [](const GapHourRow&) {});
  EXPECT_EQ(all.case_weight, 0.0) << "the middle case";
  ASSERT_GT(all.case_count, 5u);
  ASSERT_LE(all.case_count, plausible_case_count);
  struct Enough {};  // the case is known before the first hour
  double weight = 0.0;
  std::vector<double> before;
  for (std::size_t number = 1; number <= all.case_count; ++number) {
    options.plausible_case = number;
    GapYearSummary summary;
    EXPECT_THROW(gap_year(
                     survey, VentOption::sealed, std::nullopt, options, [](const GapHourRow&) {},
                     [&](const GapYearSummary& told) {
                       summary = told;
                       throw Enough{};
                     }),
                 Enough);
    std::vector<double> values;
    for (const auto& value : summary.values) values.push_back(value.value);
    EXPECT_NE(values, before) << number;
    before = values;
    weight += summary.case_weight;
  }
  EXPECT_NEAR(weight, 1.0, 1e-12);
  options.plausible_case = all.case_count + 1;
  if (all.case_count < plausible_case_count) {
    EXPECT_THROW(counted(survey, VentOption::sealed, options), InvalidInput);
  }
}

TEST(GapYear, RowsTellTimberOnlyWhereThereIsSome) {
  auto survey = worn_sash_survey();
  gap_year(survey, VentOption::sealed, std::nullopt, quick, [](const GapHourRow& row) {
    ASSERT_TRUE(row.timber_kg_kg.has_value());
    EXPECT_EQ(*row.timber_kg_kg, row.state.timber_kg_kg);
    EXPECT_EQ(row.timber_is_full, *row.timber_kg_kg >= 1.2 - 1e-6);
  });
  survey.window.frame = FrameKind::steel;
  gap_year(survey, VentOption::sealed, std::nullopt, quick, [](const GapHourRow& row) {
    EXPECT_FALSE(row.timber_kg_kg.has_value());
    EXPECT_FALSE(row.timber_is_full);
  });
}

TEST(GapYear, RowsTellTheWindThatWasUsed) {
  const YearCase at(worn_sash_survey());
  std::size_t hour = 0;
  gap_year(at.survey, VentOption::sealed, std::nullopt, quick, [&](const GapHourRow& row) {
    EXPECT_EQ(row.wind_m_s, at.year.wind_m_s[hour]);
    EXPECT_EQ(row.sun_on_window_W_m2, at.year.sun_W_m2[hour]);
    EXPECT_GE(row.wind_angle_deg, 0.0);
    EXPECT_LE(row.wind_angle_deg, 180.0);
    ++hour;
  });
}

TEST(GapYear, ReadingsMoveTheMiddleCase) {
  const auto survey = worn_sash_survey();
  auto options = quick;
  options.readings = {{.date = "a morning", .outdoor_C = -4.0, .mist = WinterReading::Mist::all_over}};
  EXPECT_NE(counted(survey, VentOption::sealed, options).summary.values.at(0).value,
            counted(survey, VentOption::sealed).summary.values.at(0).value);
}

TEST(GapYear, SharesOfTheColdHalfYearAreOfItsHours) {
  const auto summary = counted(worn_sash_survey(), VentOption::breaks_bottom_and_top).summary;
  EXPECT_GE(summary.inwards_share, 0.0);
  EXPECT_GE(summary.outwards_share, 0.0);
  EXPECT_LE(summary.inwards_share + summary.outwards_share, 1.0);
  EXPECT_GT(summary.cold_from_room_m3_s, 0.0);
  EXPECT_GT(summary.glass_m2, 0.1);
}

TEST(GapYear, RefusesWhatCannotBeOffered) {
  auto survey = worn_sash_survey();
  survey.settle_first.protection = Protection::consent_given;
  EXPECT_THROW(counted(survey, VentOption::weep_to_outdoors), InvalidInput);
  survey.window.opening_widths_m[0] = std::numeric_limits<double>::quiet_NaN();
  EXPECT_THROW(counted(survey, VentOption::sealed), InvalidInput);
}

TEST(GapYear, RefusesOptionsOutsideTheirRange) {
  const auto survey = worn_sash_survey();
  EXPECT_THROW(counted(survey, VentOption::sealed, {.prior_samples = 63}), InvalidInput);
  EXPECT_THROW(counted(survey, VentOption::sealed, {.plausible_case = 0}), InvalidInput);
  EXPECT_THROW(counted(survey, VentOption::sealed, {.plausible_case = plausible_case_count + 1}),
               InvalidInput);
}

}  // namespace
}  // namespace dewgap::test
