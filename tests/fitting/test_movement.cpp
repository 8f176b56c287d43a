#include "dewgap/fitting/movement.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "dewgap/errors.hpp"
#include "dewgap/fitting/practice.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

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

TEST(Movement, MoistureAddsToHeat) {
  // 0.35 % from dry to saturated: three tenths of it over 1.28 m, beside 2.7 mm of heat
  const auto movement = sheet_movement(SheetKind::acrylic, 1.28);
  EXPECT_NEAR(movement.thermal_m * 1e3, 2.688, 1e-9);
  EXPECT_NEAR(movement.moisture_m * 1e3, 1.344, 1e-9);
  EXPECT_NEAR(movement.total_m * 1e3, 4.032, 1e-9);
  EXPECT_LT(movement.low_m, movement.total_m);
  EXPECT_GT(movement.high_m, movement.total_m);
  EXPECT_EQ(moisture_movement_m(SheetKind::glass, 2.0, 1.0), 0.0);
  EXPECT_NEAR(reveal_clearance_m(SheetKind::acrylic, 1.28), movement.total_m, 1e-15);
}

TEST(Movement, HolesAndSlotsForIt) {
  EXPECT_NEAR(hole_diameter_at_m(SheetKind::acrylic, 1.0, 0.0042, {30.0, 0.0}), 0.0063, 1e-12);
  EXPECT_NEAR(slot_length_for_movement_m(0.0041, 0.005), 0.010, 1e-12);
  EXPECT_NEAR(slot_length_for_movement_m(0.004, 0.005), 0.009, 1e-12);
  for (const auto sheet : {SheetKind::acrylic, SheetKind::petg, SheetKind::glass}) {
    const MovementConditions year{25.0, 0.4};
    const double hole_m = hole_diameter_at_m(sheet, 0.7, 0.0042, year);
    EXPECT_NEAR(length_served_by_hole_m(sheet, hole_m, 0.0042, year), 0.7, 1e-9);
  }
}

TEST(Movement, RejectsBadInput) {
  for (const double bad : {-0.1, 11.0, test::not_a_number}) {
    EXPECT_THROW(thermal_movement_m(SheetKind::acrylic, bad, 30.0), InvalidInput);
    EXPECT_THROW(hole_diameter_for_movement_m(bad, 0.0042), InvalidInput);
    EXPECT_THROW(hole_diameter_for_movement_m(0.001, bad), InvalidInput);
    EXPECT_THROW(length_served_by_hole_m(SheetKind::acrylic, bad, 0.0042, 30.0), InvalidInput);
  }
  for (const double bad : {-1.0, 151.0, test::not_a_number}) {
    EXPECT_THROW(thermal_movement_m(SheetKind::acrylic, 1.0, bad), InvalidInput);
    EXPECT_THROW(length_served_by_hole_m(SheetKind::acrylic, 0.005, 0.0042, bad), InvalidInput);
  }
  for (const double bad : {-0.1, 1.1, test::not_a_number}) {
    EXPECT_THROW(moisture_movement_m(SheetKind::acrylic, 1.0, bad), InvalidInput);
    EXPECT_THROW(sheet_movement(SheetKind::acrylic, 1.0, {30.0, bad}), InvalidInput);
    EXPECT_THROW(slot_length_for_movement_m(bad, 0.005), InvalidInput);
  }
  EXPECT_THROW(length_served_by_hole_m(SheetKind::acrylic, 0.0042, 0.0042, 30.0), InvalidInput);
  EXPECT_THROW(length_served_by_hole_m(SheetKind::acrylic, 0.005, 0.0042, 0.0), InvalidInput);
}

}  // namespace
}  // namespace dewgap
