#include "dewgap/moisture/film.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/air/constants.hpp"
#include "dewgap/air/saturation.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr PermittedRange masses_kg_m2{0.0, 1000.0};
constexpr PermittedRange temperatures_C{-60.0, 80.0};
constexpr PermittedRange transfers_kg_m2sPa{0.0, 2e-5};
constexpr double water_density_kg_m3 = 1000.0;
constexpr double freezing_C = 0.0;

void require_valid(const FilmState& state) {
  require_in_range(state.water_kg_m2, masses_kg_m2, "water_kg_m2", "kg/m2");
  require_in_range(state.frost_kg_m2, masses_kg_m2, "frost_kg_m2", "kg/m2");
  require_in_range(state.sill_kg_m2, masses_kg_m2, "sill_kg_m2", "kg/m2");
}

void require_valid(const FilmSurface& surface) {
  require_in_range(surface.retention_kg_m2, {0.001, 1.0}, "retention_kg_m2", "kg/m2");
  require_in_range(surface.run_off_time_s, {0.0, 1e6}, "run_off_time_s", "s");
  if (surface.run_off_time_s > 0.0 && surface.run_off_time_s < 1.0) {
    throw InvalidInput("run_off_time_s", "a run-off time is 0 s (at once) or at least 1 s");
  }
  require_in_range(surface.sill_area_ratio, {0.0, 1.0}, "sill_area_ratio", "");
  require_in_range(surface.sill_hold_m, {0.0, 0.02}, "sill_hold_m", "m");
  if (surface.weep != SillWeep::none && surface.weep != SillWeep::open) {
    throw InvalidInput("weep", "is neither none nor open");
  }
}

void require_valid(const FilmConditions& conditions) {
  require_in_range(conditions.duration_s, {1.0, 86400.0}, "duration_s", "s");
  require_in_range(conditions.air_vapour_Pa, {0.0, 20000.0}, "air_vapour_Pa", "Pa");
  require_in_range(conditions.face_temperature_C, temperatures_C, "face_temperature_C", "C");
  require_in_range(conditions.face_transfer_kg_m2sPa, transfers_kg_m2sPa, "face_transfer_kg_m2sPa",
                   "kg/(m2 s Pa)");
  require_in_range(conditions.sill_temperature_C, temperatures_C, "sill_temperature_C", "C");
  require_in_range(conditions.sill_transfer_kg_m2sPa, transfers_kg_m2sPa, "sill_transfer_kg_m2sPa",
                   "kg/(m2 s Pa)");
}

/// What a surface holds after vapour came or went.
struct Exchange {
  double held = 0.0;
  double gained = 0.0;
  double lost = 0.0;
  double run_off = 0.0;
};

Exchange exchange_without_run_off(double held, double offered) {
  // Evaporation and sublimation are limited by what is there.
  const double gained = std::max(0.0, offered);
  const double lost = std::min(held, std::max(0.0, -offered));
  return {.held = held + gained - lost, .gained = gained, .lost = lost};
}

/// x - (1 - exp(-x)), never negative.
double lag(double x) {
  return x < 1e-3 ? x * x * (0.5 - x * (1.0 / 6.0 - x / 24.0)) : x + std::expm1(-x);
}

/// Time of the step during which the film lies above the retention limit.
double time_above_s(double water, double rate, double duration_s, const FilmSurface& surface) {
  const double above = water - surface.retention_kg_m2;
  if (rate > 0.0) {
    return duration_s - std::min(duration_s, std::max(0.0, -above) / rate);
  }
  if (above <= 0.0) {
    return 0.0;
  }
  // y' = rate - y / tau from `above` to nothing; never, where nothing evaporates.
  const double emptied_per_period = std::abs(rate) * surface.run_off_time_s;
  return std::min(duration_s, surface.run_off_time_s * std::log1p(above / emptied_per_period));
}

/// Run-off in a step: our convention, what lies above the retention limit runs off at (excess / time).
double run_off_of(double water, double rate, double duration_s, const FilmSurface& surface) {
  const double above = std::max(0.0, water - surface.retention_kg_m2);
  if (surface.run_off_time_s <= 0.0) {
    const double left = water - above;
    return above + std::max(0.0, left + std::max(0.0, rate) * duration_s - surface.retention_kg_m2);
  }
  // Integral of y / tau with y' = rate - y / tau: y0 (1 - exp(-t/tau)) + rate tau (t/tau - 1 + exp(-t/tau)).
  const double periods = time_above_s(water, rate, duration_s, surface) / surface.run_off_time_s;
  return -above * std::expm1(-periods) + rate * surface.run_off_time_s * lag(periods);
}

Exchange exchange_of_water(double water, double rate, double duration_s, const FilmSurface& surface) {
  const double run_off = run_off_of(water, rate, duration_s, surface);
  const double offered = rate * duration_s;
  const double gained = std::max(0.0, offered);
  const double remaining = water + gained - run_off;
  const double lost = std::min(remaining, std::max(0.0, -offered));
  return {.held = remaining - lost, .gained = gained, .lost = lost, .run_off = run_off};
}

/// The film once its phase is that of the face.
FilmState settled(const FilmState& state, double face_temperature_C) {
  const double both = state.water_kg_m2 + state.frost_kg_m2;
  return face_temperature_C < freezing_C
             ? FilmState{.water_kg_m2 = 0.0, .frost_kg_m2 = both, .sill_kg_m2 = state.sill_kg_m2}
             : FilmState{.water_kg_m2 = both, .frost_kg_m2 = 0.0, .sill_kg_m2 = state.sill_kg_m2};
}

FilmStep step_of_face(const FilmState& before, const FilmSurface& surface, const FilmConditions& given) {
  const FilmState start = settled(before, given.face_temperature_C);
  // Vapour flux: transfer coefficient x difference to saturation, over ice below zero.
  const double rate =
      given.face_transfer_kg_m2sPa * (given.air_vapour_Pa - saturation_pressure_Pa(given.face_temperature_C));
  if (given.face_temperature_C < freezing_C) {
    const auto frost = exchange_without_run_off(start.frost_kg_m2, rate * given.duration_s);
    return {.state = {.frost_kg_m2 = frost.held, .sill_kg_m2 = start.sill_kg_m2},
            .deposited_kg_m2 = frost.gained,
            .sublimated_kg_m2 = frost.lost,
            .frozen_kg_m2 = before.water_kg_m2,
            .response_kg_m2sPa = rate >= 0.0 || frost.held > 0.0 ? given.face_transfer_kg_m2sPa : 0.0};
  }
  const auto water = exchange_of_water(start.water_kg_m2, rate, given.duration_s, surface);
  return {.state = {.water_kg_m2 = water.held, .sill_kg_m2 = start.sill_kg_m2},
          .condensed_kg_m2 = water.gained,
          .evaporated_kg_m2 = water.lost,
          .melted_kg_m2 = before.frost_kg_m2,
          .run_off_kg_m2 = water.run_off,
          .response_kg_m2sPa = rate >= 0.0 || water.held > 0.0 ? given.face_transfer_kg_m2sPa : 0.0};
}

}  // namespace

FilmStep step_film(const FilmState& before, const FilmSurface& surface, const FilmConditions& conditions) {
  require_valid(before);
  require_valid(surface);
  require_valid(conditions);
  FilmStep step = step_of_face(before, surface, conditions);
  // The sill: what ran down and vapour, then the weep.
  const double transfer = surface.sill_area_ratio * conditions.sill_transfer_kg_m2sPa;
  const double rate =
      transfer * (conditions.air_vapour_Pa - saturation_pressure_Pa(conditions.sill_temperature_C));
  const auto pool =
      exchange_without_run_off(before.sill_kg_m2 + step.run_off_kg_m2, rate * conditions.duration_s);
  const bool drains = surface.weep == SillWeep::open && conditions.sill_temperature_C >= freezing_C;
  const double standing_kg_m2 = water_density_kg_m3 * surface.sill_hold_m * surface.sill_area_ratio;
  step.sill_gained_kg_m2 = pool.gained;
  step.sill_lost_kg_m2 = pool.lost;
  step.drained_kg_m2 = drains ? std::max(0.0, pool.held - standing_kg_m2) : 0.0;
  step.state.sill_kg_m2 = pool.held - step.drained_kg_m2;
  step.response_kg_m2sPa += rate >= 0.0 || pool.held > 0.0 ? transfer : 0.0;
  return step;
}

double held_kg_m2(const FilmState& state) {
  require_valid(state);
  return state.water_kg_m2 + state.frost_kg_m2 + state.sill_kg_m2;
}

double vapour_in_kg_m2(const FilmStep& step) {
  return step.condensed_kg_m2 + step.deposited_kg_m2 + step.sill_gained_kg_m2;
}

double vapour_out_kg_m2(const FilmStep& step) {
  return step.evaporated_kg_m2 + step.sublimated_kg_m2 + step.sill_lost_kg_m2;
}

FilmBand band_of(const FilmState& state) {
  require_valid(state);
  return film_band(1000.0 * state.water_kg_m2);
}

double vapour_transfer_kg_m2sPa(double mass_transfer_m_s, double mean_temperature_C) {
  require_in_range(mass_transfer_m_s, {0.0, 1.0}, "mass_transfer_m_s", "m/s");
  require_in_range(mean_temperature_C, temperatures_C, "mean_temperature_C", "C");
  // Ideal gas: vapour density is e / (R_v T).
  return mass_transfer_m_s / (constants::gas_constant_water_J_kgK * constants::kelvin(mean_temperature_C));
}

}  // namespace dewgap
