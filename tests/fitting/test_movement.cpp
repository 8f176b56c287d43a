#include "dewgap/fitting/movement.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "dewgap/errors.hpp"
#include "dewgap/fitting/practice.hpp"

namespace dewgap {
namespace {

constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();

TEST(Movement, MovesAcrylicAsTheNotesSay) {
  // 'a 1.28 m sheet moves 2.7 mm before moisture', at 30 K: half a digit of the printed figure
  EXPECT_NEAR(thermal_movement_m(SheetKind::acrylic, 1.28, 30.0) * 1e3, 2.7, 0.05);
}

TEST(Movement, FindsTheLengthThatTheUsualHoleServes) {
  // 'a 5 mm hole round a 4.2 mm shank serves a sheet only to about 0.38 m at 30 K'
  EXPECT_NEAR(
      length_served_by_hole_m(SheetKind::acrylic, practice::hole_diameter_m, practice::screw_shank_m, 30.0),
      0.38, 0.005);
}

TEST(Movement, HoleAndServedLengthAreInverse) {
  for (const auto sheet : {SheetKind::acrylic, SheetKind::polycarbonate, SheetKind::petg, SheetKind::glass}) {
    for (const double length_m : {0.2, 0.9, 2.4}) {
      const double hole_m = hole_diameter_for_movement_m(thermal_movement_m(sheet, length_m, 30.0), 0.0042);
      EXPECT_NEAR(length_served_by_hole_m(sheet, hole_m, 0.0042, 30.0), length_m, 1e-9);
    }
  }
}

TEST(Movement, IsProportionalToLengthAndRange) {
  const double once_m = thermal_movement_m(SheetKind::petg, 0.7, 15.0);
  EXPECT_GT(once_m, 0.0);
  EXPECT_NEAR(thermal_movement_m(SheetKind::petg, 1.4, 15.0), 2.0 * once_m, 1e-15);
  EXPECT_NEAR(thermal_movement_m(SheetKind::petg, 0.7, 45.0), 3.0 * once_m, 1e-15);
  EXPECT_EQ(thermal_movement_m(SheetKind::petg, 0.7, 0.0), 0.0);
}

TEST(Movement, PlasticsMoveSeveralTimesAsMuchAsGlass) {
  const double glass_m = thermal_movement_m(SheetKind::glass, 1.0, 30.0);
  for (const auto sheet : {SheetKind::acrylic, SheetKind::polycarbonate, SheetKind::petg}) {
    EXPECT_GT(thermal_movement_m(sheet, 1.0, 30.0), 6.0 * glass_m);
  }
}

TEST(Movement, RejectsBadInput) {
  for (const double bad : {-0.1, 11.0, not_a_number}) {
    EXPECT_THROW(thermal_movement_m(SheetKind::acrylic, bad, 30.0), InvalidInput);
    EXPECT_THROW(hole_diameter_for_movement_m(bad, 0.0042), InvalidInput);
    EXPECT_THROW(hole_diameter_for_movement_m(0.001, bad), InvalidInput);
    EXPECT_THROW(length_served_by_hole_m(SheetKind::acrylic, bad, 0.0042, 30.0), InvalidInput);
  }
  for (const double bad : {-1.0, 151.0, not_a_number}) {
    EXPECT_THROW(thermal_movement_m(SheetKind::acrylic, 1.0, bad), InvalidInput);
    EXPECT_THROW(length_served_by_hole_m(SheetKind::acrylic, 0.005, 0.0042, bad), InvalidInput);
  }
  EXPECT_THROW(length_served_by_hole_m(SheetKind::acrylic, 0.0042, 0.0042, 30.0), InvalidInput);
  EXPECT_THROW(length_served_by_hole_m(SheetKind::acrylic, 0.005, 0.0042, 0.0), InvalidInput);
}

}  // namespace
}  // namespace dewgap
