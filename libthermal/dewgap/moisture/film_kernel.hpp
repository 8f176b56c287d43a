// The step of a film once vapour rates are known: no check of input, no saturation, for loops over hours.
#pragma once

#include <algorithm>
#include <cmath>

#include "dewgap/moisture/film.hpp"

namespace dewgap::moisture_kernel {

inline constexpr double water_density_kg_m3 = 1000.0;
inline constexpr double freezing_C = 0.0;

/// Steady over the step. Rates are of vapour towards the surface, per m2 of face, as if it were wet: positive
/// condenses, negative dries what there is.
struct FilmRates {
  double duration_s;
  double face_rate_kg_m2s;
  double face_temperature_C;
  double sill_rate_kg_m2s;
  double sill_temperature_C;
};

/// What a surface holds after vapour came or went.
struct Exchange {
  double held = 0.0;
  double gained = 0.0;
  double lost = 0.0;
  double run_off = 0.0;
};

inline Exchange exchange_without_run_off(double held, double offered) {
  // Evaporation and sublimation are limited by what is there.
  const double gained = std::max(0.0, offered);
  const double lost = std::min(held, std::max(0.0, -offered));
  return {.held = held + gained - lost, .gained = gained, .lost = lost};
}

/// x - (1 - exp(-x)), never negative.
inline double lag(double x) {
  return x < 1e-3 ? x * x * (0.5 - x * (1.0 / 6.0 - x / 24.0)) : x + std::expm1(-x);
}

/// Time of the step during which the film lies above the retention limit.
inline double time_above_s(double water, double rate, double duration_s, const FilmSurface& surface) {
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
inline double run_off_of(double water, double rate, double duration_s, const FilmSurface& surface) {
  const double above = std::max(0.0, water - surface.retention_kg_m2);
  if (surface.run_off_time_s <= 0.0) {
    const double left = water - above;
    return above + std::max(0.0, left + std::max(0.0, rate) * duration_s - surface.retention_kg_m2);
  }
  // Integral of y / tau with y' = rate - y / tau: y0 (1 - exp(-t/tau)) + rate tau (t/tau - 1 + exp(-t/tau)).
  const double periods = time_above_s(water, rate, duration_s, surface) / surface.run_off_time_s;
  if (periods <= 0.0) {
    return 0.0;
  }
  return -above * std::expm1(-periods) + rate * surface.run_off_time_s * lag(periods);
}

inline Exchange exchange_of_water(double water, double rate, double duration_s, const FilmSurface& surface) {
  const double run_off = run_off_of(water, rate, duration_s, surface);
  const double offered = rate * duration_s;
  const double gained = std::max(0.0, offered);
  const double remaining = water + gained - run_off;
  const double lost = std::min(remaining, std::max(0.0, -offered));
  return {.held = remaining - lost, .gained = gained, .lost = lost, .run_off = run_off};
}

/// The film once its phase is that of the face.
inline FilmState settled(const FilmState& state, double face_temperature_C) {
  const double both = state.water_kg_m2 + state.frost_kg_m2;
  return face_temperature_C < freezing_C
             ? FilmState{.water_kg_m2 = 0.0, .frost_kg_m2 = both, .sill_kg_m2 = state.sill_kg_m2}
             : FilmState{.water_kg_m2 = both, .frost_kg_m2 = 0.0, .sill_kg_m2 = state.sill_kg_m2};
}

inline FilmStep step_of_face(const FilmState& before, const FilmSurface& surface, const FilmRates& given) {
  const FilmState start = settled(before, given.face_temperature_C);
  const double rate = given.face_rate_kg_m2s;
  if (given.face_temperature_C < freezing_C) {
    const auto frost = exchange_without_run_off(start.frost_kg_m2, rate * given.duration_s);
    return {.state = {.frost_kg_m2 = frost.held, .sill_kg_m2 = start.sill_kg_m2},
            .deposited_kg_m2 = frost.gained,
            .sublimated_kg_m2 = frost.lost,
            .frozen_kg_m2 = before.water_kg_m2};
  }
  const auto water = exchange_of_water(start.water_kg_m2, rate, given.duration_s, surface);
  return {.state = {.water_kg_m2 = water.held, .sill_kg_m2 = start.sill_kg_m2},
          .condensed_kg_m2 = water.gained,
          .evaporated_kg_m2 = water.lost,
          .melted_kg_m2 = before.frost_kg_m2,
          .run_off_kg_m2 = water.run_off};
}

/// One step as step_film's, to the last bit, but for response_kg_m2sPa, which stays 0 (film_response below).
/// Input is not checked: masses and duration as film.hpp permits, rates finite.
inline FilmStep step_film_at_rates(const FilmState& before, const FilmSurface& surface,
                                   const FilmRates& rates) {
  FilmStep step = step_of_face(before, surface, rates);
  // The sill: what ran down and vapour, then the weep.
  const auto pool = exchange_without_run_off(before.sill_kg_m2 + step.run_off_kg_m2,
                                             rates.sill_rate_kg_m2s * rates.duration_s);
  const bool drains = surface.weep == SillWeep::open && rates.sill_temperature_C >= freezing_C;
  const double standing_kg_m2 = water_density_kg_m3 * surface.sill_hold_m * surface.sill_area_ratio;
  step.sill_gained_kg_m2 = pool.gained;
  step.sill_lost_kg_m2 = pool.lost;
  step.drained_kg_m2 = drains ? std::max(0.0, pool.held - standing_kg_m2) : 0.0;
  step.state.sill_kg_m2 = pool.held - step.drained_kg_m2;
  return step;
}

/// Transfer coefficients on vapour pressure, kg/(m2 s Pa), both per m2 of face.
struct FilmTransfer {
  double face_kg_m2sPa;
  double sill_kg_m2sPa;
};

/// FilmStep::response_kg_m2sPa of a step at these rates: the coefficient of each surface, or 0 for one that
/// dried out.
inline double film_response_kg_m2sPa(const FilmStep& step, const FilmRates& rates,
                                     const FilmTransfer& transfer) {
  const bool face_wet = step.state.water_kg_m2 > 0.0 || step.state.frost_kg_m2 > 0.0;
  const bool sill_wet = step.state.sill_kg_m2 > 0.0 || step.drained_kg_m2 > 0.0;
  return (rates.face_rate_kg_m2s >= 0.0 || face_wet ? transfer.face_kg_m2sPa : 0.0) +
         (rates.sill_rate_kg_m2s >= 0.0 || sill_wet ? transfer.sill_kg_m2sPa : 0.0);
}

}  // namespace dewgap::moisture_kernel
