#include "dewgap/fitting/sun_heat.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

TEST(SunHeat, LimitsAreTheMaterials) {
  EXPECT_EQ(lasting_limit_C(SheetKind::acrylic), 70.0);
  EXPECT_EQ(lasting_limit_C(SheetKind::acrylic, SheetGrade::extruded), 70.0);
  EXPECT_EQ(lasting_limit_C(SheetKind::acrylic, SheetGrade::cast), 80.0);
  EXPECT_EQ(lasting_limit_C(SheetKind::petg, SheetGrade::cast), 55.0);
}

TEST(SunHeat, SeverityFollowsTheMargin) {
  const auto at = [](double temperature_C) { return sun_finding(temperature_C, SheetKind::acrylic); };
  EXPECT_EQ(at(59.9).severity, FitSeverity::fine);
  EXPECT_EQ(at(60.1).severity, FitSeverity::mind);
  EXPECT_EQ(at(70.1).severity, FitSeverity::blocks);
  EXPECT_NEAR(at(64.0).margin_K, 6.0, 1e-12);
  EXPECT_EQ(sun_finding(75.0, SheetKind::acrylic, SheetGrade::cast).severity, FitSeverity::mind);
  EXPECT_NE(at(71.0).sentence.find("bears 70 C"), std::string::npos);
  EXPECT_THROW(at(std::nan("")), InvalidInput);
}

}  // namespace
}  // namespace dewgap
