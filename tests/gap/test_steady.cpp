#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "dewgap/errors.hpp"
#include "dewgap/moisture/transfer.hpp"
#include "gap/gap_cases.hpp"
#include "gap/random_cases.hpp"
#include "support/not_a_number.hpp"

namespace dewgap::test {
namespace {

TEST(Gap, RandomCasesSettleAndBalance) {
  int wet = 0;
  for (const auto& c : random_gap_cases(5000, 7)) {
    const auto state = solve_gap(c);
    ASSERT_EQ(state.status, SolveStatus::converged);
    const double in = state.vapour.vapour_in_kg_s;
    const double out = state.vapour.vapour_out_kg_s + state.vapour.condensation_kg_s;
    ASSERT_LE(std::abs(in - out), 1e-9 * std::max(in, 1e-15));
    // Heat: what leaves the room and what the condensate sets free arrives outdoors or goes off with the air.
    // Within a quarter kelvin of 0 C the film is part ice: the test then takes the difference as its
    // tolerance.
    const double latent =
        state.vapour.condensation_kg_s / c.gap_area_m2 * latent_heat_J_kg(state.centre_face_C);
    const double part_ice = std::abs(state.centre_face_C) <= 0.25 ? 0.14 * latent : 0.0;
    const double flux = std::max(std::abs(state.heat.room_flux_W_m2), 1.0);
    ASSERT_NEAR(state.heat.room_flux_W_m2 + latent,
                state.heat.outdoor_flux_W_m2 + state.heat.air_stream_heat_W_m2, 1e-6 * flux + part_ice);
    wet += state.condensation_g_m2h > 0.0 ? 1 : 0;
  }
  // The states must exercise both branches.
  EXPECT_GT(wet, 500);
  EXPECT_LT(wet, 4500);
}

TEST(Gap, NoOpeningsIsTheUnventedCase) {
  auto c = worn_sash_case();
  c.network.to_room.clear();
  c.network.to_outdoors.clear();
  const auto gap = solve_gap(c);
  const auto closed = solve_stack(c.stack, c.outdoors, c.room);
  ASSERT_EQ(gap.status, SolveStatus::converged);
  EXPECT_EQ(gap.flows.from_room_m3_s, 0.0);
  EXPECT_EQ(gap.flows.from_outdoors_m3_s, 0.0);
  EXPECT_EQ(gap.way, AirWay::still);
  // Only diffusion is left, so the potential vapour pressure is the room's, and all that diffuses in
  // condenses.
  EXPECT_NEAR(gap.vapour.potential_vapour_Pa, c.room_vapour_Pa, 1e-6);
  // That is a tenth of a gram a day, whose heat does not move the pane by a thousandth of a kelvin.
  EXPECT_NEAR(gap.heat.room_flux_W_m2, closed.room_flux_W_m2, 1e-3);
  const double driven = c.diffusion_to_room_kg_sPa * (c.room_vapour_Pa - gap.vapour.vapour_Pa);
  EXPECT_NEAR(gap.vapour.condensation_kg_s, driven, 1e-9 * driven);
}

TEST(Gap, CondensationWarmsThePaneThatTakesIt) {
  auto wet = worn_sash_case();
  wet.room_vapour_Pa = vapour_pressure_Pa(19.0, 0.75);
  wet.pressure = {.mean_Pa = 3.0, .standard_deviation_Pa = 0.0};
  wet.network.to_room = {{joint_resistance(3.0, 2.0 / 3.0, 1.0), 0.6}};
  auto dry = wet;
  dry.room_vapour_Pa = 100.0;
  dry.outdoor_vapour_Pa = 100.0;
  const auto wet_state = solve_gap(wet);
  const auto dry_state = solve_gap(dry);
  ASSERT_GT(wet_state.condensation_g_m2h, 1.0);
  EXPECT_EQ(dry_state.condensation_g_m2h, 0.0);
  EXPECT_GT(wet_state.centre_face_C, dry_state.centre_face_C + 0.05);
}

TEST(Gap, OutwardAirBringsTheGapToTheRoomsVapour) {
  // Mean pressure drives outwards, no gusts: whatever the size of the holes, the potential is the room's.
  for (const double seal : {0.01, 0.1, 1.0}) {
    auto c = worn_sash_case();
    c.network.to_room = {{joint_resistance(seal, 2.0 / 3.0, 1.0), 0.6}};
    c.network.to_outdoors = {{joint_resistance(0.5, 2.0 / 3.0, 1.0), 0.6}};
    c.pressure = {.mean_Pa = 4.0, .standard_deviation_Pa = 0.0};
    c.diffusion_to_room_kg_sPa = 0.0;
    const auto state = solve_gap(c);
    EXPECT_EQ(state.way, AirWay::outwards) << seal;
    EXPECT_NEAR(state.vapour.potential_vapour_Pa, c.room_vapour_Pa, 1e-6 * c.room_vapour_Pa) << seal;
  }
}

TEST(Gap, InwardAirKeepsItAtTheOutdoorVapour) {
  auto c = worn_sash_case();
  c.network.to_room = {{joint_resistance(0.05, 2.0 / 3.0, 1.0), 0.6}};
  c.network.to_outdoors = {{joint_resistance(0.5, 2.0 / 3.0, 1.0), 0.6}};
  c.pressure = {.mean_Pa = -4.0, .standard_deviation_Pa = 0.0};
  c.diffusion_to_room_kg_sPa = 0.0;
  const auto state = solve_gap(c);
  EXPECT_EQ(state.way, AirWay::inwards);
  EXPECT_NEAR(state.vapour.potential_vapour_Pa, c.outdoor_vapour_Pa, 1e-6 * c.outdoor_vapour_Pa);
  EXPECT_EQ(state.condensation_g_m2h, 0.0);
  EXPECT_GT(state.margin_K, 0.0);
}

TEST(Gap, TwoBreaksAtOneHeightOnATightWindowExchangeLittle) {
  auto c = worn_sash_case();
  c.network.to_outdoors.clear();
  const SlotShape breaks{.width_m = 0.006, .length_m = 0.040, .depth_m = 0.012};
  c.network.to_room = {{slot_resistance(breaks), 0.0}};
  const auto state = solve_gap(c);
  // One height, outer side shut: no net flow and no buoyancy loop, only the still air of the breaks.
  EXPECT_EQ(state.way, AirWay::still);
  EXPECT_NEAR(state.vapour.potential_vapour_Pa, c.room_vapour_Pa, 1e-6 * c.room_vapour_Pa);
}

TEST(Gap, EdgeFactorLowersTheColdestFace) {
  auto c = worn_sash_case();
  const auto centre = solve_gap(c);
  c.edge_temperature_factor = 0.85;
  const auto edge = solve_gap(c);
  EXPECT_NEAR(edge.coldest_face_C - c.outdoors.air_temperature_C,
              0.85 * (centre.centre_face_C - c.outdoors.air_temperature_C), 1e-9);
  EXPECT_LT(edge.margin_K, centre.margin_K);
}

TEST(DryRoomHumidities, EdgesAreWhereTheMarginVanishes) {
  auto c = worn_sash_case();
  c.network.to_room = {{joint_resistance(0.01, 2.0 / 3.0, 1.0), 0.6}};
  c.network.to_outdoors = {{joint_resistance(0.5, 2.0 / 3.0, 1.0), 0.6}};
  const auto dry = dry_room_humidities(c);
  ASSERT_EQ(dry.status, SolveStatus::converged);
  ASSERT_GE(dry.count, 1);
  const double edge = dry.intervals[0].high;
  ASSERT_GT(edge, 0.1);
  ASSERT_LT(edge, 0.9);
  c.room_vapour_Pa = vapour_pressure_Pa(c.room.air_temperature_C, edge - 0.002);
  EXPECT_GT(solve_gap(c).margin_K, 0.0);
  c.room_vapour_Pa = vapour_pressure_Pa(c.room.air_temperature_C, edge + 0.002);
  EXPECT_LT(solve_gap(c).margin_K, 0.0);
}

TEST(Gap, BadInputThrows) {
  const auto expect_thrown = [](auto spoil) {
    auto c = worn_sash_case();
    spoil(c);
    EXPECT_THROW(solve_gap(c), InvalidInput);
  };
  expect_thrown([](GapCase& c) { c.gap_index = 1; });
  expect_thrown([](GapCase& c) { c.stack.layer_count = 1; });
  expect_thrown([](GapCase& c) { c.room_vapour_Pa = test::not_a_number; });
  expect_thrown([](GapCase& c) { c.outdoor_vapour_Pa = -1.0; });
  expect_thrown([](GapCase& c) { c.gap_area_m2 = 0.0; });
  expect_thrown([](GapCase& c) { c.diffusion_to_room_kg_sPa = -1e-12; });
  expect_thrown([](GapCase& c) { c.timber_source_kg_s = -1.0; });
  expect_thrown([](GapCase& c) { c.edge_temperature_factor = 0.0; });
}

}  // namespace
}  // namespace dewgap::test
