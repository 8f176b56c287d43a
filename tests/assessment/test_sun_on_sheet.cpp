#include "dewgap/assessment/sun_on_sheet.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

TEST(SunOnSheet, WithoutSunItLiesBetweenRoomAndOutdoors) {
  const auto answer = sun_on_sheet({.irradiance_W_m2 = 0.0});
  EXPECT_GT(answer.sheet_C, 28.0);
  EXPECT_LT(answer.sheet_C, 30.0);
  EXPECT_EQ(answer.absorbed_W_m2, 0.0);
}

TEST(SunOnSheet, AbsorbsWhatTheGlassPasses) {
  // acrylic 4 mm keeps a tenth of the 0.83 that 4 mm glass passes
  const auto answer = sun_on_sheet({.irradiance_W_m2 = 1000.0});
  EXPECT_NEAR(answer.absorbed_W_m2, 83.0, 1e-9);
  EXPECT_GT(answer.sheet_C, 34.0);
  EXPECT_LT(answer.sheet_C, 45.0);
  EXPECT_EQ(answer.finding.severity, FitSeverity::fine);
}

TEST(SunOnSheet, ADarkBlindIsWhatHeatsIt) {
  const auto bare = sun_on_sheet({});
  for (const auto blind : {SunBlind::room_side, SunBlind::in_gap}) {
    const auto answer = sun_on_sheet({.blind = blind});
    EXPECT_GT(answer.sheet_C, bare.sheet_C + 15.0);
    EXPECT_GT(answer.blind_C, answer.sheet_C);
  }
  const auto hottest = hottest_sun_on_sheet({.irradiance_W_m2 = 1000.0});
  EXPECT_GT(hottest.sheet_C, 70.0);
  EXPECT_EQ(hottest.finding.severity, FitSeverity::blocks);
  const auto cast = hottest_sun_on_sheet({.grade = SheetGrade::cast, .irradiance_W_m2 = 1000.0});
  EXPECT_EQ(cast.finding.severity, FitSeverity::mind);
}

TEST(SunOnSheet, RisesWithTheSunAndTheSheetsThickness) {
  double last_C = 0.0;
  for (const double sun_W_m2 : {0.0, 200.0, 600.0, 1000.0, 1200.0}) {
    const double now_C = sun_on_sheet({.irradiance_W_m2 = sun_W_m2}).sheet_C;
    EXPECT_GT(now_C, last_C);
    last_C = now_C;
  }
  EXPECT_GT(sun_on_sheet({.sheet_thickness_m = 0.008}).absorbed_W_m2, sun_on_sheet({}).absorbed_W_m2);
}

TEST(SunOnSheet, RejectsBadInput) {
  EXPECT_THROW(sun_on_sheet({.gap_m = 0.001}), InvalidInput);
  EXPECT_THROW(sun_on_sheet({.irradiance_W_m2 = std::nan("")}), InvalidInput);
  EXPECT_THROW(sun_on_sheet({.sheet_thickness_m = 0.1}), InvalidInput);
}

}  // namespace
}  // namespace dewgap
