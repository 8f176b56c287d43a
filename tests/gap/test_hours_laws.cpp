// Laws of the gap hour by hour that a person can argue without a computer.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "dewgap/air/humid_air.hpp"
#include "gap/gap_cases.hpp"
#include "gap/hour_cases.hpp"
#include "gap/random_cases.hpp"

namespace dewgap::test {
namespace {

/// Warm and dry enough that no face condenses, without outdoor or room openings.
GapCase dry_case() {
  auto c = worn_sash_case();
  c.outdoors.air_temperature_C = 8.0;
  c.outdoors.sky_temperature_C = 4.0;
  c.outdoors.ground_temperature_C = 8.0;
  c.outdoor_vapour_Pa = 600.0;
  c.room_vapour_Pa = 800.0;
  c.diffusion_to_room_kg_sPa = 0.0;
  c.network.to_room.clear();
  c.network.to_outdoors.clear();
  return c;
}

PlacedOpening hole_at(double height_m) {
  return {slot_resistance({.width_m = 0.006, .length_m = 0.020, .depth_m = 0.012}), height_m};
}

double vapour_in_the_end_Pa(const GapCase& c) {
  double vapour_Pa = 0.0;
  run_gap_hours(design_of(c), {.vapour_Pa = 700.0}, std::vector<HourConditions>(20000, hour_of(c)),
                [&](std::size_t, const HourState& s) { vapour_Pa = s.vapour_Pa; });
  return vapour_Pa;
}

TEST(GapHoursLaws, OneVentToTheRoomGivesTheRoomsVapour) {
  auto c = dry_case();
  c.network.to_room = {hole_at(0.0)};
  c.diffusion_to_room_kg_sPa = 1e-11;  // the still air of the vent: no through-flow
  EXPECT_NEAR(vapour_in_the_end_Pa(c), c.room_vapour_Pa, 1e-3);
}

TEST(GapHoursLaws, ThroughFlowOutwardsGivesTheRoomsVapour) {
  auto c = dry_case();
  c.network.to_room = {hole_at(0.6)};
  c.network.to_outdoors = {hole_at(0.6)};
  c.pressure = {.mean_Pa = 2.0};
  EXPECT_NEAR(vapour_in_the_end_Pa(c), c.room_vapour_Pa, 1e-6);
}

TEST(GapHoursLaws, ThroughFlowInwardsGivesTheOutdoorsVapour) {
  auto c = dry_case();
  c.network.to_room = {hole_at(0.6)};
  c.network.to_outdoors = {hole_at(0.6)};
  c.pressure = {.mean_Pa = -2.0};
  EXPECT_NEAR(vapour_in_the_end_Pa(c), c.outdoor_vapour_Pa, 1e-6);
}

TEST(GapHoursLaws, TwoBreaksAtOneHeightExchangeOnlyLitresAnHour) {
  // Outer side all but sealed, no pressure difference: what the gap breathes and the sheet pumps.
  auto c = dry_case();
  c.network.to_room = {hole_at(0.0), hole_at(0.0)};
  c.network.to_outdoors = {{joint_resistance(0.0005, 2.0 / 3.0, 1.0), 0.0}};
  c.pressure = {.mean_Pa = 0.0, .standard_deviation_Pa = 0.5};
  auto design = design_of(c);
  design.pumped_volume_m3_Pa = 1.4e-5;  // a 4 mm acrylic sheet of 1 m by 0.6 m
  double most_l_h = 0.0;
  auto steps = weather_about(c, 30, 1);
  for (auto& step : steps) {
    step.pressure = c.pressure;
  }
  run_gap_hours(design, {}, steps, [&](std::size_t, const HourState& s) {
    most_l_h = std::max(most_l_h, 3.6e6 * (s.from_room_m3_s + s.from_outdoors_m3_s));
  });
  EXPECT_LT(most_l_h, 10.0);
  EXPECT_GT(most_l_h, 0.1);
}

TEST(GapHoursLaws, BreathingNeedsAnOpenSideAndACoolingGap) {
  auto c = dry_case();
  const auto entered_l_h = [&] {
    std::vector<double> entered;
    run_gap_hours(design_of(c), {}, weather_about(c, 2, 1), [&](std::size_t, const HourState& s) {
      entered.push_back(3.6e6 * (s.from_room_m3_s + s.from_outdoors_m3_s));
    });
    return entered;
  };
  const auto is_entering = [](double q) { return q > 0.0; };
  const auto shut = entered_l_h();
  EXPECT_EQ(std::count_if(shut.begin(), shut.end(), is_entering), 0);
  c.network.to_room = {hole_at(0.0)};
  const auto open = entered_l_h();
  const auto cooling = std::count_if(open.begin(), open.end(), is_entering);
  EXPECT_GT(cooling, 10);
  EXPECT_LT(cooling, 40);
  EXPECT_LT(*std::max_element(open.begin(), open.end()), 1.0);
}

TEST(GapHoursLaws, AWeepDrainsWhatWouldPool) {
  auto c = worn_sash_case();
  c.network.to_outdoors = {{joint_resistance(0.05, 2.0 / 3.0, 1.0), 0.6}};
  c.network.to_room = {hole_at(0.0)};
  c.pressure.mean_Pa = 2.0;
  auto design = design_of(c);
  design.film = {.retention_kg_m2 = 0.03, .run_off_time_s = 3600.0, .sill_area_ratio = 0.03};
  const std::vector<HourConditions> steps(500, hour_of(c));
  double pool = 0.0;
  double drained = 0.0;
  const auto each = [&](std::size_t, const HourState& s) {
    pool = s.pool_kg_m2;
    drained += s.drained_kg_m2;
  };
  run_gap_hours(design, {}, steps, each);
  EXPECT_GT(pool, 0.05);
  EXPECT_EQ(drained, 0.0);
  design.film.weep = SillWeep::open;
  run_gap_hours(design, {}, steps, each);
  EXPECT_LE(pool, 1000.0 * design.film.sill_hold_m * design.film.sill_area_ratio + 1e-12);
  EXPECT_GT(drained, 0.05);
}

GapDesign with_timber(const GapCase& c) {
  auto design = design_of(c);
  design.timber = {.area_m2 = 0.15, .thickness_m = 0.004};
  return design;
}

TEST(GapHoursLaws, DampTimberDriesFasterWithAVent) {
  auto c = dry_case();
  c.network.to_outdoors = {{joint_resistance(0.002, 2.0 / 3.0, 1.0), 0.6}};
  c.diffusion_to_room_kg_sPa = 1e-12;
  const auto moisture_after_60_days = [&] {
    const auto store =
        run_gap_hours(with_timber(c), {.timber_kg_kg = 0.28}, std::vector<HourConditions>(1440, hour_of(c)),
                      [](std::size_t, const HourState&) {});
    return store.timber_kg_kg;
  };
  const double sealed = moisture_after_60_days();
  c.network.to_room = {hole_at(0.0), hole_at(1.2)};
  const double vented = moisture_after_60_days();
  EXPECT_LT(vented, sealed - 0.01);
}

TEST(GapHoursLaws, SealingOverDampTimberMistsThePane) {
  auto c = dry_case();
  c.outdoors.air_temperature_C = 2.0;
  c.outdoors.ground_temperature_C = 2.0;
  c.edge_temperature_factor = 0.9;
  c.diffusion_to_room_kg_sPa = 1e-12;
  double film_g_m2 = 0.0;
  run_gap_hours(
      with_timber(c), {.timber_kg_kg = 0.25}, weather_about(c, 10, 3),
      [&](std::size_t, const HourState& s) { film_g_m2 = std::max(film_g_m2, 1000.0 * s.pane_film_kg_m2); });
  EXPECT_GT(film_g_m2, 2.0);
}

TEST(GapHoursLaws, WetTimberOnACoolingNightLeavesNoPhantomFilm) {
  // Hourly steps against steps of a minute: timber must not take the pane of the hour before.
  auto c = dry_case();
  c.outdoors.air_temperature_C = 2.0;
  c.edge_temperature_factor = 0.9;
  const auto film_g_m2h = [&](int parts) {
    double sum = 0.0;
    run_gap_hours(with_timber(c), {.timber_kg_kg = 0.18}, weather_about(c, 10, 3, parts),
                  [&](std::size_t, const HourState& s) { sum += 1000.0 * s.pane_film_kg_m2 / parts; });
    return sum;
  };
  const double fine = film_g_m2h(60);
  EXPECT_NEAR(film_g_m2h(1), fine, 0.02 * fine + 1.0);
}

TEST(GapHoursLaws, IceDoesNotSoakIntoWood) {
  auto c = dry_case();
  c.outdoors = {.air_temperature_C = -12.0, .sky_temperature_C = -20.0, .ground_temperature_C = -12.0};
  c.outdoor_vapour_Pa = 180.0;
  auto design = with_timber(c);
  design.film.sill_area_ratio = 0.03;
  design.soak_time_s = 24.0 * 3600.0;
  GapStore start{.timber_kg_kg = 0.15};
  start.pane.sill_kg_m2 = 0.05;
  double sill_C = -99.0;
  double wettest = 0.0;
  run_gap_hours(design, start, std::vector<HourConditions>(48, hour_of(c)),
                [&](std::size_t, const HourState& s) {
                  sill_C = std::max(sill_C, s.sill_C);
                  wettest = std::max(wettest, s.timber_kg_kg);
                });
  ASSERT_LT(sill_C, 0.0);
  EXPECT_LT(wettest, 0.17);
}

TEST(GapHoursLaws, GustsThatTurnTheFlowAreNotCountedTwice) {
  // What the room loses by air is what its share of the gap's mixture returns colder: never more than the
  // flow can carry, whatever turns within the hour.
  auto c = worn_sash_case();
  c.network.to_room = {{joint_resistance(1.0, 2.0 / 3.0, 1.0), 0.0},
                       {joint_resistance(1.0, 2.0 / 3.0, 1.0), 1.2}};
  c.pressure = {.mean_Pa = 0.0, .standard_deviation_Pa = 2.0};
  HourState last;
  run_gap_hours(design_of(c), {}, std::vector<HourConditions>(50, hour_of(c)),
                [&](std::size_t, const HourState& s) { last = s; });
  const auto flows = solve_gap(c).flows;
  const double capacity = volumetric_heat_capacity_J_m3K(last.gap_C, last.vapour_Pa);
  const double by_balance_W = last.room_flux_W_m2 * c.gap_area_m2 +
                              capacity * flows.to_room_m3_s * (19.0 - last.gap_C) +
                              0.5 * capacity * flows.net_outwards_m3_s * 19.0;
  const double counted_W = last.heat_W + capacity * last.through_air_m3_s * 19.0;
  EXPECT_NEAR(counted_W, by_balance_W, 1e-3 * by_balance_W);
}

}  // namespace
}  // namespace dewgap::test
