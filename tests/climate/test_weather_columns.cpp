#include "dewgap/climate/weather_columns.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

#include "dewgap/air/constants.hpp"
#include "dewgap/air/humid_air.hpp"
#include "dewgap/climate/synthesised_year.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

using Hours = std::vector<double>;

// A sun of one clearness.
Hours sun_of_clearness(const SunSite& site, double clearness, std::size_t hours = 8760) {
  Hours global(hours);
  for (std::size_t i = 0; i < hours; ++i) {
    global[i] =
        clearness *
        sun_of_hour(site, static_cast<int>(i / 24) + 1, static_cast<int>(i % 24)).extraterrestrial_W_m2;
  }
  return global;
}

WeatherColumns columns(std::size_t hours = 8760) {
  WeatherColumns measured;
  measured.site = {51.5, 0.0, 0.0};
  measured.elevation_m = 20.0;
  measured.air_temperature_C.assign(hours, 10.0);
  measured.relative_humidity.assign(hours, 0.8);
  measured.global_W_m2 = sun_of_clearness(measured.site, 0.5, hours);
  measured.source = "made for a test";
  return measured;
}

TEST(WeatherColumns, HumidityByAnyOfThree) {
  auto measured = columns();
  EXPECT_NEAR(completed_year(measured).vapour_pressure_Pa[7], vapour_pressure_Pa(10.0, 0.8), 1e-9);
  measured.relative_humidity.clear();
  measured.dew_point_C.assign(8760, -5.0);  // over supercooled water
  const auto by_dew_point = completed_year(measured);
  EXPECT_NEAR(by_dew_point.vapour_pressure_Pa[7], vapour_pressure_Pa(-5.0, 1.0), 1e-9);
  EXPECT_FALSE(by_dew_point.modelled.vapour_pressure);
  measured.dew_point_C.clear();
  measured.vapour_pressure_Pa.assign(8760, 600.0);
  EXPECT_EQ(completed_year(measured).vapour_pressure_Pa[7], 600.0);
  measured.relative_humidity.assign(8760, 0.5);
  EXPECT_THROW(completed_year(measured), InvalidInput);
  measured.relative_humidity.clear();
  measured.vapour_pressure_Pa.clear();
  EXPECT_THROW(completed_year(measured), InvalidInput);
}

TEST(WeatherColumns, RefusesAirThatCannotBe) {
  auto measured = columns();
  measured.relative_humidity[100] = 1.06;
  EXPECT_THROW(completed_year(measured), InvalidInput);
  measured = columns();
  measured.relative_humidity.clear();
  measured.dew_point_C.assign(8760, 11.0);
  EXPECT_THROW(completed_year(measured), InvalidInput);
  measured.dew_point_C.assign(8760, std::nan(""));
  EXPECT_THROW(completed_year(measured), InvalidInput);
}

TEST(WeatherColumns, GlobalAloneIsSplitHourByHour) {
  const auto year = completed_year(columns());
  EXPECT_TRUE(year.modelled.sun_split);
  EXPECT_FALSE(year.modelled.sun);
  for (const std::size_t hour : {24u * 10u + 2u, 24u * 10u + 12u, 24u * 171u + 9u}) {
    const auto sun = sun_of_hour(year.site, static_cast<int>(hour / 24) + 1, static_cast<int>(hour % 24));
    const auto sky = split_global(year.global_W_m2[hour], sun);
    EXPECT_EQ(year.beam_normal_W_m2[hour], sky.beam_normal_W_m2);
    EXPECT_EQ(year.diffuse_W_m2[hour], sky.diffuse_horizontal_W_m2);
  }
}

TEST(WeatherColumns, PartsMakeTheGlobalThatTheyCameFrom) {
  const auto split = completed_year(columns());
  auto measured = columns();
  measured.global_W_m2.clear();
  measured.beam_normal_W_m2 = split.beam_normal_W_m2;
  measured.diffuse_W_m2 = split.diffuse_W_m2;
  const auto joined = completed_year(measured);
  EXPECT_FALSE(joined.modelled.sun_split);
  for (std::size_t i = 0; i < 8760; ++i) {
    ASSERT_NEAR(joined.global_W_m2[i], split.global_W_m2[i], 1e-9) << i;
  }
}

TEST(WeatherColumns, MeasuredSunIsKeptWhole) {
  auto measured = columns();
  measured.beam_normal_W_m2.assign(8760, 1.0);
  EXPECT_THROW(completed_year(measured), InvalidInput);
  measured.diffuse_W_m2.assign(8760, 2.0);
  const auto year = completed_year(measured);
  EXPECT_EQ(year.global_W_m2, measured.global_W_m2);
  EXPECT_EQ(year.beam_normal_W_m2, measured.beam_normal_W_m2);
  EXPECT_FALSE(year.modelled.sun_split);
  measured.diffuse_W_m2.pop_back();
  EXPECT_THROW(completed_year(measured), InvalidInput);
  measured = columns();
  measured.global_W_m2.clear();
  EXPECT_THROW(completed_year(measured), InvalidInput);
}

TEST(WeatherColumns, SkyFromLongWave) {
  auto measured = columns();
  measured.long_wave_W_m2.assign(8760, constants::stefan_boltzmann_W_m2K4 * std::pow(263.15, 4));
  const auto year = completed_year(measured);
  EXPECT_NEAR(year.sky_temperature_C[0], -10.0, 1e-9);
  EXPECT_TRUE(year.cloud_cover.empty());
  EXPECT_FALSE(year.modelled.sky_temperature);
  measured.sky_temperature_C.assign(8760, -10.0);
  EXPECT_THROW(completed_year(measured), InvalidInput);
  measured.sky_temperature_C.clear();
  measured.long_wave_W_m2[5] = 54.0;
  EXPECT_THROW(completed_year(measured), InvalidInput);
}

TEST(WeatherColumns, WindIsTheDefaultWhenMissing) {
  auto measured = columns(8784);
  const auto year = completed_year(measured);
  EXPECT_TRUE(year.modelled.wind);
  EXPECT_EQ(year.wind_m_s, Hours(8784, default_wind_m_s));
  measured.wind_m_s.assign(8784, 7.0);
  EXPECT_FALSE(completed_year(measured).modelled.wind);
}

TEST(WeatherColumns, CloudOfAnEvenSunIsEven) {
  for (const SunSite site :
       {SunSite{51.5, 0.0, 0.0}, SunSite{-41.3, 174.8, 12.0}, SunSite{40.0, -105.0, 0.0}}) {
    for (const std::size_t hours : {8760u, 8784u}) {
      for (const double cloud : cloud_cover_from_sun(site, sun_of_clearness(site, 0.6, hours))) {
        ASSERT_NEAR(cloud, 0.3, 1e-9);
      }
    }
  }
}

// A dull day, and the night that follows it until the next sunrise; by any clock.
TEST(WeatherColumns, CloudHoldsThroughTheNight) {
  for (const double offset_h : {0.0, -9.0, 11.0}) {
    const SunSite site{45.0, 0.0, offset_h};
    auto global = sun_of_clearness(site, 0.75);
    const auto noon = static_cast<std::size_t>(24 * 100 + 12 + static_cast<int>(offset_h));
    for (std::size_t i = noon - 10; i < noon + 10; ++i) {
      global[i] /= 3.0;
    }
    const auto cloud = cloud_cover_from_sun(site, global);
    EXPECT_NEAR(cloud[noon - 8], 0.0, 1e-9);  // before its sunrise
    EXPECT_NEAR(cloud[noon], 1.0, 1e-9);
    EXPECT_NEAR(cloud[noon + 15], 1.0, 1e-9);  // 3 h of the next day
    EXPECT_NEAR(cloud[noon + 24], 0.0, 1e-9);
    const auto dull = std::count_if(cloud.begin(), cloud.end(), [](double value) { return value > 0.5; });
    EXPECT_EQ(dull, 24);
  }
}

TEST(WeatherColumns, PolarNightTakesTheConvention) {
  const SunSite site{78.2, 15.6, 1.0};
  const auto cloud = cloud_cover_from_sun(site, sun_of_clearness(site, 0.75));
  EXPECT_NEAR(cloud[12], 0.7, 1e-9);
  EXPECT_NEAR(cloud[24 * 171], 0.0, 1e-9);  // midnight sun
}

TEST(WeatherColumns, CloudOfASynthesisedYearReturns) {
  const auto* place = find_place("london");
  ASSERT_NE(place, nullptr);
  const auto year = synthesised_year(*place).hours;
  const auto cloud = cloud_cover_from_sun(year.site, year.global_W_m2);
  std::size_t days = 0;
  for (std::size_t noon = 12; noon < cloud.size(); noon += 24) {
    EXPECT_NEAR(cloud[noon], year.cloud_cover[noon], 1e-6) << noon;
    ++days;
  }
  EXPECT_EQ(days, 365u);
}

TEST(WeatherColumns, CloudRefusesWhatIsNoSun) {
  auto global = sun_of_clearness({51.5, 0.0, 0.0}, 0.5);
  EXPECT_THROW(cloud_cover_from_sun({95.0, 0.0, 0.0}, global), InvalidInput);
  global[3] = -1.0;
  EXPECT_THROW(cloud_cover_from_sun({51.5, 0.0, 0.0}, global), InvalidInput);
  global.pop_back();
  EXPECT_THROW(cloud_cover_from_sun({51.5, 0.0, 0.0}, global), InvalidInput);
}

}  // namespace
}  // namespace dewgap
