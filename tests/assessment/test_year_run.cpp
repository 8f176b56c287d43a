#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <iostream>

#include "assessment/year_cases.hpp"
#include "dewgap/air/humid_air.hpp"
#include "dewgap/assessment/sample_run_kernel.hpp"

namespace dewgap::test {
namespace {

const OptionYear& of(const SampleYear& all, VentOption option) {
  return all.options[place_of(option)];
}

TEST(YearRun, TheSameSampleGivesTheSameFigures) {
  const YearCase at(worn_sash_survey());
  const auto year = cut(at.year, first_of_december, month_h);
  const auto sample = damp_sample(at.survey);
  const auto first = run_sample_year(year, sample);
  const auto second = run_sample_year(year, sample);
  EXPECT_EQ(figures_of(first.as_it_is), figures_of(second.as_it_is));
  EXPECT_EQ(figures_of(first.lifted), figures_of(second.lifted));
  for (std::size_t i = 0; i < every_vent_option.size(); ++i) {
    EXPECT_EQ(figures_of(first.options[i]), figures_of(second.options[i]));
  }
}

/// Speed is printed, not judged: the machine's load decides it.
TEST(YearRun, AWholeYearOfTheOldSash) {
  const YearCase at(worn_sash_survey());
  const auto begun = std::chrono::steady_clock::now();
  const auto all = run_sample_year(at.year, middle_sample(at.survey));
  const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - begun;
  std::cout << static_cast<double>(window_hours_a_sample(at.year)) / taken.count()
            << " window-hours a second\n";
  EXPECT_EQ(all.status, SolveStatus::converged);
  EXPECT_GT(all.as_it_is.heat_kWh, 1.3F * of(all, VentOption::sealed).heat_kWh);
  EXPECT_GT(of(all, VentOption::sealed).heat_kWh, 10.0F);
  EXPECT_GT(all.as_it_is.hours_wet, 0.0F);
  EXPECT_LT(of(all, VentOption::sealed).room_face_peak_month_humidity,
            all.as_it_is.room_face_peak_month_humidity);
  EXPECT_LT(of(all, VentOption::sealed).room_face_peak_month_humidity,
            all.as_it_is.room_face_peak_month_humidity);
  const auto& summer = of(all, VentOption::off_in_summer);
  EXPECT_LE(summer.hours_wet, of(all, VentOption::sealed).hours_wet);
  EXPECT_GT(summer.heat_kWh, of(all, VentOption::sealed).heat_kWh);
  EXPECT_LT(summer.heat_kWh, all.as_it_is.heat_kWh);
  EXPECT_FALSE(summer.wet_after_summer);
}

/// In steel: timber takes months to settle. Without the pumping of gusts, which the steady check leaves out.
TEST(YearRun, SteadyWeatherGivesTheSteadyAnswersSigns) {
  auto survey = worn_sash_survey();
  survey.window.frame = FrameKind::steel;
  const YearCase at(survey);
  int compared = 0;
  int wet = 0;
  for (auto sample : draw_samples(beliefs_for(survey), 32, 7, 1.0)) {
    sample[Unknown::gusts_per_s] = 0.0;
    sample[Unknown::wind_pressure] = 0.0;  // along the wall in both
    const auto year = steady_month(at, sample, 10 * 24);
    const auto winter = old_winter(at.setting, sample);
    for (const auto vent : vent_options) {
      const auto steady = run_option(at.setting, sample, vent, TapeFault::none, 1.0, winter);
      HourState last;
      run_option_year(year, sample, vent, 1.0,
                      [&](std::size_t, const HourConditions&, const HourState& state) { last = state; });
      const double margin_Pa = saturation_pressure_Pa(last.sill_C) - last.vapour_Pa;
      if (std::abs(steady.month.margin_K) < 0.05) {
        continue;  // so near the dew point the film's own latent heat decides
      }
      ++compared;
      wet += steady.month.margin_K < 0.0 ? 1 : 0;
      EXPECT_EQ(margin_Pa < 0.0, steady.month.margin_K < 0.0) << steady.month.margin_K << " K " << margin_Pa;
    }
  }
  EXPECT_GT(compared, 80);
  EXPECT_GT(wet, 10);
  EXPECT_LT(wet, compared - 10);
}

TEST(YearRun, AWeepDrainsWhatRunsDown) {
  const YearCase at(worn_sash_survey());
  auto sample = damp_sample(at.survey);
  sample[Unknown::seal_leakage] = 0.5;
  const auto all = run_sample_year(cut(at.year, first_of_december, 2 * month_h), sample);
  const auto& sealed = of(all, VentOption::sealed);
  const auto& weep = of(all, VentOption::weep_to_outdoors);
  EXPECT_GT(sealed.run_off_g_m2, 100.0F);
  EXPECT_EQ(sealed.drained_g_m2, 0.0F);
  EXPECT_GT(weep.drained_g_m2, 0.0F);
  EXPECT_LT(weep.peak_pool_g_m2, sealed.peak_pool_g_m2);
}

TEST(YearRun, AnOptionAloneIsTheSameAsBesideTheOthers) {
  const YearCase at(worn_sash_survey());
  const auto year = cut(at.year, first_of_december, month_h);
  const auto sample = damp_sample(at.survey);
  const auto all = run_sample_year(year, sample);
  for (const auto option : every_vent_option) {
    double peak_kg_m2 = 0.0;
    double timber = 0.0;
    std::size_t hours = 0;
    run_option_year(year, sample, option, 1.0, [&](std::size_t hour, const auto& given, const auto& state) {
      EXPECT_EQ(hour, hours++);
      EXPECT_DOUBLE_EQ(given.duration_s, 3600.0);
      const double pane = state.face_C[1] < 0.0 ? 0.0 : state.pane_film_kg_m2;
      const double sheet = state.face_C[2] < 0.0 ? 0.0 : state.sheet_film_kg_m2;
      peak_kg_m2 = std::max({peak_kg_m2, pane, sheet});
      timber = std::max(timber, state.timber_kg_kg);
    });
    EXPECT_EQ(hours, month_h);
    EXPECT_FLOAT_EQ(static_cast<float>(1000.0 * peak_kg_m2), of(all, option).peak_film_g_m2);
    EXPECT_NEAR(timber, static_cast<double>(of(all, option).peak_timber), 0.05);
  }
}

TEST(YearRun, OffInSummerIsSealedUntilSpringAndThenTheOldWindow) {
  const YearCase at(worn_sash_survey());
  const auto sample = damp_sample(at.survey);
  const auto year = cut(at.year, at.year.off_hour - 240, 480);
  ASSERT_EQ(year.off_hour, 240U);
  const auto all = run_sample_year(year, sample);
  const auto winter = run_sample_year(cut(at.year, at.year.off_hour - 240, 240), sample);
  const auto& summer = of(all, VentOption::off_in_summer);
  const auto& sealed = of(winter, VentOption::sealed);
  EXPECT_FLOAT_EQ(summer.hours_wet, sealed.hours_wet);
  EXPECT_FLOAT_EQ(summer.run_off_g_m2, sealed.run_off_g_m2);
  EXPECT_NEAR(summer.heat_kWh - sealed.heat_kWh, all.as_it_is.heat_kWh - winter.as_it_is.heat_kWh,
              1e-4F * all.as_it_is.heat_kWh);
}

TEST(YearRun, ADrierRoomWetsTheGapLess) {
  const YearCase at(worn_sash_survey());
  const auto year = cut(at.year, first_of_december, month_h);
  const auto sample = damp_sample(at.survey);
  const auto as_lived_in = run_sample_year(year, sample);
  const auto aired = run_sample_year(year, sample, 0.4);
  for (const auto option : {VentOption::sealed, VentOption::breaks_bottom}) {
    EXPECT_LT(of(aired, option).hours_wet, of(as_lived_in, option).hours_wet);
    EXPECT_LE(of(aired, option).band, of(as_lived_in, option).band);
  }
}

TEST(YearRun, OptionsNotOfferedStayEmpty) {
  auto survey = worn_sash_survey();
  survey.settle_first.protection = Protection::consent_given;
  survey.sheet.cover = Cover::glass;
  const YearCase at(survey);
  const auto all = run_sample_year(cut(at.year, first_of_december, 240), damp_sample(survey));
  EXPECT_EQ(figures_of(of(all, VentOption::weep_to_outdoors)), figures_of(OptionYear{}));
  EXPECT_EQ(figures_of(of(all, VentOption::joints_stripped)), figures_of(OptionYear{}));
  EXPECT_NE(figures_of(of(all, VentOption::sealed)), figures_of(OptionYear{}));
  EXPECT_EQ(window_hours_a_sample(at.year), 8760U * 6U);
}

TEST(YearRun, WhatIsOffered) {
  auto survey = worn_sash_survey();
  for (const auto option : every_vent_option) {
    EXPECT_TRUE(is_offered(option, survey));
  }
  EXPECT_EQ(window_hours_a_sample(YearCase(survey).year), 8760U * 8U);
  survey.joints.weather_stripped = true;
  EXPECT_FALSE(is_offered(VentOption::joints_stripped, survey));
  survey.joints.weather_stripped = false;
  survey.window.painted_shut = true;
  EXPECT_FALSE(is_offered(VentOption::joints_stripped, survey));
  survey.settle_first.protection.reset();
  EXPECT_FALSE(is_offered(VentOption::weep_to_outdoors, survey));
  EXPECT_TRUE(is_offered(VentOption::off_in_summer, survey));
  survey = worn_sash_survey();
  survey.window.frame = FrameKind::hardwood;
  EXPECT_TRUE(is_offered(VentOption::weep_to_outdoors, survey));
  for (const auto frame : {FrameKind::steel, FrameKind::aluminium, FrameKind::pvc_u}) {
    survey.window.frame = frame;
    EXPECT_FALSE(is_offered(VentOption::weep_to_outdoors, survey));
  }
}

TEST(YearRun, MetalFramesHaveNoTimber) {
  auto survey = worn_sash_survey();
  survey.window.frame = FrameKind::pvc_u;
  survey.timber.bottom_rail = TimberFeel::wet_now;
  const YearCase at(survey);
  const auto all = run_sample_year(cut(at.year, first_of_december, 240), damp_sample(survey));
  EXPECT_EQ(all.as_it_is.peak_timber, 0.0F);
  EXPECT_EQ(of(all, VentOption::sealed).peak_timber, 0.0F);
}

}  // namespace
}  // namespace dewgap::test
