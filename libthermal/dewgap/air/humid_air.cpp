#include "dewgap/air/humid_air.hpp"

#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

using constants::gas_constant_dry_air_J_kgK;
using constants::gas_constant_water_J_kgK;
using constants::kelvin;

constexpr PermittedRange temperature_range_C{-80.0, 100.0};
constexpr PermittedRange pressure_range_Pa{30.0e3, 120.0e3};
// Vapour may be at most nine tenths of the air: the ratio to dry air has no meaning near pure steam.
constexpr double highest_vapour_share = 0.9;

void require_temperature(double temperature_C) {
  require_in_range(temperature_C, temperature_range_C, "air temperature", "C");
}

void require_pressures(double vapour_pressure_Pa, double pressure_Pa) {
  require_in_range(pressure_Pa, pressure_range_Pa, "air pressure", "Pa");
  require_in_range(vapour_pressure_Pa, {0.0, highest_vapour_share * pressure_Pa}, "vapour pressure", "Pa");
}

double dry_air_density_kg_m3(double temperature_C, double vapour_pressure_Pa, double pressure_Pa) {
  return (pressure_Pa - vapour_pressure_Pa) / (gas_constant_dry_air_J_kgK * kelvin(temperature_C));
}

}  // namespace

double vapour_pressure_Pa(double temperature_C, double relative_humidity, SaturationFormula formula,
                          Phase phase) {
  require_in_range(relative_humidity, {0.0, 1.0}, "relative humidity", "(a fraction, not per cent)");
  return relative_humidity * saturation_pressure_Pa(temperature_C, formula, phase);
}

double relative_humidity(double temperature_C, double vapour_pressure_Pa, SaturationFormula formula,
                         Phase phase) {
  require_in_range(vapour_pressure_Pa, {0.0, pressure_range_Pa.max}, "vapour pressure", "Pa");
  return vapour_pressure_Pa / saturation_pressure_Pa(temperature_C, formula, phase);
}

double vapour_density_kg_m3(double temperature_C, double vapour_pressure_Pa) {
  require_temperature(temperature_C);
  require_in_range(vapour_pressure_Pa, {0.0, pressure_range_Pa.max}, "vapour pressure", "Pa");
  // Ideal gas.
  return vapour_pressure_Pa / (gas_constant_water_J_kgK * kelvin(temperature_C));
}

double vapour_pressure_from_density_Pa(double temperature_C, double vapour_density_kg_m3) {
  require_temperature(temperature_C);
  const double vapour_pressure_per_density = gas_constant_water_J_kgK * kelvin(temperature_C);
  require_in_range(vapour_density_kg_m3, {0.0, pressure_range_Pa.max / vapour_pressure_per_density},
                   "vapour density", "kg/m3");
  return vapour_density_kg_m3 * vapour_pressure_per_density;
}

double humid_air_density_kg_m3(double temperature_C, double vapour_pressure_Pa, double pressure_Pa) {
  require_temperature(temperature_C);
  require_pressures(vapour_pressure_Pa, pressure_Pa);
  // Dalton: the densities of dry air and vapour add, each at its own partial pressure.
  return dry_air_density_kg_m3(temperature_C, vapour_pressure_Pa, pressure_Pa) +
         vapour_density_kg_m3(temperature_C, vapour_pressure_Pa);
}

double humidity_ratio(double vapour_pressure_Pa, double pressure_Pa) {
  require_pressures(vapour_pressure_Pa, pressure_Pa);
  return gas_constant_dry_air_J_kgK / gas_constant_water_J_kgK * vapour_pressure_Pa /
         (pressure_Pa - vapour_pressure_Pa);
}

double humid_air_enthalpy_J_kg(double temperature_C, double vapour_pressure_Pa, double pressure_Pa) {
  require_temperature(temperature_C);
  const double ratio = humidity_ratio(vapour_pressure_Pa, pressure_Pa);
  // ASHRAE Fundamentals, psychrometrics: h = 1006 t + w (2501e3 + 1860 t), from memory.
  return constants::specific_heat_dry_air_J_kgK * temperature_C +
         ratio *
             (constants::evaporation_heat_0C_J_kg + constants::specific_heat_vapour_J_kgK * temperature_C);
}

double volumetric_heat_capacity_J_m3K(double temperature_C, double vapour_pressure_Pa, double pressure_Pa) {
  require_temperature(temperature_C);
  require_pressures(vapour_pressure_Pa, pressure_Pa);
  return dry_air_density_kg_m3(temperature_C, vapour_pressure_Pa, pressure_Pa) *
             constants::specific_heat_dry_air_J_kgK +
         vapour_density_kg_m3(temperature_C, vapour_pressure_Pa) * constants::specific_heat_vapour_J_kgK;
}

double latent_heat_J_kg(double temperature_C, Phase phase) {
  require_temperature(temperature_C);
  const bool over_ice = phase == Phase::ice || (phase == Phase::stable && temperature_C < 0.0);
  if (over_ice) {
    require_in_range(temperature_C, {temperature_range_C.min, 0.0}, "ice temperature", "C");
    return constants::sublimation_heat_J_kg;
  }
  return constants::evaporation_heat_0C_J_kg - constants::evaporation_heat_fall_J_kgK * temperature_C;
}

}  // namespace dewgap
