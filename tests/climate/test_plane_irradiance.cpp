#include "dewgap/climate/plane_irradiance.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "dewgap/climate/places_kernel.hpp"
#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

constexpr SkyIrradiance fair{600.0, 150.0};
constexpr SunPosition morning{35.0, 120.0};

double sine_of(const SunPosition& sun) {
  return std::sin(climate::radians(sun.altitude_deg));
}

TEST(PlaneIrradiance, BeamOnATilt) {
  test::check_reference("sun_geometry/beam_on_tilt.csv", [](const test::ReferenceRow& row) {
    const SunPosition sun{row.number("altitude_deg"), 180.0 + row.number("surface_solar_azimuth_deg")};
    return plane_irradiance({row.number("beam_normal_W_m2"), 0.0}, sun, {row.number("tilt_deg"), 180.0})
        .beam_W_m2;
  });
}

TEST(PlaneIrradiance, LyingFlatGetsTheGlobal) {
  for (const double compass : {0.0, 90.0, 211.0}) {
    const auto flat = plane_irradiance(fair, morning, {0.0, compass});
    EXPECT_NEAR(flat.total_W_m2(), 150.0 + 600.0 * sine_of(morning), 1e-10);
    EXPECT_EQ(flat.ground_W_m2, 0.0);
  }
}

TEST(PlaneIrradiance, FaceDownGetsTheGroundAlone) {
  const auto down = plane_irradiance(fair, morning, {180.0, 0.0}, 0.5);
  EXPECT_EQ(down.beam_W_m2, 0.0);
  EXPECT_NEAR(down.sky_W_m2, 0.0, 1e-12);
  EXPECT_NEAR(down.ground_W_m2, 0.5 * (150.0 + 600.0 * sine_of(morning)), 1e-10);
}

TEST(PlaneIrradiance, FacingTheSunGetsTheWholeBeam) {
  const auto facing = plane_irradiance(fair, morning, {90.0 - morning.altitude_deg, morning.azimuth_deg});
  EXPECT_NEAR(facing.beam_W_m2, 600.0, 1e-10);
}

TEST(PlaneIrradiance, SunBehindThePlaneOrBelowTheHorizonGivesNoBeam) {
  EXPECT_EQ(plane_irradiance(fair, morning, {90.0, 300.0}).beam_W_m2, 0.0);
  EXPECT_GT(plane_irradiance(fair, morning, {90.0, 300.0}).sky_W_m2, 0.0);
  const auto night = plane_irradiance(fair, {-2.0, 120.0}, {90.0, 120.0});
  EXPECT_EQ(night.beam_W_m2, 0.0);
  EXPECT_NEAR(night.ground_W_m2, 0.2 * 0.5 * 150.0, 1e-12);  // lit by the diffuse alone
}

// Two planes back to back see the whole sky and the whole ground; together they never get more beam than one
// that faces the sun.
TEST(PlaneIrradiance, BackToBackPlanesShareSkyAndGround) {
  const double global = 150.0 + 600.0 * sine_of(morning);
  for (double tilt = 0.0; tilt <= 180.0; tilt += 15.0) {
    for (double compass = 0.0; compass < 180.0; compass += 30.0) {
      const auto front = plane_irradiance(fair, morning, {tilt, compass});
      const auto back = plane_irradiance(fair, morning, {180.0 - tilt, compass + 180.0});
      EXPECT_NEAR(front.sky_W_m2 + back.sky_W_m2, 150.0, 1e-10);
      EXPECT_NEAR(front.ground_W_m2 + back.ground_W_m2, 0.2 * global, 1e-10);
      EXPECT_LE(front.beam_W_m2 + back.beam_W_m2, 600.0 + 1e-10);
      EXPECT_LT(std::min(front.beam_W_m2, back.beam_W_m2), 1e-9);
    }
  }
}

TEST(PlaneIrradiance, RefusesBadInput) {
  EXPECT_THROW(plane_irradiance({-1.0, 0.0}, morning, {}), InvalidInput);
  EXPECT_THROW(plane_irradiance({1451.0, 0.0}, morning, {}), InvalidInput);
  EXPECT_THROW(plane_irradiance({0.0, test::not_a_number}, morning, {}), InvalidInput);
  EXPECT_THROW(plane_irradiance(fair, {91.0, 0.0}, {}), InvalidInput);
  EXPECT_THROW(plane_irradiance(fair, {10.0, test::not_a_number}, {}), InvalidInput);
  EXPECT_THROW(plane_irradiance(fair, morning, {181.0, 0.0}), InvalidInput);
  EXPECT_THROW(plane_irradiance(fair, morning, {90.0, -1.0}), InvalidInput);
  EXPECT_THROW(plane_irradiance(fair, morning, {}, 1.1), InvalidInput);
}

TEST(HourlyDiffuseShare, FallsFromOvercastToClear) {
  EXPECT_EQ(hourly_diffuse_share(0.0), 1.0);
  EXPECT_EQ(hourly_diffuse_share(1.0), 0.165);
  for (const double edge : {0.22, 0.80}) {
    EXPECT_NEAR(hourly_diffuse_share(edge), hourly_diffuse_share(edge + 1e-9), 5e-4) << edge;
  }
  for (double k = 0.0; k < 0.75; k += 0.01) {
    EXPECT_GT(hourly_diffuse_share(k), hourly_diffuse_share(k + 0.01)) << k;
  }
  EXPECT_THROW(hourly_diffuse_share(-0.01), InvalidInput);
  EXPECT_THROW(hourly_diffuse_share(1.01), InvalidInput);
  EXPECT_THROW(hourly_diffuse_share(test::not_a_number), InvalidInput);
}

TEST(SplitGlobal, KeepsTheEnergyAndTheBounds) {
  for (const double latitude : {-70.0, 0.0, 51.5}) {
    for (const int day : {15, 172, 300}) {
      for (int hour = 0; hour < 24; ++hour) {
        const auto sun = sun_of_hour({latitude, 0.0, 0.0}, day, hour);
        double beam_before = 0.0;
        for (const double global : {0.0, 5.0, 50.0, 200.0, 500.0, 900.0, 1400.0}) {
          const auto sky = split_global(global, sun);
          const double sine = std::max(0.0, sine_of(sun.position));
          EXPECT_NEAR(sky.diffuse_horizontal_W_m2 + sky.beam_normal_W_m2 * sine, global, 1e-9);
          EXPECT_GE(sky.diffuse_horizontal_W_m2, 0.0);
          EXPECT_GE(sky.beam_normal_W_m2, beam_before);
          EXPECT_LT(sky.beam_normal_W_m2, 0.84 * extraterrestrial_normal_W_m2(day));
          beam_before = sky.beam_normal_W_m2;
        }
      }
    }
  }
}

TEST(SplitGlobal, DarkAndTooBrightHours) {
  const auto dark = split_global(12.0, {.position = {-3.0, 100.0}});
  EXPECT_EQ(dark.beam_normal_W_m2, 0.0);
  EXPECT_EQ(dark.diffuse_horizontal_W_m2, 12.0);
  const SunOfHour low{.position = {5.0, 100.0}, .lit_share = 1.0, .extraterrestrial_W_m2 = 120.0};
  EXPECT_EQ(split_global(120.0, low).beam_normal_W_m2, split_global(300.0, low).beam_normal_W_m2);
  EXPECT_NEAR(split_global(300.0, low).diffuse_horizontal_W_m2,
              split_global(120.0, low).diffuse_horizontal_W_m2 + 180.0, 1e-10);
}

TEST(SplitGlobal, RefusesBadInput) {
  EXPECT_THROW(split_global(-1.0, {}), InvalidInput);
  EXPECT_THROW(split_global(1501.0, {}), InvalidInput);
  EXPECT_THROW(split_global(test::not_a_number, {}), InvalidInput);
  EXPECT_THROW(split_global(100.0, {.extraterrestrial_W_m2 = 2000.0}), InvalidInput);
  EXPECT_THROW(split_global(100.0, {.position = {test::not_a_number, 0.0}}), InvalidInput);
}

}  // namespace
}  // namespace dewgap
