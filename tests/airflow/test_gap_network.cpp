#include "dewgap/airflow/gap_network.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

constexpr double g = 9.80665;
constexpr AirDensities equal{1.2, 1.2, 1.2};

// Root of a Q + b Q |Q| = dp.
double series_flow(double a, double b, double dp) {
  const double q = 2.0 * std::abs(dp) / (a + std::sqrt(a * a + 4.0 * b * std::abs(dp)));
  return std::copysign(q, dp);
}

TEST(GapNetwork, OneHoleOnEachSideGivesTheSeriesFormula) {
  const FlowResistance inner{2e3, 5e6};
  for (const double scale : {1e-6, 1e-3, 1.0, 1e3, 1e6}) {
    const FlowResistance outer{7e3 * scale, 3e6 * scale * scale};
    const GapNetwork network{{{inner, 0.5}}, {{outer, 0.5}}};
    for (const double p : {-30.0, -0.1, 1e-6, 2.0, 400.0}) {
      const auto flows = flows_at_pressure(network, equal, p);
      const double q = series_flow(inner.laminar_Pa_s_m3 + outer.laminar_Pa_s_m3,
                                   inner.quadratic_Pa_s2_m6 + outer.quadratic_Pa_s2_m6, p);
      ASSERT_EQ(flows.status, SolveStatus::converged);
      EXPECT_NEAR(flows.net_outwards_m3_s / q, 1.0, 1e-12) << scale << " " << p;
      EXPECT_EQ(p > 0.0 ? flows.from_outdoors_m3_s : flows.from_room_m3_s, 0.0);
      const double outer_drop = outer.laminar_Pa_s_m3 * q + outer.quadratic_Pa_s2_m6 * q * std::abs(q);
      EXPECT_NEAR(flows.gap_pressure_Pa / outer_drop, 1.0, 1e-11) << scale << " " << p;
    }
  }
}

TEST(GapNetwork, HeightShiftsTheSeriesFormulaByItsColumns) {
  const FlowResistance inner{2e3, 5e6};
  const FlowResistance outer{4e3, 1e6};
  const AirDensities air{1.29, 1.24, 1.20};
  const GapNetwork network{{{inner, 0.0}}, {{outer, 1.0}}, 0.5};
  // Up the gap from the bottom break to the top joint: (rho_out - rho_gap) g 0.5 + (rho_room - rho_gap) g
  // 0.5.
  const double columns = (1.29 - 1.24) * g * 0.5 + (1.20 - 1.24) * g * 0.5;
  for (const double p : {-1.0, 0.0, 0.3}) {
    const double q = series_flow(6e3, 6e6, p + columns);
    EXPECT_NEAR(flows_at_pressure(network, air, p).net_outwards_m3_s / q, 1.0, 1e-11) << p;
  }
}

TEST(GapNetwork, LaminarOpeningsGiveTheLinearSolution) {
  const AirDensities air{1.30, 1.25, 1.19};
  const GapNetwork network{
      {{{2e3, 0.0}, 0.1}, {{9e3, 0.0}, 1.0}}, {{{5e3, 0.0}, 0.0}, {{1e3, 0.0}, 1.2}}, 0.6};
  const double p = 0.4;
  double conductance = 0.0;
  double moment = 0.0;
  const auto add = [&](const std::vector<PlacedOpening>& side, double level, double density) {
    for (const auto& hole : side) {
      conductance += 1.0 / hole.resistance.laminar_Pa_s_m3;
      moment +=
          (level + (air.gap_kg_m3 - density) * g * (hole.height_m - 0.6)) / hole.resistance.laminar_Pa_s_m3;
    }
  };
  add(network.to_room, p, air.room_kg_m3);
  add(network.to_outdoors, 0.0, air.outdoor_kg_m3);
  EXPECT_NEAR(flows_at_pressure(network, air, p).gap_pressure_Pa, moment / conductance, 1e-14);
}

TEST(GapNetwork, WarmGapWithATightOuterSideDrawsInAtTheBottom) {
  const FlowResistance hole{1e3, 1e6};
  const AirDensities air{1.29, 1.15, 1.20};
  const auto both = flows_at_pressure({{{hole, 0.1}, {hole, 0.9}}, {}, 0.5}, air, 5.0);
  const double q = series_flow(2e3, 2e6, (1.20 - 1.15) * g * 0.8);
  EXPECT_EQ(both.status, SolveStatus::converged);
  EXPECT_NEAR(both.from_room_m3_s / q, 1.0, 1e-12);
  EXPECT_NEAR(both.to_room_m3_s / q, 1.0, 1e-12);
  EXPECT_EQ(both.net_outwards_m3_s, 0.0);
  EXPECT_EQ(both.from_outdoors_m3_s, 0.0);
  // Which of the two is the inlet: choke the lower one a little, and the gap's pressure sinks towards the
  // upper one's.
  const FlowResistance choked{4e3, 1e6};
  const double even = both.gap_pressure_Pa;
  const auto low_choked = flows_at_pressure({{{choked, 0.1}, {hole, 0.9}}, {}, 0.5}, air, 5.0);
  EXPECT_LT(low_choked.gap_pressure_Pa, even);
  const auto cold = flows_at_pressure({{{choked, 0.1}, {hole, 0.9}}, {}, 0.5}, {1.29, 1.25, 1.20}, 5.0);
  EXPECT_GT(cold.gap_pressure_Pa, even);
}

TEST(GapNetwork, TwoBreaksAtOneHeightExchangeNothing) {
  const FlowResistance hole{1e3, 1e6};
  const auto flows = flows_at_pressure({{{hole, 0.1}, {hole, 0.1}}, {}, 0.5}, {1.29, 1.15, 1.20}, 5.0);
  EXPECT_EQ(flows.from_room_m3_s, 0.0);
  EXPECT_EQ(flows.to_room_m3_s, 0.0);
}

TEST(GapNetwork, ShutSidesPassNothing) {
  const FlowResistance hole{1e3, 1e6};
  for (const GapNetwork& network : {GapNetwork{}, GapNetwork{{{{}, 0.1}}, {{{}, 0.2}}, 0.5}}) {
    const auto flows = flows_within_hour(network, {}, {3.0, 2.0});
    EXPECT_EQ(flows.status, SolveStatus::converged);
    EXPECT_EQ(flows.from_room_m3_s + flows.from_outdoors_m3_s + flows.to_room_m3_s + flows.to_outdoors_m3_s,
              0.0);
    EXPECT_EQ(flows.gap_pressure_Pa, 0.0);
    EXPECT_EQ(flows.share_of_hour_inwards, 0.0);
  }
  const auto outdoors_only =
      flows_at_pressure({{}, {{hole, 0.0}, {hole, 1.0}}, 0.5}, {1.29, 1.15, 1.20}, 5.0);
  EXPECT_GT(outdoors_only.from_outdoors_m3_s, 0.0);
  EXPECT_EQ(outdoors_only.net_outwards_m3_s, 0.0);
}

TEST(GapNetwork, SpreadJointsShareTheWhole) {
  const auto joint = spread_joint_over_height(0.6, 2.0 / 3.0, 3.0, 0.2, 1.0, 4);
  ASSERT_EQ(joint.size(), 4u);
  EXPECT_DOUBLE_EQ(joint.front().height_m, 0.3);
  EXPECT_DOUBLE_EQ(joint.back().height_m, 0.9);
  const auto slot = spread_over_height({.width_m = 1e-3, .length_m = 2.0}, 0.0, 1.0, 5);
  ASSERT_EQ(slot.size(), 5u);
  double joint_flow = 0.0;
  double slot_flow = 0.0;
  for (const auto& part : joint) joint_flow += flow_m3_s(part.resistance, 3.0);
  for (const auto& part : slot) slot_flow += flow_m3_s(part.resistance, 3.0);
  EXPECT_NEAR(joint_flow / flow_m3_s(joint_resistance(0.6, 2.0 / 3.0, 3.0), 3.0), 1.0, 1e-13);
  EXPECT_NEAR(slot_flow / flow_m3_s(slot_resistance({.width_m = 1e-3, .length_m = 2.0}), 3.0), 1.0, 1e-13);
  EXPECT_THROW(spread_over_height({}, 0.0, 1.0, 0), InvalidInput);
  EXPECT_THROW(spread_joint_over_height(1.0, 0.6, 1.0, 1.0, 0.5, 3), InvalidInput);
}

TEST(GapNetwork, RefusesWhatIsOutsideItsRange) {
  EXPECT_THROW(flows_at_pressure({}, {}, test::not_a_number), InvalidInput);
  EXPECT_THROW(flows_at_pressure({}, {test::not_a_number, 1.2, 1.2}, 0.0), InvalidInput);
  EXPECT_THROW(flows_at_pressure({{{{-1.0, 0.0}, 0.1}}, {}, 0.5}, {}, 0.0), InvalidInput);
  EXPECT_THROW(flows_at_pressure({{}, {{{1.0, 0.0}, test::not_a_number}}, 0.5}, {}, 0.0), InvalidInput);
  EXPECT_THROW(flows_within_hour({}, {}, {0.0, -1.0}), InvalidInput);
  EXPECT_THROW(flows_within_hour({}, {}, {test::not_a_number, 1.0}), InvalidInput);
  for (const int points : {0, 2, 4, 6, 8, 10, -1}) {
    EXPECT_THROW(flows_within_hour({}, {}, {0.0, 1.0}, points), InvalidInput) << points;
  }
}

}  // namespace
}  // namespace dewgap
