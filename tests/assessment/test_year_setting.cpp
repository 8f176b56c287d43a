#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "assessment/year_cases.hpp"
#include "dewgap/air/humid_air.hpp"
#include "dewgap/assessment/year_run_weather_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap::test {
namespace {

TEST(YearSetting, BeginsInSeptemberNorthAndTheSheetComesOffInApril) {
  const YearCase london(worn_sash_survey());
  EXPECT_EQ(london.year.month.front(), 8U);
  EXPECT_EQ(london.year.hour_of_year.front(), 243U * 24U);
  EXPECT_EQ(london.year.month.back(), 7U);
  EXPECT_EQ(london.year.month[london.year.off_hour], 3U);
  EXPECT_EQ(london.year.month[london.year.off_hour - 1], 2U);
  EXPECT_EQ(london.year.fitted_hour, 0U);
  EXPECT_TRUE(london.year.source.starts_with("modelled from monthly normals"));
}

TEST(YearSetting, BeginsInMarchSouthAndTheSheetComesOffInOctober) {
  auto survey = worn_sash_survey();
  survey.place.nearest = "wellington";
  const YearCase south(survey);
  EXPECT_EQ(south.year.hour_of_year.front(), (31U + 28U) * 24U);
  EXPECT_EQ(south.year.month[south.year.off_hour], 9U);
  EXPECT_EQ(south.year.month[south.year.off_hour - 1], 8U);
}

TEST(YearSetting, EveryColumnIsTheYearsTurnedRound) {
  const auto survey = worn_sash_survey();
  const auto weather = modelled_year(survey);
  const YearCase at(survey, weather);
  for (const std::size_t i : {0UL, 1000UL, 5000UL, 8759UL}) {
    const std::size_t hour = at.year.hour_of_year[i];
    EXPECT_DOUBLE_EQ(at.year.outdoor_vapour_Pa[i], weather.vapour_pressure_Pa[hour]);
    EXPECT_DOUBLE_EQ(at.year.wind_m_s[i], weather.wind_m_s[hour]);
    EXPECT_NEAR(at.year.outdoor_C[i], weather.air_temperature_C[hour], 1e-12);
  }
  EXPECT_EQ(at.year.sun_W_m2.size(), 8760U);
  EXPECT_EQ(at.year.sky_depression_K.size(), 8760U);
  EXPECT_TRUE(at.year.wind_angle_deg.empty());
}

TEST(YearSetting, AModelledYearIsMovedToTheWindowsHeightAndAMeasuredOneIsNot) {
  auto survey = worn_sash_survey();
  auto weather = modelled_year(survey);
  survey.place.elevation_m = weather.elevation_m + 300.0;
  const YearCase modelled(survey, weather);
  weather.modelled.air_temperature = false;
  const YearCase measured(survey, weather);
  EXPECT_NEAR(modelled.year.outdoor_C[77] - measured.year.outdoor_C[77], -1.95, 1e-9);
  EXPECT_DOUBLE_EQ(measured.year.outdoor_C[0], weather.air_temperature_C[243 * 24]);
  EXPECT_FALSE(measured.year.source.starts_with("modelled"));
}

TEST(YearSetting, TheYearsOwnSkyTemperatureIsTaken) {
  const auto survey = worn_sash_survey();
  auto weather = modelled_year(survey);
  for (const double air_C : weather.air_temperature_C) {
    weather.sky_temperature_C.push_back(air_C - 7.5);
  }
  weather.modelled.sky_temperature = false;
  const YearCase measured(survey, weather);
  EXPECT_NEAR(measured.year.sky_depression_K[4000], 7.5, 1e-9);
  EXPECT_LT(measured.year.cloud_belief_share, YearCase(survey).year.cloud_belief_share);
}

TEST(YearSetting, CloudScalesTheSkyAboutThePriorsMiddle) {
  const auto& cloud = prior_of(Unknown::cloud_cover);
  EXPECT_DOUBLE_EQ(sky_scale(cloud.p50, 0.5), 1.0);
  EXPECT_NEAR(sky_scale(1.0, 0.5), 0.5, 1e-12);
  EXPECT_NEAR(sky_scale(0.3, 0.5), 1.5, 1e-12);
  EXPECT_DOUBLE_EQ(sky_scale(0.3, 0.0), 1.0);
}

TEST(YearSetting, WindHasAnAngleOnlyWhenDirectionAndFacingAreKnown) {
  auto survey = worn_sash_survey();
  auto weather = modelled_year(survey);
  weather.wind_direction_deg.assign(weather.wind_m_s.size(), 300.0);
  EXPECT_FALSE(YearCase(survey, weather).year.has_wind_direction);
  survey.window.facing_compass_deg = 20.0;
  const YearCase known(survey, weather);
  ASSERT_TRUE(known.year.has_wind_direction);
  EXPECT_NEAR(known.year.wind_angle_deg[123], 80.0, 1e-9);
}

TEST(YearSetting, AnUnknownFacingGetsTheMeanOfFourQuarters) {
  auto survey = worn_sash_survey();
  const YearCase unknown(survey);
  std::vector<double> mean(8760, 0.0);
  for (const double compass : {0.0, 90.0, 180.0, 270.0}) {
    survey.window.facing_compass_deg = compass;
    const YearCase quarter(survey);
    for (std::size_t i = 0; i < mean.size(); ++i) {
      mean[i] += 0.25 * quarter.year.sun_W_m2[i];
    }
  }
  for (std::size_t i = 0; i < mean.size(); i += 7) {
    ASSERT_NEAR(unknown.year.sun_W_m2[i], mean[i], 1e-9);
  }
  EXPECT_GT(std::accumulate(mean.begin(), mean.end(), 0.0), 0.0);
}

TEST(SampleWeather, VapourIsNeverAboveSaturationAndTheRoomIsWarmerThanOutdoors) {
  const YearCase at(worn_sash_survey());
  auto sample = damp_sample(at.survey);
  sample[Unknown::climate_offset] = -4.0;
  sample[Unknown::vapour_excess] = 1600.0;
  SampleWeather weather(at.year, sample, 1.0);
  for (std::size_t hour = 0; hour < 8760; hour += 5) {
    const auto now = weather.at(hour);
    const double outdoor_C = now.given.outdoors.air_temperature_C;
    ASSERT_LE(now.given.outdoor_vapour_Pa, vapour_pressure_Pa(outdoor_C, 1.0) * (1.0 + 1e-7));
    ASSERT_GE(now.given.room_C, outdoor_C + 2.0 - 1e-12);
    ASSERT_LE(now.room_vapour_Pa(3.0), vapour_pressure_Pa(now.given.room_C, 0.95) * (1.0 + 1e-7));
  }
}

TEST(SampleWeather, AnExpertsHumidityIsKept) {
  auto survey = worn_sash_survey();
  survey.expert.room_relative_humidity = 0.55;
  const YearCase at(survey);
  SampleWeather weather(at.year, middle_sample(survey), 1.0);
  const auto now = weather.at(first_of_december);
  EXPECT_NEAR(relative_humidity(now.given.room_C, now.room_vapour_Pa(1.4)), 0.55, 1e-6);
}

TEST(SampleWeather, WeatherOutsideTheModelsRangeThrows) {
  YearCase at(worn_sash_survey());
  at.year.lowest_outdoor_C = -61.0;
  EXPECT_THROW(run_sample_year(at.year, middle_sample(at.survey)), InvalidInput);
}

TEST(SampleWeather, TimberStartsAsItFelt) {
  auto survey = worn_sash_survey();
  const YearCase firm(survey);
  survey.timber.bottom_rail = TimberFeel::soft;
  const YearCase soft(survey);
  survey.timber.bottom_rail = TimberFeel::wet_now;
  const YearCase wet(survey);
  const auto start = [](const YearCase& at) {
    return SampleWeather(at.year, middle_sample(at.survey), 1.0).fitted_timber_kg_kg();
  };
  EXPECT_GT(start(firm), 0.08);
  EXPECT_LT(start(firm), 0.20);
  EXPECT_DOUBLE_EQ(start(soft), 0.24);
  EXPECT_DOUBLE_EQ(start(wet), 0.30);
}

}  // namespace
}  // namespace dewgap::test
