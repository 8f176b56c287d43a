#include "dewgap/climate/spread_of_days_kernel.hpp"
#include "dewgap/climate/synthesised_year.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>

#include "dewgap/air/saturation.hpp"
#include "dewgap/climate/degree_days.hpp"
#include "dewgap/climate/places_kernel.hpp"
#include "dewgap/climate/sun.hpp"
#include "dewgap/climate/synthesised_year_kernel.hpp"
#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

double saturation_over_water_Pa(double temperature_C) {
  return saturation_pressure_Pa(temperature_C, SaturationFormula::murphy_koop, Phase::water);
}

Place bare(double latitude_deg) {
  Place place{.latitude_deg = latitude_deg};
  place.months.fill({.mean_C = 5.0, .max_C = 9.0, .min_C = 1.0});
  return place;
}

// What a mean maximum or minimum may miss by, by the swing of the normals: the figures of the header.
double swing_bound_K(double swing_K) {
  if (swing_K >= 8.0) {
    return 0.1;
  }
  return swing_K >= 6.0 ? 0.5 : swing_K >= 4.0 ? 1.2 : 1.3;
}

TEST(SynthesisedYear, ReturnsTheNormalsOfEveryPlace) {
  for (const auto& place : places()) {
    const auto year = synthesised_year(place);
    const auto means = monthly_means(year.hours);
    const auto sun = monthly_sun(place, {.tilt_deg = 0.0});
    for (std::size_t i = 0; i < 12; ++i) {
      const auto& normals = place.months[i];
      const double vapour_Pa = normals.vapour_pressure_Pa.value_or(saturation_over_water_Pa(normals.min_C));
      EXPECT_NEAR(means.months[i].mean_C, normals.mean_C, 1e-9) << place.key << i;
      EXPECT_NEAR(*means.months[i].vapour_pressure_Pa, vapour_Pa, 1e-9 * vapour_Pa) << place.key << i;
      EXPECT_NEAR(*means.months[i].global_kWh_m2_day, sun.horizontal_kWh_m2_day[i], 1e-9) << place.key << i;
      EXPECT_NEAR(*means.months[i].wind_m_s, normals.wind_m_s.value_or(default_wind_m_s), 1e-9) << place.key;
    }
    EXPECT_EQ(means.latitude_deg, place.latitude_deg);
    EXPECT_EQ(means.elevation_m, place.elevation_m);
    EXPECT_LE(year.largest_vapour_deviation, 1e-9);
  }
}

TEST(SynthesisedYear, ReturnsMaximaAndMinimaWithinTheStatedBounds) {
  for (const auto& place : places()) {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
      const auto course = climate::temperature_course(place, seed);
      const auto calendar = climate::calendar_of(course.hourly_C.size());
      const auto max_C = climate::monthly_means_of_days(climate::daily_maxima_of(course.hourly_C), calendar);
      const auto min_C = climate::monthly_means_of_days(climate::daily_minima_of(course.hourly_C), calendar);
      double largest_K = 0.0;
      for (std::size_t i = 0; i < 12; ++i) {
        const auto& normals = place.months[i];
        const double miss_K =
            std::max(std::abs(max_C[i] - normals.max_C), std::abs(min_C[i] - normals.min_C));
        EXPECT_LE(miss_K, swing_bound_K(normals.max_C - normals.min_C)) << place.key << i << " seed " << seed;
        largest_K = std::max(largest_K, miss_K);
      }
      EXPECT_NEAR(course.largest_max_min_deviation_K, largest_K, 1e-12);
    }
  }
}

TEST(SynthesisedYear, DaysHaveErbsSpread) {
  for (const auto& place : places()) {
    const auto days_C = climate::daily_means_of(climate::temperature_course(place, 3).hourly_C);
    const auto calendar = climate::calendar_of(8760);
    const double yearly_K = yearly_sd_K(place);
    for (std::size_t i = 0; i < 12; ++i) {
      double squares_K2 = 0.0;
      for (std::size_t day = calendar.first_day[i]; day < calendar.first_day[i + 1]; ++day) {
        squares_K2 += std::pow(days_C[day] - place.months[i].mean_C, 2) / days_of_month[i];
      }
      const double spread_K = climate::spread_of_days_K(place.months[i].mean_C, days_of_month[i], yearly_K);
      EXPECT_NEAR(std::sqrt(squares_K2), spread_K, 0.01 * spread_K) << place.key << i;
    }
  }
}

// Degree-days of the year's days against Erbs's, whose spread they have. Claim, set before the first run: 1
// %.
TEST(SynthesisedYear, DegreeDaysOfItsDaysAreErbs) {
  double worst = 0.0;
  for (const auto& place : places()) {
    double sum_Kd = 0.0;
    for (const double day_C : climate::daily_means_of(synthesised_year(place).hours.air_temperature_C)) {
      sum_Kd += std::max(0.0, 15.5 - day_C);
    }
    const double erbs_Kd = annual_degree_days_Kd(place, 15.5, DegreeDayMethod::erbs);
    worst = std::max(worst, std::abs(sum_Kd / erbs_Kd - 1.0));
  }
  std::printf("degree-days to 15.5 C: at most %.2f %% from Erbs\n", 100.0 * worst);
  EXPECT_LT(worst, 0.01);
}

TEST(SynthesisedYear, AirNeverExceedsSaturation) {
  for (const auto& place : places()) {
    const auto hours = synthesised_year(place).hours;
    for (std::size_t i = 0; i < 8760; ++i) {
      ASSERT_GT(hours.vapour_pressure_Pa[i], 0.0);
      ASSERT_LE(hours.vapour_pressure_Pa[i],
                saturation_over_water_Pa(hours.air_temperature_C[i]) * (1.0 + 1e-12))
          << place.key << i;
    }
  }
}

TEST(SynthesisedYear, SunCloses) {
  for (const auto& place : places()) {
    const auto hours = synthesised_year(place).hours;
    const auto flat = plane_irradiance_of_year(hours, {0.0, 0.0});
    for (std::size_t i = 0; i < 8760; ++i) {
      const auto sun = sun_of_hour(hours.site, static_cast<int>(i / 24) + 1, static_cast<int>(i % 24));
      ASSERT_NEAR(flat[i].total_W_m2(), hours.global_W_m2[i], 1e-9) << place.key << i;
      ASSERT_LE(hours.global_W_m2[i], sun.extraterrestrial_W_m2) << place.key << i;
      ASSERT_LE(hours.diffuse_W_m2[i], hours.global_W_m2[i]);
      ASSERT_LE(hours.beam_normal_W_m2[i], extraterrestrial_normal_W_m2(static_cast<int>(i / 24) + 1));
    }
  }
}

// Against the monthly method, which knows no days. Claim: 7 % of a year on a vertical plane.
TEST(SynthesisedYear, VerticalPlanesAgainstTheMonthlyMethod) {
  double worst = 0.0;
  for (const auto& place : places()) {
    const auto hours = synthesised_year(place).hours;
    for (const double compass : {0.0, 90.0, 180.0, 270.0}) {
      double year_kWh_m2 = 0.0;
      for (const auto& hour : plane_irradiance_of_year(hours, {90.0, compass})) {
        year_kWh_m2 += 0.001 * hour.total_W_m2();
      }
      const auto monthly = monthly_sun(place, {90.0, compass}).plane_kWh_m2_day;
      double monthly_kWh_m2 = 0.0;
      for (std::size_t i = 0; i < 12; ++i) {
        monthly_kWh_m2 += days_of_month[i] * monthly[i];
      }
      worst = std::max(worst, std::abs(year_kWh_m2 / monthly_kWh_m2 - 1.0));
    }
  }
  std::printf("year on vertical planes: at most %.1f %% from the monthly method\n", 100.0 * worst);
  EXPECT_LT(worst, 0.07);
}

TEST(SynthesisedYear, RunsOnWithoutSteps) {
  double at_ends_K = 0.0;
  double elsewhere_K = 0.0;
  const auto calendar = climate::calendar_of(8760);
  for (const auto& place : places()) {
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
      const auto course = climate::temperature_course(place, seed);
      const auto days_C = climate::daily_means_of(course.hourly_C);
      for (std::size_t day = 0; day < 365; ++day) {
        const double step_K = std::abs(days_C[(day + 1) % 365] - days_C[day]);
        const auto& first_days = calendar.first_day;
        const bool ends_month = std::find(first_days.begin(), first_days.end(), day + 1) != first_days.end();
        (ends_month ? at_ends_K : elsewhere_K) += step_K / (ends_month ? 12.0 : 353.0);
      }
      for (std::size_t i = 0; i < 8760; ++i) {
        ASSERT_LT(std::abs(course.hourly_C[(i + 1) % 8760] - course.hourly_C[i]), 4.5) << place.key << i;
      }
    }
  }
  std::printf("steps over a month's end are %.2f of the others\n", at_ends_K / elsewhere_K);
  EXPECT_NEAR(at_ends_K / elsewhere_K, 1.1, 0.1);  // the header's tenth
}

TEST(SynthesisedYear, TheSeedDecidesIt) {
  const auto& place = *find_place("dublin");
  const auto one = synthesised_year(place, 7).hours;
  EXPECT_EQ(one.air_temperature_C, synthesised_year(place, 7).hours.air_temperature_C);
  EXPECT_EQ(one.global_W_m2, synthesised_year(place, 7).hours.global_W_m2);
  const auto other = synthesised_year(place, 8).hours;
  EXPECT_NE(one.air_temperature_C, other.air_temperature_C);
  EXPECT_NE(one.vapour_pressure_Pa, other.vapour_pressure_Pa);
  EXPECT_NE(one.wind_m_s, other.wind_m_s);
  EXPECT_NE(one.global_W_m2, other.global_W_m2);
}

TEST(SynthesisedYear, SaysWhatItModelled) {
  const auto dublin = synthesised_year(*find_place("dublin"));
  EXPECT_FALSE(dublin.vapour_normals_modelled || dublin.wind_normals_modelled || dublin.sun_normals_modelled);
  EXPECT_TRUE(dublin.hours.modelled.air_temperature && dublin.hours.modelled.sun_split &&
              dublin.hours.modelled.cloud_cover);
  EXPECT_TRUE(dublin.hours.wind_direction_deg.empty() && dublin.hours.sky_temperature_C.empty());
  EXPECT_TRUE(synthesised_year(*find_place("london")).wind_normals_modelled);
  EXPECT_TRUE(synthesised_year(*find_place("edinburgh")).vapour_normals_modelled);
  EXPECT_TRUE(synthesised_year(*find_place("edinburgh")).sun_normals_modelled);
}

TEST(SynthesisedYear, WorksFromPoleToPole) {
  for (double latitude = -90.0; latitude <= 90.0; latitude += 3.75) {
    const auto year = synthesised_year(bare(latitude));  // require_valid has seen every hour
    const auto sun = monthly_sun(bare(latitude), {.tilt_deg = 0.0});
    const auto means = monthly_means(year.hours);
    for (std::size_t i = 0; i < 12; ++i) {
      EXPECT_NEAR(*means.months[i].global_kWh_m2_day, sun.horizontal_kWh_m2_day[i], 1e-9) << latitude;
    }
  }
}

TEST(SynthesisedYear, MoreVapourThanTheAirHoldsIsSaidNotHidden) {
  auto place = bare(50.0);
  place.months[3].vapour_pressure_Pa = 3000.0;
  const auto year = synthesised_year(place);
  EXPECT_GT(year.largest_vapour_deviation, 0.5);
  EXPECT_LT(*monthly_means(year.hours).months[3].vapour_pressure_Pa, 1500.0);
}

// 4 to 6 ms on the machine it was written on; the bound leaves room for sanitizers and busy machines.
TEST(SynthesisedYear, IsQuick) {
  const auto& place = *find_place("london");
  double best_ms = 1e9;
  for (int run = 0; run < 5; ++run) {
    const auto start = std::chrono::steady_clock::now();
    EXPECT_EQ(synthesised_year(place).hours.wind_m_s.size(), 8760u);
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
    best_ms = std::min(best_ms, took.count());
  }
  std::printf("a synthesised year takes %.1f ms\n", best_ms);
  EXPECT_LT(best_ms, 100.0);
}

TEST(SynthesisedYear, RefusesBadInput) {
  EXPECT_THROW(synthesised_year(bare(91.0)), InvalidInput);
  EXPECT_THROW(synthesised_year(bare(test::not_a_number)), InvalidInput);
  auto cold = bare(50.0);
  cold.months[0].mean_C = 20.0;  // above its maximum
  EXPECT_THROW(synthesised_year(cold), InvalidInput);
  auto bright = bare(0.0);
  bright.months[2].global_kWh_m2_day = 9.0;  // clearness about 0.86
  EXPECT_THROW(synthesised_year(bright), InvalidInput);
}

}  // namespace
}  // namespace dewgap
