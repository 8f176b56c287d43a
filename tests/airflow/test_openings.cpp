#include "dewgap/airflow/openings.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <numbers>

#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

constexpr double seconds_per_hour = 3600.0;

Feeler feeler_of(const std::string& name) {
  static const std::map<std::string, Feeler> names{{"nothing", Feeler::nothing},
                                                   {"paper", Feeler::paper},
                                                   {"folded_paper", Feeler::folded_paper},
                                                   {"bank_card", Feeler::bank_card},
                                                   {"coin", Feeler::coin}};
  return names.at(name);
}

double drop_Pa(const FlowResistance& r, double q) {
  return r.laminar_Pa_s_m3 * q + r.quadratic_Pa_s2_m6 * q * std::abs(q);
}

TEST(Openings, SlotFlowOfTheFeelers) {
  test::check_reference("joint_slot/feelers.csv", [](const test::ReferenceRow& row) {
    const Feeler feeler = feeler_of(row.text("feeler"));
    EXPECT_DOUBLE_EQ(feeler_width_m(feeler), row.number("width_mm") * 1e-3);
    const auto joint = slot_resistance(
        {.width_m = feeler_width_m(feeler), .length_m = 1.0, .depth_m = row.number("depth_mm") * 1e-3});
    return flow_m3_s(joint, row.number("pressure_Pa")) * seconds_per_hour;
  });
  EXPECT_EQ(feeler_width_m(Feeler::nothing), 0.0);
}

TEST(Openings, NarrowSlotFollowsPoiseuille) {
  const SlotShape slot{.width_m = 2e-5, .length_m = 2.0, .depth_m = 0.03, .loss_factor = 0.0};
  const double q = flow_m3_s(slot_resistance(slot, 1.2, 1.8e-5), 4.0);
  EXPECT_NEAR(q / (2.0 * 8e-15 * 4.0 / (12.0 * 1.8e-5 * 0.03)), 1.0, 1e-14);
}

TEST(Openings, WideSlotLosesItsDynamicPressures) {
  const SlotShape slot{.width_m = 0.1, .length_m = 1.0, .depth_m = 1e-4, .loss_factor = 1.5};
  const double q = flow_m3_s(slot_resistance(slot, 1.2, 1.8e-5), 10.0);
  EXPECT_NEAR(q / (0.1 * std::sqrt(2.0 * 10.0 / (1.5 * 1.2))), 1.0, 1e-4);
}

TEST(Openings, OrificeMeetsBothItsLimits) {
  const double area = 20e-3 * 3e-3;
  const double radius = std::sqrt(area / std::numbers::pi);
  const auto hole = orifice_resistance(area, 0.6, 1.2, 1.8e-5);
  EXPECT_NEAR(flow_m3_s(hole, 1e-9) / (std::pow(radius, 3) * 1e-9 / (3.0 * 1.8e-5)), 1.0, 1e-5);
  // The creeping term fades with the Reynolds number, so with one over the root of the pressure.
  EXPECT_NEAR(flow_m3_s(hole, 1e5) / (0.6 * area * std::sqrt(2.0 * 1e5 / 1.2)), 1.0, 2e-4);
}

TEST(Openings, OrificePassesLessThanItsCoefficientAtReynoldsNumber100) {
  const double area = 1e-4;
  const double diameter = 2.0 * std::sqrt(area / std::numbers::pi);
  const auto hole = orifice_resistance(area, 0.6, 1.2, 1.8e-5);
  const double q = 100.0 * 1.8e-5 / (1.2 * diameter) * area;
  EXPECT_NEAR(q / (area * std::sqrt(2.0 * drop_Pa(hole, q) / 1.2)), 0.563, 0.0005);
}

TEST(Openings, FlowIsOddStrictlyIncreasingAndInvertsTheDrop) {
  for (const FlowResistance r :
       {FlowResistance{0.0, 3e6}, FlowResistance{9e3, 0.0}, FlowResistance{9e3, 3e6}}) {
    double before = 0.0;
    for (double dp = 1e-12; dp < 1e4; dp *= 1.7) {
      const double q = flow_m3_s(r, dp);
      EXPECT_EQ(flow_m3_s(r, -dp), -q);
      EXPECT_GT(q, before);
      EXPECT_NEAR(drop_Pa(r, q) / dp, 1.0, 1e-14);
      before = q;
    }
    EXPECT_EQ(flow_m3_s(r, 0.0), 0.0);
  }
  EXPECT_EQ(flow_m3_s(FlowResistance{}, 10.0), 0.0);
}

TEST(Openings, JointRefitIsExactAtOneAndTenPascal) {
  for (double exponent = 0.5; exponent <= 1.0; exponent += 0.0625) {
    const auto joint = joint_resistance(0.655, exponent, 4.2);
    EXPECT_GE(joint.laminar_Pa_s_m3, 0.0);
    EXPECT_GE(joint.quadratic_Pa_s2_m6, 0.0);
    for (const double dp : {1.0, 10.0}) {
      const double law = 0.655 * 4.2 * std::pow(dp, exponent) / seconds_per_hour;
      EXPECT_NEAR(flow_m3_s(joint, dp) / law, 1.0, 1e-13) << exponent;
    }
  }
  EXPECT_EQ(joint_resistance(1.0, 0.5, 1.0).laminar_Pa_s_m3, 0.0);
  EXPECT_EQ(joint_resistance(1.0, 1.0, 1.0).quadratic_Pa_s2_m6, 0.0);
  EXPECT_TRUE(joint_resistance(0.0, 0.6, 1.0).shut());
  EXPECT_TRUE(joint_resistance(1.0, 0.6, 0.0).shut());
}

TEST(Openings, JointRefitKeepsToTheStatedDistanceFromThePowerLaw) {
  const auto joint = joint_resistance(1.0, 2.0 / 3.0, 1.0);
  const auto ratio = [&](double dp) {
    return flow_m3_s(joint, dp) * seconds_per_hour / std::pow(dp, 2.0 / 3.0);
  };
  for (double dp = 1.0; dp <= 10.0; dp *= 1.05) {
    EXPECT_GT(ratio(dp), 1.0 - 1e-12);
    EXPECT_LT(ratio(dp), 1.05);
  }
  EXPECT_NEAR(ratio(0.1), 0.64, 0.005);
  EXPECT_NEAR(ratio(100.0), 0.78, 0.005);
}

TEST(Openings, RefuseWhatIsOutsideTheirRange) {
  EXPECT_THROW(slot_resistance({.width_m = 0.0}), InvalidInput);
  EXPECT_THROW(slot_resistance({.length_m = test::not_a_number}), InvalidInput);
  EXPECT_THROW(slot_resistance({.depth_m = 1.0}), InvalidInput);
  EXPECT_THROW(slot_resistance({.loss_factor = -1.0}), InvalidInput);
  EXPECT_THROW(slot_resistance({}, 0.0), InvalidInput);
  EXPECT_THROW(slot_resistance({}, 1.2, test::not_a_number), InvalidInput);
  EXPECT_THROW(orifice_resistance(0.0), InvalidInput);
  EXPECT_THROW(orifice_resistance(1e-4, 1.5), InvalidInput);
  EXPECT_THROW(joint_resistance(-1.0, 0.6, 1.0), InvalidInput);
  EXPECT_THROW(joint_resistance(1.0, 0.4, 1.0), InvalidInput);
  EXPECT_THROW(joint_resistance(1.0, 0.6, test::not_a_number), InvalidInput);
  EXPECT_THROW(flow_m3_s({1.0, 1.0}, test::not_a_number), InvalidInput);
  EXPECT_THROW(flow_m3_s({-1.0, 1.0}, 1.0), InvalidInput);
}

}  // namespace
}  // namespace dewgap
