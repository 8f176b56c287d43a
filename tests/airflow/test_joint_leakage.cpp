#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <string_view>

#include "dewgap/airflow/openings.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

constexpr double seconds_per_hour = 3600.0;
constexpr JointState all_states[] = {JointState::worn,         JointState::ordinary,
                                     JointState::repaired,     JointState::weather_stripped,
                                     JointState::painted_shut, JointState::putty_line};

TEST(JointLeakage, PublishedLeakageAtOtherPressures) {
  const auto at_other_pressure = [](const test::ReferenceRow& row) {
    const double at_1_Pa = row.number("leakage_m3_h_m") * std::pow(row.number("pressure_Pa"), -2.0 / 3.0);
    return flow_m3_s(joint_resistance(at_1_Pa, 2.0 / 3.0, 1.0), row.number("at_pressure_Pa")) *
           seconds_per_hour;
  };
  const double refit_at_9_81_Pa = 0.006;  // 0.2 % of the known differences' 3 m3/(h m)
  test::check_reference("crack_leakage/joint_leakage.csv", at_other_pressure, refit_at_9_81_Pa);
}

TEST(JointLeakage, StatesHoldThePublishedValues) {
  const std::map<std::string, JointState> states{{"worn", JointState::worn},
                                                 {"repaired", JointState::repaired},
                                                 {"weather_stripped", JointState::weather_stripped}};
  test::check_reference("crack_leakage/joint_states.csv", [&](const test::ReferenceRow& row) {
    return joint_leakage(states.at(row.text("state"))).best_m3_h_m;
  });
}

TEST(JointLeakage, EveryStateHasAnOrderedRangeAndASource) {
  for (const JointState state : all_states) {
    const auto joint = joint_leakage(state);
    EXPECT_GT(joint.low_m3_h_m, 0.0) << joint.name;
    EXPECT_LT(joint.low_m3_h_m, joint.best_m3_h_m) << joint.name;
    EXPECT_LT(joint.best_m3_h_m, joint.high_m3_h_m) << joint.name;
    EXPECT_FALSE(joint_resistance(joint.best_m3_h_m, joint.exponent, 1.0).shut()) << joint.name;
    EXPECT_FALSE(std::string_view(joint.name).empty());
    EXPECT_FALSE(std::string_view(joint.source).empty()) << joint.name;
  }
}

TEST(JointLeakage, WhatHasNoSourceSaysSo) {
  for (const JointState state : {JointState::ordinary, JointState::painted_shut, JointState::putty_line}) {
    EXPECT_NE(std::string_view(joint_leakage(state).source).find("our convention, no source"),
              std::string_view::npos);
  }
}

TEST(JointLeakage, StatesRankFromWornToPutty) {
  const auto best = [](JointState state) { return joint_leakage(state).best_m3_h_m; };
  EXPECT_GT(best(JointState::worn), best(JointState::repaired));
  EXPECT_GT(best(JointState::repaired), best(JointState::ordinary));
  EXPECT_GT(best(JointState::ordinary), best(JointState::weather_stripped));
  EXPECT_GT(best(JointState::weather_stripped), best(JointState::painted_shut));
  EXPECT_GT(best(JointState::painted_shut), best(JointState::putty_line));
}

TEST(JointLeakage, FeelersBracketThePublishedLeakage) {
  const auto at_1_Pa = [](Feeler feeler) {
    return flow_m3_s(slot_resistance({.width_m = feeler_width_m(feeler)}), 1.0) * seconds_per_hour;
  };
  EXPECT_LT(at_1_Pa(Feeler::folded_paper), joint_leakage(JointState::weather_stripped).best_m3_h_m);
  EXPECT_GT(at_1_Pa(Feeler::coin), joint_leakage(JointState::worn).best_m3_h_m);
}

}  // namespace
}  // namespace dewgap
