// Laws of the flow network over thousands of random networks (tests/airflow/states.csv).
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "dewgap/airflow/gap_network.hpp"
#include "random_networks.hpp"

namespace dewgap {
namespace {

using test::for_each_random_state;
using test::RandomState;
using test::sum_in;
using test::sum_out;

TEST(GapNetworkLaws, EveryNetworkConvergesAndKeepsItsMass) {
  double worst = 0.0;
  for_each_random_state([&](const RandomState& s) {
    const auto flows = flows_at_pressure(s.network, s.densities, s.pressure_Pa);
    ASSERT_EQ(flows.status, SolveStatus::converged);
    ASSERT_GT(sum_in(flows), 0.0);
    const double imbalance = std::abs(sum_in(flows) - sum_out(flows)) / sum_in(flows);
    ASSERT_LE(imbalance, 1e-12);
    ASSERT_GE(std::min({flows.from_room_m3_s, flows.to_room_m3_s, flows.from_outdoors_m3_s,
                        flows.to_outdoors_m3_s}),
              0.0);
    worst = std::max(worst, imbalance);
  });
  RecordProperty("worst_imbalance", std::to_string(worst * 1e15) + "e-15");
}

TEST(GapNetworkLaws, MirroredNetworksMirrorTheirFlows) {
  for_each_random_state([](const RandomState& s) {
    const auto flows = flows_at_pressure(s.network, s.densities, s.pressure_Pa);
    const GapNetwork mirrored{s.network.to_outdoors, s.network.to_room, s.network.reference_height_m};
    const AirDensities air{s.densities.room_kg_m3, s.densities.gap_kg_m3, s.densities.outdoor_kg_m3};
    const auto image = flows_at_pressure(mirrored, air, -s.pressure_Pa);
    const double tolerance = 1e-11 * sum_in(flows);
    ASSERT_NEAR(image.from_room_m3_s, flows.from_outdoors_m3_s, tolerance);
    ASSERT_NEAR(image.to_room_m3_s, flows.to_outdoors_m3_s, tolerance);
    ASSERT_NEAR(image.from_outdoors_m3_s, flows.from_room_m3_s, tolerance);
    ASSERT_NEAR(image.net_outwards_m3_s, -flows.net_outwards_m3_s, tolerance);
  });
}

TEST(GapNetworkLaws, LargerPressureGivesLargerNetFlow) {
  for_each_random_state([](const RandomState& s) {
    const auto flows = flows_at_pressure(s.network, s.densities, s.pressure_Pa);
    const double step_Pa = 0.01 + 0.01 * std::abs(s.pressure_Pa);
    const auto more = flows_at_pressure(s.network, s.densities, s.pressure_Pa + step_Pa);
    ASSERT_GT(more.net_outwards_m3_s, flows.net_outwards_m3_s - 1e-12 * sum_in(flows));
    ASSERT_GT(more.gap_pressure_Pa, flows.gap_pressure_Pa - 1e-13);
    ASSERT_LE(more.gap_pressure_Pa - flows.gap_pressure_Pa, step_Pa * (1.0 + 1e-9));
  });
}

TEST(GapNetworkLaws, NoPressureAndEqualDensitiesGiveNoFlow) {
  for_each_random_state([](const RandomState& s) {
    const double density = s.densities.gap_kg_m3;
    const auto flows = flows_at_pressure(s.network, {density, density, density}, 0.0);
    ASSERT_EQ(flows.status, SolveStatus::converged);
    ASSERT_EQ(sum_in(flows) + sum_out(flows), 0.0);
    ASSERT_EQ(flows.net_outwards_m3_s, 0.0);
  });
}

TEST(GapNetworkLaws, ATightOuterSideLeavesOnlyExchangeWithTheRoom) {
  for_each_random_state([](const RandomState& s) {
    const GapNetwork network{s.network.to_room, {}, s.network.reference_height_m};
    const auto flows = flows_at_pressure(network, s.densities, s.pressure_Pa);
    ASSERT_EQ(flows.status, SolveStatus::converged);
    ASSERT_EQ(flows.net_outwards_m3_s, 0.0);
    ASSERT_EQ(flows.from_outdoors_m3_s + flows.to_outdoors_m3_s, 0.0);
    ASSERT_NEAR(flows.from_room_m3_s, flows.to_room_m3_s, 1e-12 * flows.from_room_m3_s);
  });
}

TEST(GapNetworkLaws, AnotherReferenceHeightWithItsPressureChangesNothing) {
  for_each_random_state([](const RandomState& s) {
    const auto flows = flows_at_pressure(s.network, s.densities, s.pressure_Pa);
    GapNetwork moved = s.network;
    moved.reference_height_m += 0.4;
    // p = p_room - p_outdoor at the new height.
    const double shift_Pa = (s.densities.outdoor_kg_m3 - s.densities.room_kg_m3) * 9.80665 * 0.4;
    const auto same = flows_at_pressure(moved, s.densities, s.pressure_Pa + shift_Pa);
    // Rounding of the pressures moves a square-root opening near its still pressure by the root of it.
    ASSERT_NEAR(same.net_outwards_m3_s, flows.net_outwards_m3_s, 1e-6 * sum_in(flows));
    ASSERT_NEAR(same.from_room_m3_s, flows.from_room_m3_s, 1e-6 * sum_in(flows));
  });
}

}  // namespace
}  // namespace dewgap
