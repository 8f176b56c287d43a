// Reading a solved section.
#include "dewgap/window/section_readings.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "dewgap/window/section.hpp"
#include "section_tables.hpp"

namespace dewgap {
namespace {

const SectionResult& frame() {
  static const SectionResult result = solve_section(test::iso_10077_2_section_d4());
  return result;
}

TEST(SectionReadings, ProfileWalksTheWholeBoundaryInOrder) {
  const auto profile = profile_along(frame(), "room");
  ASSERT_GT(profile.size(), 20u);
  EXPECT_DOUBLE_EQ(profile.front().along_m, 0.0);
  EXPECT_NEAR(profile.back().along_m, 0.190 + 0.037 + 0.084 + 0.017 + 0.026, 1e-12);
  EXPECT_NEAR(profile.front().at.x_m, 0.300, 1e-12);
  EXPECT_NEAR(profile.back().at.x_m, 0.0, 1e-12);
  double last_m = 0.0;
  for (const auto& point : profile) {
    EXPECT_GE(point.along_m, last_m - 1e-12);
    last_m = point.along_m;
    EXPECT_NEAR(temperature_C_at(frame(), point.at).value(), point.temperature_C, 1e-9);
    EXPECT_GT(point.temperature_C, 0.0);
    EXPECT_LT(point.temperature_C, 20.0);
  }
}

TEST(SectionReadings, LowestIsTheProfilesLowest) {
  const auto profile = profile_along(frame(), "room");
  const auto lowest = lowest_along_boundary(frame(), "room");
  for (const auto& point : profile) {
    EXPECT_LE(lowest.temperature_C, point.temperature_C);
  }
  EXPECT_DOUBLE_EQ(lowest.temperature_C, frame().lowest_room_face->temperature_C);
  EXPECT_NEAR(temperature_factor(frame(), "room"), lowest.temperature_C / 20.0, 1e-12);
}

TEST(SectionReadings, LowestOnACavityIsOnItsColdWall) {
  const auto lowest = lowest_on_item(frame(), "joint");
  EXPECT_NEAR(lowest.at.y_m, 0.020, 1e-9);
  EXPECT_GE(lowest.at.x_m, 0.042 - 1e-9);
  EXPECT_LE(lowest.at.x_m, 0.048 + 1e-9);
  EXPECT_GT(lowest_on_item(frame(), "seal of the sash").temperature_C, lowest.temperature_C);
}

TEST(SectionReadings, CornerFilmsReachAsFarAsTheShorterEdgeAtMostTheirReach) {
  double in_corners_m = 0.0;
  for (const auto& face : frame().faces) {
    if (face.surface_resistance_m2K_W == 0.20) {
      const double length_m = std::abs(face.to.x_m - face.from.x_m) + std::abs(face.to.y_m - face.from.y_m);
      in_corners_m += length_m;
      EXPECT_EQ(frame().boundaries[face.boundary], "room");
    }
  }
  EXPECT_NEAR(in_corners_m, 2.0 * 0.030 + 2.0 * 0.017, 1e-12);  // the panel's corner, the sash's step
}

TEST(SectionReadings, PointsOutsideHaveNoTemperature) {
  EXPECT_FALSE(temperature_C_at(frame(), {0.2, 0.06}).has_value());
  EXPECT_FALSE(temperature_C_at(frame(), {-0.001, 0.03}).has_value());
  EXPECT_TRUE(temperature_C_at(frame(), {0.3, 0.051}).has_value());
}

TEST(SectionReadings, FieldNamesTheItemOfEachCell) {
  const auto& field = frame().field;
  ASSERT_EQ(field.item.size(), (field.x_m.size() - 1) * (field.y_m.size() - 1));
  ASSERT_EQ(field.temperature_C.size(), field.x_m.size() * field.y_m.size());
  const auto filled =
      std::count_if(field.item.begin(), field.item.end(), [](const auto& item) { return item.has_value(); });
  EXPECT_EQ(static_cast<std::size_t>(filled), frame().cells);
  const auto column = std::upper_bound(field.x_m.begin(), field.x_m.end(), 0.045) - field.x_m.begin() - 1;
  const auto row = std::upper_bound(field.y_m.begin(), field.y_m.end(), 0.050) - field.y_m.begin() - 1;
  const auto item = field.item_of_cell(static_cast<std::size_t>(column), static_cast<std::size_t>(row));
  ASSERT_TRUE(item.has_value());
  EXPECT_EQ(frame().items[*item], "joint");
}

TEST(SectionReadings, TransmittancesByHand) {
  // (0.5 - 1.2 x 0.19) / 0.11 and 0.5 - 1.8 x 0.11 - 1.1 x 0.19
  EXPECT_NEAR(frame_transmittance_W_m2K(0.5, 0.11, {1.2, 0.19}), 0.272 / 0.11, 1e-12);
  EXPECT_NEAR(linear_transmittance_W_mK(0.5, {1.8, 0.11}, {1.1, 0.19}), 0.093, 1e-12);
}

}  // namespace
}  // namespace dewgap
