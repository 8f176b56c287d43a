#include "dewgap/climate/sun.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <numeric>

#include "dewgap/climate/sun_kernel.hpp"
#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

// A typical year's months with their radiation as a place.
Place typical_year(std::string_view site) {
  const auto table = test::read_reference("hourly_years/monthly.csv");
  Place place;
  for (std::size_t row = 0; row < table.row_count(); ++row) {
    if (table.text(row, "site") == site) {
      place.latitude_deg = table.number(row, "latitude_deg");
      auto& month = place.months[static_cast<std::size_t>(table.number(row, "month")) - 1];
      month.mean_C = table.number(row, "mean_C");
      month.max_C = table.number(row, "max_C");
      month.min_C = table.number(row, "min_C");
      month.global_kWh_m2_day = table.number(row, "global_kWh_m2_day");
    }
  }
  return place;
}

Place bare(double latitude_deg) {
  Place place{.latitude_deg = latitude_deg};
  place.months.fill({.mean_C = 5.0, .max_C = 8.0, .min_C = 2.0});
  return place;
}

double sum(const std::array<double, 12>& months) {
  return std::accumulate(months.begin(), months.end(), 0.0);
}

double on_plane(const Place& place, double compass_deg) {
  return sum(monthly_sun(place, {90.0, compass_deg}).plane_kWh_m2_day);
}

TEST(MonthlySun, LyingFlatReturnsTheHorizontalExactly) {
  for (const auto& place : places()) {
    for (const double compass_deg : {0.0, 77.0, 180.0}) {
      const auto sun = monthly_sun(place, {0.0, compass_deg});
      for (std::size_t i = 0; i < 12; ++i) {
        EXPECT_NEAR(sun.plane_kWh_m2_day[i], sun.horizontal_kWh_m2_day[i], 1e-13 * 12.0) << place.key;
      }
    }
  }
}

TEST(MonthlySun, FaceDownSeesOnlyTheGround) {
  const auto sun = monthly_sun(*find_place("dublin"), {180.0, 180.0});
  for (std::size_t i = 0; i < 12; ++i) {
    EXPECT_NEAR(sun.plane_kWh_m2_day[i], 0.2 * sun.horizontal_kWh_m2_day[i], 1e-12);
  }
}

TEST(MonthlySun, TheSunnySideFacesTheEquator) {
  EXPECT_GT(on_plane(*find_place("london"), 180.0), 1.5 * on_plane(*find_place("london"), 0.0));
  EXPECT_GT(on_plane(*find_place("wellington"), 0.0), 1.5 * on_plane(*find_place("wellington"), 180.0));
  for (const auto& place : places()) {
    // The model's days are symmetric about noon.
    EXPECT_NEAR(on_plane(place, 90.0), on_plane(place, 270.0), 1e-9) << place.key;
    EXPECT_GT(on_plane(place, 90.0), on_plane(place, place.latitude_deg > 0.0 ? 0.0 : 180.0)) << place.key;
  }
}

TEST(MonthlySun, HemispheresMirrorAtTheEquinox) {
  const climate::MeanDay north{51.5, 4.0, 3.0, 0.5};
  const climate::MeanDay south{-51.5, -4.0, 3.0, 0.5};
  EXPECT_NEAR(climate::plane_of_day_kWh_m2(north, {90.0, 160.0}),
              climate::plane_of_day_kWh_m2(south, {90.0, 20.0}), 1e-12);
}

TEST(MonthlySun, StaysWithinWhatTheSkyHolds) {
  for (const auto& place : places()) {
    for (double compass_deg = 0.0; compass_deg < 360.0; compass_deg += 45.0) {
      const auto sun = monthly_sun(place, {90.0, compass_deg});
      for (std::size_t i = 0; i < 12; ++i) {
        // At least the ground's share; at most the beam of a whole day without an atmosphere.
        EXPECT_GT(sun.plane_kWh_m2_day[i], 0.1 * sun.horizontal_kWh_m2_day[i]);
        EXPECT_LT(sun.plane_kWh_m2_day[i],
                  1.367 * 1.033 * day_length_h(place.latitude_deg, climate::klein_mean_day[i]));
      }
    }
  }
}

TEST(MonthlySun, SaysWhatItModelled) {
  const auto measured = monthly_sun(*find_place("dublin"), {});
  EXPECT_FALSE(measured.modelled);
  EXPECT_FALSE(measured.from_latitude_alone);
  EXPECT_EQ(measured.horizontal_kWh_m2_day[0], 0.649);
  const auto from_sunshine = monthly_sun(*find_place("edinburgh"), {});
  EXPECT_TRUE(from_sunshine.modelled);
  EXPECT_FALSE(from_sunshine.from_latitude_alone);
  const auto from_latitude = monthly_sun(*find_place("london"), {});
  EXPECT_TRUE(from_latitude.modelled);
  EXPECT_TRUE(from_latitude.from_latitude_alone);
  EXPECT_NEAR(from_latitude.horizontal_kWh_m2_day[5], 0.4 * extraterrestrial_MJ_m2(51.505, 162) / 3.6, 1e-12);
}

TEST(MonthlySun, FromSunshineByAngstromAndPrescott) {
  auto place = bare(45.0);
  for (std::size_t i = 0; i < 12; ++i) {
    place.months[i].sunshine_h = 0.5 * day_length_h(45.0, climate::klein_mean_day[i]) * days_of_month[i];
  }
  const auto sun = monthly_sun(place, {});
  EXPECT_NEAR(sun.horizontal_kWh_m2_day[3], 0.5 * extraterrestrial_MJ_m2(45.0, 105) / 3.6, 1e-12);
}

// How good the estimates are where radiation was measured. Claims, set before the first run: 10 % of the year
// from sunshine, 25 % from latitude alone.
TEST(MonthlySun, EstimatesForDublinAgainstItsMeasuredRadiation) {
  auto place = *find_place("dublin");
  const double measured = sum(monthly_sun(place, {}).horizontal_kWh_m2_day);
  for (auto& month : place.months) {
    month.global_kWh_m2_day.reset();
  }
  const double from_sunshine = sum(monthly_sun(place, {}).horizontal_kWh_m2_day) / measured - 1.0;
  for (auto& month : place.months) {
    month.sunshine_h.reset();
  }
  const double from_latitude = sum(monthly_sun(place, {}).horizontal_kWh_m2_day) / measured - 1.0;
  std::printf("Dublin's year from sunshine %+.1f %%, from latitude %+.1f %%\n", 100.0 * from_sunshine,
              100.0 * from_latitude);
  EXPECT_LT(std::abs(from_sunshine), 0.10);
  EXPECT_LT(std::abs(from_latitude), 0.25);
}

TEST(MonthlySun, DiffuseShareAgainstTwoTypicalYears) {
  double squares = 0.0;
  double differences = 0.0;
  int rows = 0;
  test::check_reference("hourly_years/monthly.csv", [&](const test::ReferenceRow& row) {
    const double latitude = row.number("latitude_deg");
    const int day = climate::klein_mean_day.at(static_cast<std::size_t>(row.number("month")) - 1);
    const double clearness = row.number("global_kWh_m2_day") * 3.6 / extraterrestrial_MJ_m2(latitude, day);
    const double share = climate::monthly_diffuse_share(
        clearness, climate::sunset_hour_angle_rad(latitude, declination_deg(day)));
    const double difference = share - row.number("expected");
    squares += difference * difference;
    differences += difference;
    ++rows;
    return share;
  });
  std::printf("diffuse share: bias %+.4f, r.m.s. %.4f\n", differences / rows, std::sqrt(squares / rows));
  // The figures of the header.
  EXPECT_NEAR(std::sqrt(squares / rows), 0.036, 0.0005);
  EXPECT_NEAR(differences / rows, -0.022, 0.0005);
}

TEST(MonthlySun, VerticalPlanesAgainstTwoTypicalYears) {
  std::array<double, 4> modelled{};
  std::array<double, 4> hourly{};
  test::check_reference(
      "hourly_years/vertical_sun.csv",
      [&](const test::ReferenceRow& row) {
        const auto sun = monthly_sun(typical_year(row.text("site")), {90.0, row.number("compass_deg")});
        const auto quarter = static_cast<std::size_t>(row.number("compass_deg") / 90.0);
        const auto month = static_cast<std::size_t>(row.number("month")) - 1;
        modelled.at(quarter) += sun.plane_kWh_m2_day[month];
        hourly.at(quarter) += row.number("expected");
        return sun.plane_kWh_m2_day[month];
      },
      0.3);
  const std::array names{"north", "east", "south", "west"};
  for (std::size_t i = 0; i < 4; ++i) {
    std::printf("%s: year %+.1f %%\n", names[i], 100.0 * (modelled[i] / hourly[i] - 1.0));
    EXPECT_NEAR(modelled[i] / hourly[i], 1.0, 0.08) << names[i];
  }
}

TEST(MonthlySun, DiffuseShareIsContinuousBelowTheFit) {
  for (const double sunset : {1.0, 1.8}) {
    EXPECT_DOUBLE_EQ(climate::monthly_diffuse_share(0.0, sunset), 1.0);
    EXPECT_NEAR(climate::monthly_diffuse_share(0.3 - 1e-9, sunset),
                climate::monthly_diffuse_share(0.3, sunset), 1e-8);
    EXPECT_EQ(climate::monthly_diffuse_share(0.9, sunset), climate::monthly_diffuse_share(0.8, sunset));
    for (double clearness = 0.0; clearness < 0.79; clearness += 0.01) {
      EXPECT_GT(climate::monthly_diffuse_share(clearness, sunset),
                climate::monthly_diffuse_share(clearness + 0.01, sunset));
    }
  }
  EXPECT_THROW(climate::monthly_diffuse_share(1.1, 1.0), InvalidInput);
}

TEST(MonthlySun, WorksFromPoleToPole) {
  for (double latitude_deg = -90.0; latitude_deg <= 90.0; latitude_deg += 7.5) {
    const auto sun = monthly_sun(bare(latitude_deg), {90.0, 180.0});
    for (std::size_t i = 0; i < 12; ++i) {
      EXPECT_TRUE(std::isfinite(sun.plane_kWh_m2_day[i])) << latitude_deg;
      EXPECT_GE(sun.plane_kWh_m2_day[i], 0.0);
    }
  }
}

TEST(MonthlySun, RefusesBadInput) {
  EXPECT_THROW(monthly_sun(bare(45.0), {200.0, 0.0}), InvalidInput);
  EXPECT_THROW(monthly_sun(bare(45.0), {90.0, 361.0}), InvalidInput);
  EXPECT_THROW(monthly_sun(bare(45.0), {test::not_a_number, 0.0}), InvalidInput);
  EXPECT_THROW(monthly_sun(bare(test::not_a_number), {}), InvalidInput);
  auto too_sunny = bare(60.0);
  too_sunny.months[11].sunshine_h = 300.0;
  EXPECT_THROW(monthly_sun(too_sunny, {}), InvalidInput);
  auto too_bright = bare(60.0);
  too_bright.months[11].global_kWh_m2_day = 5.0;
  EXPECT_THROW(monthly_sun(too_bright, {}), InvalidInput);
}

}  // namespace
}  // namespace dewgap
