// The stack under real conditions: hand-worked cases, limits, flags, and published centre values.
#include "dewgap/glazing/stack.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "dewgap/air/constants.hpp"
#include "dewgap/glazing/stack_ends_kernel.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

using constants::kelvin;
using test::check_reference;
using test::ReferenceRow;

OutdoorClimate plain_outdoors(double temperature_C, double convection_W_m2K) {
  return {temperature_C, temperature_C, temperature_C, 0.5, convection_W_m2K};
}

RoomClimate plain_room(double temperature_C, double film_W_m2K) {
  return {temperature_C, temperature_C, film_W_m2K, 1.0};
}

Stack pane_and_sheet() {
  Stack stack;
  stack.layer_count = 2;
  stack.layers[1].conductivity_W_mK = 0.19;
  stack.gaps[0].width_m = 0.040;
  return stack;
}

TEST(Stack, AshraeCentreOfGlassWithinTwoPercent) {
  check_reference("ashrae_fundamentals/centre_of_glass.csv", [](const ReferenceRow& row) {
    Stack stack;
    stack.layer_count = static_cast<std::size_t>(row.number("panes"));
    for (std::size_t i = 0; i < stack.layer_count; ++i) {
      stack.layers[i].thickness_m = row.number("pane_mm") / 1000.0;
      stack.layers[i].conductivity_W_mK = row.number("conductivity_W_mK");
      stack.layers[i].emissivity_outer = row.number("emissivity");
      stack.layers[i].emissivity_inner = row.number("emissivity");
    }
    stack.gaps[0].width_m = row.optional_number("gap_mm").value_or(20.0) / 1000.0;
    stack.gaps[0].gas.argon = row.number("argon_fraction");
    stack.gaps[0].gas.air = 1.0 - row.number("argon_fraction");
    const auto solution = solve_stack(stack, plain_outdoors(-18.0, 26.0), plain_room(21.0, 0.0));
    EXPECT_EQ(solution.status, SolveStatus::converged);
    return solution.u_value_W_m2K;
  });
}

// A single pane by hand: both surroundings at one temperature each, fixed films, and sigma (T^4 - T^4) at
// both faces.
TEST(Stack, SinglePaneObeysItsTwoBalances) {
  Stack stack;
  stack.layers[0].emissivity_outer = 0.8;
  stack.layers[0].emissivity_inner = 0.3;
  const auto solution = solve_stack(stack, plain_outdoors(-5.0, 18.0), plain_room(20.0, 3.2));
  ASSERT_EQ(solution.status, SolveStatus::converged);
  const double outer = solution.face_temperature_C[0];
  const double inner = solution.face_temperature_C[1];
  const auto fourth = [](double t) { return 5.670374419e-8 * std::pow(t + 273.15, 4); };
  const double from_room = 3.2 * (20.0 - inner) + 0.3 * (fourth(20.0) - fourth(inner));
  const double through = (inner - outer) * 1.0 / 0.004;
  const double to_outdoors = 18.0 * (outer + 5.0) + 0.8 * (fourth(outer) - fourth(-5.0));
  EXPECT_NEAR(from_room, through, 1e-7);
  EXPECT_NEAR(to_outdoors, through, 1e-7);
  EXPECT_NEAR(solution.room_flux_W_m2, from_room, 1e-9);
  EXPECT_NEAR(solution.u_value_W_m2K, from_room / 25.0, 1e-10);
}

TEST(Stack, OneTemperatureEverywhereMovesNoHeat) {
  auto stack = pane_and_sheet();
  stack.layers[1].long_wave_transmittance = 0.1;
  const auto solution = solve_stack(stack, plain_outdoors(12.0, 18.0), plain_room(12.0, 0.0));
  ASSERT_EQ(solution.status, SolveStatus::converged);
  for (std::size_t f = 0; f < 4; ++f) {
    EXPECT_NEAR(solution.face_temperature_C[f], 12.0, 1e-7);
  }
  EXPECT_NEAR(solution.room_flux_W_m2, 0.0, 1e-7);
  EXPECT_EQ(solution.u_value_W_m2K, 0.0);
}

TEST(Stack, NoStreamIsTheClosedGapWhateverItsInlet) {
  auto stack = pane_and_sheet();
  const auto outdoors = plain_outdoors(0.0, 20.0);
  const auto room = plain_room(20.0, 0.0);
  const auto closed = solve_stack(stack, outdoors, room);
  stack.gaps[0].air_stream.inlet_temperature_C = 55.0;
  const auto idle = solve_stack(stack, outdoors, room);
  EXPECT_EQ(idle.room_flux_W_m2, closed.room_flux_W_m2);
  EXPECT_EQ(idle.gap_air_temperature_C[0], closed.gap_air_temperature_C[0]);
  EXPECT_NEAR(closed.gap_air_temperature_C[0],
              0.5 * (closed.face_temperature_C[1] + closed.face_temperature_C[2]), 1e-12);
  EXPECT_NEAR(closed.gap_convection_flux_W_m2[0],
              closed.gap_convection_W_m2K[0] * (closed.face_temperature_C[2] - closed.face_temperature_C[1]),
              1e-10);
  EXPECT_EQ(closed.air_stream_heat_W_m2, 0.0);
  stack.gaps[0].air_stream = {1e-9, 55.0};
  EXPECT_NEAR(solve_stack(stack, outdoors, room).room_flux_W_m2, closed.room_flux_W_m2, 1e-6);
}

TEST(Stack, AStreamOfRoomAirWarmsTheOldPaneAndOneOfOutdoorAirCoolsIt) {
  auto stack = pane_and_sheet();
  const auto outdoors = plain_outdoors(0.0, 20.0);
  const auto room = plain_room(20.0, 0.0);
  const auto closed = solve_stack(stack, outdoors, room);
  stack.gaps[0].air_stream = {3.0, 20.0};
  const auto warm = solve_stack(stack, outdoors, room);
  stack.gaps[0].air_stream.inlet_temperature_C = 0.0;
  const auto cold = solve_stack(stack, outdoors, room);
  EXPECT_GT(warm.face_temperature_C[1], closed.face_temperature_C[1]);
  EXPECT_LT(cold.face_temperature_C[1], closed.face_temperature_C[1]);
  EXPECT_LT(warm.air_stream_heat_W_m2, 0.0);
  EXPECT_GT(cold.air_stream_heat_W_m2, 0.0);
  // Air node: 2 h (T1 - Tg) + 2 h (T2 - Tg) + C (Tin - Tg) = 0.
  const double h = warm.gap_convection_W_m2K[0];
  const double tg = warm.gap_air_temperature_C[0];
  EXPECT_NEAR(
      2.0 * h * (warm.face_temperature_C[1] + warm.face_temperature_C[2] - 2.0 * tg) + 3.0 * (20.0 - tg), 0.0,
      1e-9);
}

double flux_with_gap_W_m2(double width_m, const OutdoorClimate& outdoors, const RoomClimate& room) {
  const auto stack = pane_and_sheet();
  auto equations = glazing_kernel::real_equations<2>(stack, outdoors, room);
  equations.parts.gaps[0].width_m = width_m;
  const auto start = glazing_kernel::real_start<2>(equations, outdoors, room);
  const auto found = glazing_kernel::settle<2>(equations, start, {});
  EXPECT_EQ(found.status, SolveStatus::converged);
  return found.solution[1];
}

// As the gap closes its two layers become one of both resistances: the difference goes with the width.
TEST(Stack, AGapOfNoWidthBondsItsLayers) {
  const auto outdoors = plain_outdoors(0.0, 20.0);
  const auto room = plain_room(20.0, 4.0);
  Stack bonded;
  bonded.layers[0].thickness_m = 0.008;
  bonded.layers[0].conductivity_W_mK = 0.008 / (0.004 / 1.0 + 0.004 / 0.19);
  const double expected = solve_stack(bonded, outdoors, room).room_flux_W_m2;
  const double at_1_um = expected - flux_with_gap_W_m2(1e-6, outdoors, room);
  const double at_100_nm = expected - flux_with_gap_W_m2(1e-7, outdoors, room);
  EXPECT_GT(at_100_nm, 0.0);
  EXPECT_LT(at_100_nm, 1e-4 * expected);
  EXPECT_NEAR(at_1_um / at_100_nm, 10.0, 0.01);
}

TEST(Stack, NarrowGapsOnlyConductAndRadiate) {
  auto stack = pane_and_sheet();
  stack.gaps[0].width_m = 0.002;
  const auto solution = solve_stack(stack, plain_outdoors(0.0, 20.0), plain_room(20.0, 4.0));
  const double mean = 0.5 * (solution.face_temperature_C[1] + solution.face_temperature_C[2]);
  const double still = gas_properties_iso_15099({}, mean).conductivity_W_mK / 0.002;
  EXPECT_NEAR(solution.gap_convection_W_m2K[0], still, 1e-6 * still);
}

TEST(Stack, SunAndFaceHeatAreShared) {
  auto stack = pane_and_sheet();
  const auto outdoors = plain_outdoors(0.0, 20.0);
  const auto room = plain_room(20.0, 0.0);
  stack.layers[0].absorbed_sun_W_m2 = 80.0;
  const auto sunny = solve_stack(stack, outdoors, room);
  stack.layers[0].absorbed_sun_W_m2 = 0.0;
  stack.layers[0].outer_face_heat_W_m2 = 40.0;
  stack.layers[0].inner_face_heat_W_m2 = 40.0;
  const auto heated = solve_stack(stack, outdoors, room);
  for (std::size_t f = 0; f < 4; ++f) {
    EXPECT_EQ(sunny.face_temperature_C[f], heated.face_temperature_C[f]);
  }
  EXPECT_NEAR(sunny.outdoor_flux_W_m2 - sunny.room_flux_W_m2, 80.0, 1e-6);
}

TEST(Stack, SkyColderThanAirCoolsTheOldPane) {
  auto outdoors = plain_outdoors(0.0, 12.0);
  const auto overcast = solve_stack(pane_and_sheet(), outdoors, plain_room(20.0, 0.0));
  outdoors.sky_temperature_C = -25.0;
  const auto clear = solve_stack(pane_and_sheet(), outdoors, plain_room(20.0, 0.0));
  EXPECT_LT(clear.face_temperature_C[0], overcast.face_temperature_C[0]);
  outdoors.sky_view_factor = 0.0;
  EXPECT_EQ(solve_stack(pane_and_sheet(), outdoors, plain_room(20.0, 0.0)).face_temperature_C[0],
            overcast.face_temperature_C[0]);
}

TEST(Stack, AWarmFloorUnderASkylightStirsMoreThanAWarmSky) {
  auto stack = pane_and_sheet();
  stack.tilt_deg = 0.0;
  const auto losing = solve_stack(stack, plain_outdoors(0.0, 20.0), plain_room(20.0, 3.0));
  const auto gaining = solve_stack(stack, plain_outdoors(40.0, 20.0), plain_room(20.0, 3.0));
  const double still_losing =
      gas_properties_iso_15099({}, losing.gap_air_temperature_C[0]).conductivity_W_mK / 0.040;
  const double still_gaining =
      gas_properties_iso_15099({}, gaining.gap_air_temperature_C[0]).conductivity_W_mK / 0.040;
  EXPECT_GT(losing.gap_convection_W_m2K[0], 2.0 * still_losing);
  EXPECT_NEAR(gaining.gap_convection_W_m2K[0], still_gaining, 1e-9);  // heat flowing down: Nu is 1
}

TEST(Stack, FlagsWhatIsOutsideItsRange) {
  const auto outdoors = plain_outdoors(0.0, 20.0);
  const auto room = plain_room(20.0, 0.0);
  EXPECT_TRUE(solve_stack(pane_and_sheet(), outdoors, room).flags.empty());
  auto stack = pane_and_sheet();
  stack.gaps[0].width_m = 0.060;
  EXPECT_TRUE(solve_stack(stack, outdoors, room).flags.has(ValidityFlag::gap_wide_correlations_differ));
  stack.gaps[0].width_m = 0.250;
  EXPECT_TRUE(solve_stack(stack, outdoors, room).flags.has(ValidityFlag::gap_aspect_ratio));
  EXPECT_TRUE(solve_stack(stack, outdoors, room).flags.has(ValidityFlag::gap_rayleigh_number));
  stack = pane_and_sheet();
  stack.tilt_deg = 45.0;
  EXPECT_TRUE(solve_stack(stack, outdoors, room).flags.has(ValidityFlag::tilt_untested));
  stack = pane_and_sheet();
  stack.layers[1].emissivity_outer = stack.layers[1].emissivity_inner = 0.6;
  stack.layers[1].long_wave_transmittance = 0.3;
  EXPECT_TRUE(solve_stack(stack, outdoors, room).flags.has(ValidityFlag::film_transmits_long_wave));
}

TEST(Stack, SaysWhenItDidNotConverge) {
  const auto solution =
      solve_stack(pane_and_sheet(), plain_outdoors(-30.0, 20.0), plain_room(20.0, 0.0), {1, 1e-12});
  EXPECT_EQ(solution.status, SolveStatus::iteration_limit);
  EXPECT_GT(solution.residual_W_m2, 0.0);
  EXPECT_EQ(solution.u_value_W_m2K, 0.0);
}

TEST(Stack, ATighterToleranceLeavesASmallerResidual) {
  const auto solution =
      solve_stack(pane_and_sheet(), plain_outdoors(-30.0, 20.0), plain_room(20.0, 0.0), {60, 1e-12});
  EXPECT_EQ(solution.status, SolveStatus::converged);
  EXPECT_LE(solution.residual_W_m2, 1e-9);
}

}  // namespace
}  // namespace dewgap
