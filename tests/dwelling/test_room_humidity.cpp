#include "dewgap/dwelling/room_humidity.hpp"

#include <gtest/gtest.h>

#include "dewgap/air/saturation.hpp"
#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

TEST(RoomHumidity, UpperLimitsOfTheClasses) {
  test::check_reference("humidity_classes/upper_limits.csv", [](const test::ReferenceRow& row) {
    const auto humidity_class = static_cast<HumidityClass>(static_cast<int>(row.number("humidity_class")));
    return class_vapour_excess_Pa(humidity_class, row.number("monthly_outdoor_C"));
  });
}

TEST(RoomHumidity, ClassFiveHasNoUpperLimit) {
  EXPECT_THROW(class_vapour_excess_Pa(HumidityClass::special, 0.0), InvalidInput);
  EXPECT_THROW(class_vapour_excess_Pa(static_cast<HumidityClass>(9), 0.0), InvalidInput);
  EXPECT_THROW(class_vapour_excess_Pa(HumidityClass::storage, test::not_a_number), InvalidInput);
}

TEST(RoomHumidity, ExcessFallsStraightAndStaysContinuous) {
  EXPECT_DOUBLE_EQ(vapour_excess_Pa(600.0, -30.0), 600.0);
  EXPECT_NEAR(vapour_excess_Pa(600.0, 1e-9), 600.0, 1e-6);
  EXPECT_DOUBLE_EQ(vapour_excess_Pa(600.0, 5.0), 450.0);
  EXPECT_NEAR(vapour_excess_Pa(600.0, 20.0 - 1e-9), 0.0, 1e-6);
  EXPECT_EQ(vapour_excess_Pa(600.0, 25.0), 0.0);
  EXPECT_THROW(vapour_excess_Pa(-1.0, 5.0), InvalidInput);
  EXPECT_THROW(vapour_excess_Pa(5001.0, 5.0), InvalidInput);
  EXPECT_THROW(vapour_excess_Pa(600.0, -61.0), InvalidInput);
  EXPECT_THROW(vapour_excess_Pa(test::not_a_number, 5.0), InvalidInput);
}

TEST(RoomHumidity, SinglePaneFaceByHand) {
  EXPECT_NEAR(single_pane_face_C(20.0, 0.0), 20.0 - 20.0 * 0.13 / 0.174, 1e-12);
  EXPECT_DOUBLE_EQ(single_pane_face_C(18.0, 18.0), 18.0);
  EXPECT_GT(single_pane_face_C(20.0, 0.0, 0.13, 0.08), single_pane_face_C(20.0, 0.0));
}

TEST(RoomHumidity, MistingTable) {
  test::check_reference("misting_humidity/table.csv", [](const test::ReferenceRow& row) {
    return 100.0 * misting_humidity(row.number("room_C"), row.number("outdoor_C"));
  });
}

TEST(RoomHumidity, MistingInTheLimits) {
  EXPECT_NEAR(misting_humidity(20.0, 20.0), 1.0, 1e-12);
  EXPECT_GT(misting_humidity(20.0, 25.0), 1.0);
  double before = 0.0;
  for (double outdoor_C = -30.0; outdoor_C <= 20.0; outdoor_C += 0.5) {
    const double humidity = misting_humidity(18.0, outdoor_C);
    EXPECT_GT(humidity, before) << outdoor_C;
    before = humidity;
  }
}

TEST(RoomHumidity, TheFrostPointCountsBelowZero) {
  const double face_C = single_pane_face_C(18.0, -20.0);
  ASSERT_LT(face_C, 0.0);
  const double over_ice = saturation_pressure_Pa(face_C, SaturationFormula::murphy_koop, Phase::ice);
  const double room = saturation_pressure_Pa(18.0, SaturationFormula::murphy_koop, Phase::water);
  EXPECT_NEAR(misting_humidity(18.0, -20.0), over_ice / room, 1e-12);
}

TEST(RoomHumidity, PaneRefusesBadInput) {
  EXPECT_THROW(single_pane_face_C(51.0, 0.0), InvalidInput);
  EXPECT_THROW(single_pane_face_C(20.0, -61.0), InvalidInput);
  EXPECT_THROW(single_pane_face_C(20.0, 0.0, 0.0), InvalidInput);
  EXPECT_THROW(single_pane_face_C(20.0, 0.0, 0.13, test::not_a_number), InvalidInput);
  EXPECT_THROW(single_pane_face_C(20.0, 0.0, 0.13, 0.04, -0.001), InvalidInput);
  EXPECT_THROW(misting_humidity(test::not_a_number, 0.0), InvalidInput);
  EXPECT_THROW(misting_humidity(20.0, 0.0, 2.0), InvalidInput);
}

TEST(RoomHumidity, SealingRaisesTheExcessByTheFlowLost) {
  EXPECT_DOUBLE_EQ(excess_after_sealing_Pa(400.0, 60.0, 40.0), 600.0);
  EXPECT_DOUBLE_EQ(excess_after_sealing_Pa(400.0, 60.0, 60.0), 400.0);
  EXPECT_EQ(excess_after_sealing_Pa(0.0, 60.0, 40.0), 0.0);
  EXPECT_THROW(excess_after_sealing_Pa(-1.0, 60.0, 40.0), InvalidInput);
  EXPECT_THROW(excess_after_sealing_Pa(400.0, 0.0, 40.0), InvalidInput);
  EXPECT_THROW(excess_after_sealing_Pa(400.0, 60.0, 0.0), InvalidInput);
  EXPECT_THROW(excess_after_sealing_Pa(400.0, test::not_a_number, 40.0), InvalidInput);
}

TEST(RoomHumidity, BaseTemperature) {
  EXPECT_DOUBLE_EQ(base_temperature_C(20.0, 900.0, 200.0), 15.5);
  EXPECT_DOUBLE_EQ(base_temperature_C(20.0, 0.0, 200.0), 20.0);
  EXPECT_THROW(base_temperature_C(20.0, -1.0, 200.0), InvalidInput);
  EXPECT_THROW(base_temperature_C(20.0, 900.0, 0.0), InvalidInput);
  EXPECT_THROW(base_temperature_C(test::not_a_number, 900.0, 200.0), InvalidInput);
}

}  // namespace
}  // namespace dewgap
