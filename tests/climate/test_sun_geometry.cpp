#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "dewgap/climate/sun_kernel.hpp"
#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

double angle_deg(double cosine) {
  return climate::degrees(std::acos(cosine));
}

// Sun's azimuth from south, west positive, from its cosines on vertical planes facing west and south.
double azimuth_deg(double latitude_deg, double declination_deg, double hour_angle_deg) {
  const double west = cos_incidence(latitude_deg, declination_deg, hour_angle_deg, {90.0, 270.0});
  const double south = cos_incidence(latitude_deg, declination_deg, hour_angle_deg, {90.0, 180.0});
  return climate::degrees(std::atan2(west, south));
}

double incidence_quantity(const test::ReferenceRow& row) {
  const double latitude = row.number("latitude_deg");
  const double declination = row.number("declination_deg");
  const double hour_angle = row.number("hour_angle_deg");
  const PlaneFacing plane{row.number("tilt_deg"), row.number("compass_deg")};
  const double cosine = cos_incidence(latitude, declination, hour_angle, plane);
  const auto& quantity = row.text("quantity");
  if (quantity.starts_with("term_")) {
    return climate::incidence_terms(latitude, declination, hour_angle, plane)
        .at(static_cast<std::size_t>(quantity.back() - '1'));
  }
  if (quantity == "cos") {
    return cosine;
  }
  if (quantity == "angle_deg" || quantity == "zenith_deg") {
    return angle_deg(cosine);
  }
  if (quantity == "altitude_deg") {
    return 90.0 - angle_deg(cosine);
  }
  if (quantity == "azimuth_deg") {
    return azimuth_deg(latitude, declination, hour_angle);
  }
  if (quantity == "sin_azimuth") {
    return std::sin(climate::radians(azimuth_deg(latitude, declination, hour_angle)));
  }
  throw std::runtime_error("no such quantity: " + quantity);
}

TEST(SunGeometry, Declination) {
  test::check_reference("sun_geometry/declination.csv", [](const test::ReferenceRow& row) {
    return declination_deg(static_cast<int>(row.number("day_of_year")));
  });
}

TEST(SunGeometry, ExtraterrestrialIrradiation) {
  test::check_reference(
      "sun_geometry/extraterrestrial.csv",
      [](const test::ReferenceRow& row) {
        const double latitude = row.number("latitude_deg");
        const int day = static_cast<int>(row.number("day_of_year"));
        const auto declination = row.optional_number("declination_deg");
        return declination
                   ? climate::extraterrestrial_at_declination_MJ_m2(latitude, *declination, day, 1367.0)
                   : extraterrestrial_MJ_m2(latitude, day);
      },
      0.01);
}

TEST(SunGeometry, AngleOfIncidenceTermByTerm) {
  test::check_reference("sun_geometry/incidence.csv", incidence_quantity, 0.1);
}

TEST(SunGeometry, LengthOfTheDay) {
  test::check_reference(
      "sun_geometry/day.csv",
      [](const test::ReferenceRow& row) {
        const double length_h =
            day_length_h(row.number("latitude_deg"), static_cast<int>(row.number("day_of_year")));
        if (row.text("quantity") == "day_length_h") {
          return length_h;
        }
        return row.text("quantity") == "sunrise_h" ? 12.0 - 0.5 * length_h : 12.0 + 0.5 * length_h;
      },
      1.0 / 60.0);
}

TEST(SunGeometry, ClearnessOfDublin) {
  test::check_reference("dublin_daily/clearness.csv", [](const test::ReferenceRow& row) {
    const int day = climate::klein_mean_day.at(static_cast<std::size_t>(row.number("month")) - 1);
    return row.number("global_kWh_m2_day") * 3.6 / extraterrestrial_MJ_m2(53.428, day);
  });
}

TEST(SunGeometry, PolarNightAndDay) {
  EXPECT_EQ(day_length_h(80.0, 355), 0.0);
  EXPECT_EQ(day_length_h(80.0, 172), 24.0);
  EXPECT_EQ(extraterrestrial_MJ_m2(80.0, 355), 0.0);
  EXPECT_GT(extraterrestrial_MJ_m2(80.0, 172), 40.0);
  EXPECT_EQ(day_length_h(-80.0, 172), 0.0);
  EXPECT_NEAR(day_length_h(0.0, 200), 12.0, 1e-12);
}

TEST(SunGeometry, HemispheresMirror) {
  for (double hour_angle = -90.0; hour_angle <= 90.0; hour_angle += 15.0) {
    const double north = cos_incidence(51.5, -20.0, hour_angle, {90.0, 150.0});
    const double south = cos_incidence(-51.5, 20.0, hour_angle, {90.0, 30.0});
    EXPECT_NEAR(north, south, 1e-12);
  }
}

TEST(SunGeometry, DayIntegralOfTheHorizontalCosineIsTheExtraterrestrialDay) {
  const double sunset = climate::degrees(climate::sunset_hour_angle_rad(43.0, declination_deg(105)));
  const int steps = 2000;
  double sum = 0.0;
  for (int i = 0; i < steps; ++i) {
    const double hour_angle = sunset * (2.0 * (i + 0.5) / steps - 1.0);
    sum += cos_incidence(43.0, declination_deg(105), hour_angle, {0.0, 0.0});
  }
  const double normal_W_m2 = 1367.0 * (1.0 + 0.033 * std::cos(climate::radians(360.0 * 105 / 365.0)));
  const double day_MJ_m2 = sum / steps * 2.0 * sunset / 15.0 * 3600.0 * normal_W_m2 * 1e-6;
  EXPECT_NEAR(day_MJ_m2, extraterrestrial_MJ_m2(43.0, 105), 1e-4);
}

TEST(SunGeometry, RefusesBadInput) {
  EXPECT_THROW(declination_deg(0), InvalidInput);
  EXPECT_THROW(declination_deg(367), InvalidInput);
  EXPECT_THROW(extraterrestrial_MJ_m2(91.0, 100), InvalidInput);
  EXPECT_THROW(extraterrestrial_MJ_m2(test::not_a_number, 100), InvalidInput);
  EXPECT_THROW(extraterrestrial_MJ_m2(50.0, 0), InvalidInput);
  EXPECT_THROW(extraterrestrial_MJ_m2(50.0, 100, 500.0), InvalidInput);
  EXPECT_THROW(day_length_h(-91.0, 100), InvalidInput);
  EXPECT_THROW(day_length_h(50.0, 400), InvalidInput);
  EXPECT_THROW(cos_incidence(91.0, 0.0, 0.0, {}), InvalidInput);
  EXPECT_THROW(cos_incidence(50.0, 25.0, 0.0, {}), InvalidInput);
  EXPECT_THROW(cos_incidence(50.0, 0.0, 181.0, {}), InvalidInput);
  EXPECT_THROW(cos_incidence(50.0, 0.0, test::not_a_number, {}), InvalidInput);
  EXPECT_THROW(cos_incidence(50.0, 0.0, 0.0, {181.0, 0.0}), InvalidInput);
  EXPECT_THROW(cos_incidence(50.0, 0.0, 0.0, {90.0, -1.0}), InvalidInput);
}

}  // namespace
}  // namespace dewgap
