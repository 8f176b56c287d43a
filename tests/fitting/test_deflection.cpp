#include "dewgap/fitting/deflection.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "dewgap/errors.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

constexpr double nu = 0.3;

double quantity_of(const PlateCoefficients& plate, const std::string& quantity) {
  if (quantity == "deflection") return plate.deflection;
  if (quantity == "edge_moment") return plate.edge_moment;
  if (quantity == "moment_along_short") return plate.moment_along_short;
  if (quantity == "moment_along_long") return plate.moment_along_long;
  return std::numeric_limits<double>::quiet_NaN();
}

auto plate_of(PlateEdges edges) {
  return [edges](const test::ReferenceRow& row) {
    return quantity_of(plate_coefficients(row.number("long_over_short"), nu, edges), row.text("quantity"));
  };
}

TEST(Deflection, MeetsThePrintedTables) {
  test::check_reference(
      "plate_deflection/central.csv",
      [](const test::ReferenceRow& row) {
        return plate_coefficients(row.number("long_over_short"), nu, PlateEdges::simply_supported).deflection;
      },
      4e-5);
  test::check_reference("timoshenko_plates/simply_supported.csv", plate_of(PlateEdges::simply_supported),
                        3e-4);
  test::check_reference("timoshenko_plates/clamped.csv", plate_of(PlateEdges::clamped), 4e-4);
  test::check_reference(
      "timoshenko_plates/central_force.csv",
      [](const test::ReferenceRow& row) { return central_force_coefficient(row.number("long_over_short")); },
      6e-5);
}

/// Navier's double series: another way to the same plate.
double navier_deflection(double ratio) {
  const double pi = std::acos(-1.0);
  double sum = 0.0;
  for (int m = 1; m < 200; m += 2) {
    for (int n = 1; n < 200; n += 2) {
      const double sign = (m + n) % 4 == 2 ? 1.0 : -1.0;  // sin(m pi / 2) sin(n pi / 2)
      sum += sign / (m * n * std::pow(m * m + n * n / (ratio * ratio), 2));
    }
  }
  return 16.0 / std::pow(pi, 6) * sum;
}

TEST(Deflection, AgreesWithNaviersSeries) {
  for (const double ratio : {1.0, 1.37, 2.0, 4.5}) {
    EXPECT_NEAR(plate_coefficients(ratio, nu, PlateEdges::simply_supported).deflection,
                navier_deflection(ratio), 1e-7);
  }
}

TEST(Deflection, OfALongPlateIsThatOfAStrip) {
  EXPECT_NEAR(plate_coefficients(900.0, nu, PlateEdges::simply_supported).deflection, 5.0 / 384.0, 1e-9);
  EXPECT_NEAR(plate_coefficients(5.99, nu, PlateEdges::clamped).deflection, 1.0 / 384.0, 1e-6);
  EXPECT_NEAR(plate_coefficients(5.99, nu, PlateEdges::clamped).edge_moment, -1.0 / 12.0, 2e-5);
}

TEST(Deflection, OfASheetByHand) {
  // square of 1 m, 4 mm acrylic: D = 3.1e9 x 6.4e-8 / (12 x (1 - 0.37^2)) = 19.16; 0.004062 x 50 / 19.16
  const auto answer = plate_under_pressure(SheetKind::acrylic, 1.0, 1.0, 0.004, 50.0);
  EXPECT_NEAR(answer.deflection_m, 0.010602, 1e-5);
  EXPECT_TRUE(answer.large_deflection);
  // M = 0.0479 + (0.07 x 0.0368) per q a^2 at nu 0.37, about 0.0505; 6 x 0.0505 x 50 / 1.6e-5
  EXPECT_NEAR(answer.stress_Pa, 9.46e5, 2e4);
  const auto clamped = plate_under_pressure(SheetKind::acrylic, 1.0, 1.0, 0.004, 50.0, PlateEdges::clamped);
  EXPECT_LT(clamped.deflection_m, answer.deflection_m / 3.0);
  EXPECT_FALSE(plate_under_pressure(SheetKind::acrylic, 1.0, 1.0, 0.004, 5.0).large_deflection);
}

TEST(Deflection, GoesWithPressureAndTheCubeOfThickness) {
  const auto once = plate_under_pressure(SheetKind::petg, 0.7, 1.3, 0.004, 10.0);
  EXPECT_NEAR(plate_under_pressure(SheetKind::petg, 1.3, 0.7, 0.004, 30.0).deflection_m,
              3.0 * once.deflection_m, 1e-12);
  EXPECT_NEAR(plate_under_pressure(SheetKind::petg, 0.7, 1.3, 0.008, 10.0).deflection_m,
              once.deflection_m / 8.0, 1e-12);
  EXPECT_NEAR(deflection_under_push_m(SheetKind::petg, 0.7, 1.3, 0.004, 60.0),
              2.0 * deflection_under_push_m(SheetKind::petg, 0.7, 1.3, 0.004, 30.0), 1e-12);
}

TEST(EdgeLift, IsThatOfABeam) {
  // line load 22.5 N/m on 0.4 m, strip 0.2 m wide: 5 x 22.5 x 0.0256 / (384 x 3.1e9 x 1.0667e-9)
  EXPECT_NEAR(edge_lift_m(SheetKind::acrylic, 0.9, 0.004, 0.4, 50.0), 2.268e-3, 2e-6);
}

TEST(LeastThickness, TradeIsEnoughForOrdinaryWindows) {
  const auto advice = least_thickness(SheetKind::acrylic, 0.94, 1.44);
  EXPECT_NEAR(advice.trade_thickness_m, 0.004, 1e-12);
  ASSERT_TRUE(advice.least_thickness_m);
  EXPECT_LE(*advice.least_thickness_m, 0.004);
  EXPECT_TRUE(advice.reason.empty());
}

TEST(LeastThickness, IsTheFirstStockedOneThatKeepsTheLimit) {
  for (const auto sheet : {SheetKind::acrylic, SheetKind::polycarbonate, SheetKind::petg, SheetKind::glass}) {
    for (double side_m = 0.3; side_m < 1.6; side_m += 0.1) {
      const auto advice = least_thickness(sheet, side_m, 1.4 * side_m);
      ASSERT_TRUE(advice.least_thickness_m) << side_m;
      for (const double thickness_m : stocked_thicknesses_m(sheet)) {
        const auto at = plate_under_pressure(sheet, side_m, 1.4 * side_m, thickness_m, 50.0);
        const bool enough = at.deflection_m <= side_m / 50.0 && at.stress_Pa <= design_stress_Pa(sheet).best;
        EXPECT_EQ(enough && thickness_m >= 0.003, thickness_m >= *advice.least_thickness_m);
      }
    }
  }
  const auto none = least_thickness(SheetKind::petg, 2.2, 3.1);
  EXPECT_FALSE(none.least_thickness_m);
  EXPECT_NE(none.reason.find("no stocked thickness is enough"), std::string::npos) << none.reason;
  const auto large = least_thickness(SheetKind::acrylic, 1.2, 1.9);
  EXPECT_GT(large.least_thickness_m.value(), large.trade_thickness_m);
  EXPECT_NE(large.reason.find("4 mm bends"), std::string::npos) << large.reason;
  EXPECT_NE(large.reason.find("allowed: "), std::string::npos) << large.reason;
}

TEST(Deflection, RejectsBadInput) {
  const double bad = std::numeric_limits<double>::quiet_NaN();
  EXPECT_THROW(plate_coefficients(0.9, nu, PlateEdges::clamped), InvalidInput);
  EXPECT_THROW(plate_coefficients(bad, nu, PlateEdges::clamped), InvalidInput);
  EXPECT_THROW(plate_under_pressure(SheetKind::glass, bad, 1.0, 0.004, 50.0), InvalidInput);
  EXPECT_THROW(plate_under_pressure(SheetKind::glass, 1.0, 1.0, 0.004, -1.0), InvalidInput);
  EXPECT_THROW(deflection_under_push_m(SheetKind::glass, 1.0, 1.0, 0.004, bad), InvalidInput);
  EXPECT_THROW(least_thickness(SheetKind::pet_film, 1.0, 1.0), InvalidInput);
}

}  // namespace
}  // namespace dewgap
