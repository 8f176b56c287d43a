#include "dewgap/moisture/film.hpp"

#include "dewgap/air/constants.hpp"
#include "dewgap/air/saturation.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/moisture/film_kernel.hpp"

namespace dewgap {
namespace {

constexpr PermittedRange masses_kg_m2{0.0, 1000.0};
constexpr PermittedRange temperatures_C{-60.0, 80.0};
constexpr PermittedRange transfers_kg_m2sPa{0.0, 2e-5};

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

}  // namespace

FilmStep step_film(const FilmState& before, const FilmSurface& surface, const FilmConditions& conditions) {
  require_valid(before);
  require_valid(surface);
  require_valid(conditions);
  // Vapour flux: transfer coefficient x difference to saturation, over ice below zero.
  const moisture_kernel::FilmTransfer transfer{
      .face_kg_m2sPa = conditions.face_transfer_kg_m2sPa,
      .sill_kg_m2sPa = surface.sill_area_ratio * conditions.sill_transfer_kg_m2sPa};
  const double air_Pa = conditions.air_vapour_Pa;
  const moisture_kernel::FilmRates rates{
      .duration_s = conditions.duration_s,
      .face_rate_kg_m2s =
          transfer.face_kg_m2sPa * (air_Pa - saturation_pressure_Pa(conditions.face_temperature_C)),
      .face_temperature_C = conditions.face_temperature_C,
      .sill_rate_kg_m2s =
          transfer.sill_kg_m2sPa * (air_Pa - saturation_pressure_Pa(conditions.sill_temperature_C)),
      .sill_temperature_C = conditions.sill_temperature_C};
  FilmStep step = moisture_kernel::step_film_at_rates(before, surface, rates);
  step.response_kg_m2sPa = moisture_kernel::film_response_kg_m2sPa(step, rates, transfer);
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
