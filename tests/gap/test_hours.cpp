#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "dewgap/air/saturation.hpp"
#include "dewgap/errors.hpp"
#include "gap/gap_cases.hpp"
#include "gap/hour_cases.hpp"
#include "gap/random_cases.hpp"

namespace dewgap::test {
namespace {

/// The state that steady weather leads to in so many hours.
HourState after_hours(const GapDesign& design, const HourConditions& given, std::size_t hours) {
  HourState last;
  run_gap_hours(design, {}, std::vector<HourConditions>(hours, given),
                [&](std::size_t, const HourState& state) { last = state; }, {.closure_W_m2 = 1e-9});
  return last;
}

/// Hours in which what passes by air and diffusion would change the gap's air once.
double air_change_h(const GapCase& c, const GapState& steady) {
  const double volume_m3 = c.gap_area_m2 * c.stack.gaps[0].width_m;
  const double diffused_m3_s = 461.5 * 283.0 * c.diffusion_to_room_kg_sPa;
  return volume_m3 / (steady.flows.from_room_m3_s + steady.flows.from_outdoors_m3_s + diffused_m3_s) / 3600.0;
}

/// solve_gap lets the colder face alone condense: where the warmer would too, it is another model.
bool warmer_face_would_condense(const GapState& steady) {
  const double warmer_C = std::max(steady.heat.face_temperature_C[1], steady.heat.face_temperature_C[2]);
  return steady.vapour.vapour_Pa > saturation_pressure_Pa(warmer_C);
}

TEST(GapHours, SteadyWeatherReproducesTheSteadyState) {
  int wet = 0;
  int compared = 0;
  for (const auto& c : random_gap_cases(300, 11)) {
    const auto steady = solve_gap(c);
    ASSERT_EQ(steady.status, SolveStatus::converged);
    const double change_h = air_change_h(c, steady);
    if (warmer_face_would_condense(steady) || change_h > 500.0) {
      continue;  // (a very tight gap takes months)
    }
    const auto hour = after_hours(design_of(c), hour_of(c), 3000 + static_cast<std::size_t>(25.0 * change_h));
    ASSERT_EQ(hour.status, SolveStatus::converged);
    for (std::size_t f = 0; f < 4; ++f) {
      ASSERT_NEAR(hour.face_C[f], steady.heat.face_temperature_C[f], 1e-6) << compared << " face " << f;
    }
    ASSERT_NEAR(hour.vapour_Pa, steady.vapour.vapour_Pa, 1e-6 * steady.vapour.vapour_Pa) << compared;
    ASSERT_NEAR(hour.room_flux_W_m2, steady.heat.room_flux_W_m2, 1e-4) << compared;
    ASSERT_NEAR(hour.outdoor_flux_W_m2, steady.heat.outdoor_flux_W_m2, 1e-4) << compared;
    ++compared;
    wet += steady.condensation_g_m2h > 0.0 ? 1 : 0;
  }
  EXPECT_GT(compared, 200);
  EXPECT_GT(wet, 30);
}

TEST(GapHours, FilmGrowsAtTheSteadyRate) {
  auto c = worn_sash_case();
  c.network.to_outdoors = {{joint_resistance(0.05, 2.0 / 3.0, 1.0), 0.6}};
  c.pressure.mean_Pa = 2.0;
  const auto steady = solve_gap(c);
  ASSERT_GT(steady.condensation_g_m2h, 0.1);
  auto design = design_of(c);
  design.film.retention_kg_m2 = 1.0;
  std::vector<double> film_kg_m2;
  run_gap_hours(design, {}, std::vector<HourConditions>(200, hour_of(c)),
                [&](std::size_t, const HourState& s) { film_kg_m2.push_back(s.pane_film_kg_m2); });
  const double grown_g_m2h = 1000.0 * (film_kg_m2[199] - film_kg_m2[198]);
  EXPECT_NEAR(grown_g_m2h, steady.condensation_g_m2h, 1e-5 * steady.condensation_g_m2h);
}

/// Water of a run through 60 days of changing weather.
struct YearOfWater {
  double in_kg = 0.0;
  double out_kg = 0.0;
  double drained_kg = 0.0;
  double first_kg = 0.0;
  double last_kg = 0.0;
  double worst_step_kg = 0.0;
};

YearOfWater water_of(const GapDesign& design, const std::vector<HourConditions>& steps) {
  YearOfWater water;
  run_gap_hours(design, {}, steps, [&](std::size_t i, const HourState& s) {
    const auto& l = s.ledger;
    const double in = l.with_air_in_kg + l.diffused_in_kg;
    const double out = l.with_air_out_kg + l.diffused_out_kg;
    water.in_kg += in;
    water.out_kg += out;
    water.drained_kg += l.drained_kg;
    water.first_kg = i == 0 ? l.held_before_kg : water.first_kg;
    water.last_kg = l.held_after_kg;
    water.worst_step_kg = std::max(water.worst_step_kg,
                                   std::abs(l.held_after_kg - l.held_before_kg - (in - out - l.drained_kg)));
  });
  return water;
}

TEST(GapHours, WaterIsAccountedFor) {
  double drained_kg = 0.0;
  for (std::uint64_t seed = 1; const auto& c : random_gap_cases(60, 23)) {
    const auto design = furnished(c, seed);
    const auto water = water_of(design, weather_about(c, 60, seed));
    const double throughput = std::max(water.in_kg, water.first_kg);
    ASSERT_NEAR(water.last_kg - water.first_kg, water.in_kg - water.out_kg - water.drained_kg,
                1e-9 * throughput)
        << seed;
    ASSERT_LE(water.worst_step_kg, 1e-9 * throughput) << seed;
    drained_kg += water.drained_kg;
    ++seed;
  }
  EXPECT_GT(drained_kg, 0.0);  // some weeps did drain
}

/// Heat stored in panes and films, J/m2: panes above 0 C, films as what was set free when they formed.
double pane_heat_J_m2(const GapDesign& design, const HourState& s) {
  double heat = 0.0;
  for (std::size_t f = 0; f < 4; ++f) {
    heat += 0.5 * design.pane_heat_capacity_J_m2K[f / 2] * s.face_C[f];
  }
  return heat;
}

TEST(GapHours, BoundaryFluxesAgreeWithTheChangeOfStore) {
  for (std::uint64_t seed = 1; const auto& c : random_gap_cases(60, 29)) {
    auto design = furnished(c, seed);
    design.drawn_stack.reset();  // a curtain's own gap carries room air that is not told apart
    const auto steps = weather_about(c, 30, seed);
    double stored_J_m2 = 0.0;
    double through_J_m2 = 0.0;
    double gross_J_m2 = 0.0;
    HourState before;
    run_gap_hours(design, {}, steps,
                  [&](std::size_t i, const HourState& s) {
                    if (i > 0) {  // the first step has panes without a past
                      const auto& given = steps[i];
                      const double gained_W_m2 = s.room_flux_W_m2 + given.absorbed_sun_W_m2[0] +
                                                 given.absorbed_sun_W_m2[1] + s.latent_heat_W_m2 -
                                                 s.outdoor_flux_W_m2 - s.air_heat_W_m2;
                      through_J_m2 += given.duration_s * gained_W_m2;
                      gross_J_m2 += given.duration_s * std::abs(s.room_flux_W_m2);
                      stored_J_m2 += pane_heat_J_m2(design, s) - pane_heat_J_m2(design, before);
                    }
                    before = s;
                  },
                  {.closure_W_m2 = 1e-9});
    ASSERT_NEAR(stored_J_m2, through_J_m2, 1e-9 * gross_J_m2) << seed;
    ++seed;
  }
}

TEST(GapHours, TenThousandWindowsNeverFail) {
  int wet = 0;
  int frosty = 0;
  for (std::uint64_t seed = 1; const auto& c : random_gap_cases(10000, 31)) {
    const auto steps = weather_about(c, 2, seed);
    run_gap_hours(furnished(c, seed), {}, steps, [&](std::size_t i, const HourState& s) {
      ASSERT_EQ(s.status, SolveStatus::converged) << seed << " hour " << i;
      ASSERT_GE(s.pane_film_kg_m2, 0.0);
      ASSERT_GE(s.sheet_film_kg_m2, 0.0);
      ASSERT_GE(s.pool_kg_m2, 0.0);
      ASSERT_GE(s.drained_kg_m2, 0.0);
      ASSERT_GE(s.timber_kg_kg, 0.0);
      ASSERT_GT(s.vapour_Pa, 0.0);
      const auto [low, high] = std::minmax({steps[i].outdoors.sky_temperature_C, steps[i].room_C});
      ASSERT_GT(s.face_C[1], low - 5.0);
      ASSERT_LT(s.face_C[1], std::max(high, 35.0) + 40.0);
      wet += s.pane_film_kg_m2 > 0.001 ? 1 : 0;
      frosty += s.frost_kg_m2 > 0.0 ? 1 : 0;
    });
    if (HasFatalFailure()) {
      return;
    }
    ++seed;
  }
  EXPECT_GT(wet, 10000);
  EXPECT_GT(frosty, 1000);
}

}  // namespace
}  // namespace dewgap::test
