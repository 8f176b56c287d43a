#include "dewgap/moisture/timber.hpp"

#include <cmath>
#include <limits>

#include "dewgap/air/saturation.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/moisture/timber_kernel.hpp"
#include "dewgap/moisture/transfer.hpp"

namespace dewgap {
namespace {

constexpr PermittedRange wood_temperatures_C{-30.0, 80.0};
constexpr PermittedRange moistures_kg_kg{0.0, 2.5};

using moisture_kernel::Isotherm;
using moisture_kernel::isotherm_at;
using moisture_kernel::moisture_at;
using moisture_kernel::slope_at;

/// Humidity at which moisture + drag * humidity reaches the target, 1 when it is not reached. Newton inside a
/// bracket; after 20 steps bisection, which 55 more end at rounding.
double humidity_reaching(const Isotherm& wood, double drag, double target) {
  if (target <= 0.0) {
    return 0.0;
  }
  if (moisture_at(wood, 1.0) + drag <= target) {
    return 1.0;
  }
  double low = 0.0;
  double high = 1.0;
  double humidity = 0.5;
  for (int i = 0; i < 75; ++i) {
    const double excess = moisture_at(wood, humidity) + drag * humidity - target;
    (excess > 0.0 ? high : low) = humidity;
    double next = humidity - excess / (slope_at(wood, humidity) + drag);
    if (i >= 20 || !(next > low && next < high)) {
      next = 0.5 * (low + high);
    }
    const double moved = std::abs(next - humidity);
    humidity = next;
    if (moved <= std::numeric_limits<double>::epsilon() * humidity) {
      break;
    }
  }
  return humidity;
}

void require_valid(const DampLayer& layer) {
  require_in_range(layer.area_m2, {0.0, 100.0}, "area_m2", "m2");
  require_in_range(layer.thickness_m, {1e-4, 0.05}, "thickness_m", "m");
  require_in_range(layer.dry_density_kg_m3, {100.0, 1300.0}, "dry_density_kg_m3", "kg/m3");
  require_in_range(layer.vapour_resistance_factor, {5.0, 1000.0}, "vapour_resistance_factor", "");
  require_in_range(layer.coat_equivalent_air_m, {0.0, 100.0}, "coat_equivalent_air_m", "m");
}

void require_valid(const DampLayerConditions& conditions) {
  require_in_range(conditions.duration_s, {1.0, 86400.0}, "duration_s", "s");
  require_in_range(conditions.temperature_C, wood_temperatures_C, "temperature_C", "C");
  require_in_range(conditions.air_vapour_Pa, {0.0, 20000.0}, "air_vapour_Pa", "Pa");
  require_in_range(conditions.transfer_kg_m2sPa, {0.0, 2e-5}, "transfer_kg_m2sPa", "kg/(m2 s Pa)");
}

double conductance_kg_m2sPa(const DampLayer& layer, const DampLayerConditions& conditions) {
  // Air film, coat and half the layer in series (EN ISO 12572's mu and s_d, from memory).
  const double inside_air_m =
      layer.coat_equivalent_air_m + 0.5 * layer.thickness_m * layer.vapour_resistance_factor;
  const double film = conditions.transfer_kg_m2sPa;
  return film / (1.0 + film * inside_air_m / vapour_permeability_air_kg_msPa(conditions.temperature_C));
}

}  // namespace

double wood_moisture_kg_kg(double temperature_C, double relative_humidity) {
  require_in_range(temperature_C, wood_temperatures_C, "temperature_C", "C");
  require_in_range(relative_humidity, {0.0, 1.0}, "relative_humidity", "");
  return moisture_at(isotherm_at(temperature_C), relative_humidity);
}

double wood_moisture_slope_kg_kg(double temperature_C, double relative_humidity) {
  require_in_range(temperature_C, wood_temperatures_C, "temperature_C", "C");
  require_in_range(relative_humidity, {0.0, 1.0}, "relative_humidity", "");
  return slope_at(isotherm_at(temperature_C), relative_humidity);
}

double wood_relative_humidity(double temperature_C, double moisture_kg_kg) {
  require_in_range(temperature_C, wood_temperatures_C, "temperature_C", "C");
  require_in_range(moisture_kg_kg, moistures_kg_kg, "moisture_kg_kg", "kg/kg");
  return humidity_reaching(isotherm_at(temperature_C), 0.0, moisture_kg_kg);
}

double dry_mass_kg(const DampLayer& layer) {
  require_valid(layer);
  return layer.area_m2 * layer.thickness_m * layer.dry_density_kg_m3;
}

DampLayerStep step_damp_layer(const DampLayer& layer, double moisture_kg_kg,
                              const DampLayerConditions& conditions) {
  require_valid(layer);
  require_valid(conditions);
  require_in_range(moisture_kg_kg, moistures_kg_kg, "moisture_kg_kg", "kg/kg");
  const Isotherm wood = isotherm_at(conditions.temperature_C);
  const double saturation_Pa =
      saturation_pressure_Pa(conditions.temperature_C, SaturationFormula::murphy_koop, Phase::water);
  const double conductance = conductance_kg_m2sPa(layer, conditions);
  // Backward Euler: M(h) - M_before = pull (e_air - h e_sat), pull in kg/kg per Pa.
  const double pull = conductance * conditions.duration_s / (layer.thickness_m * layer.dry_density_kg_m3);
  const double target = moisture_kg_kg + pull * conditions.air_vapour_Pa;
  const double drag = pull * saturation_Pa;
  const double humidity = humidity_reaching(wood, drag, target);
  // Above fibre saturation the vapour pressure stays at saturation and all that comes is free water.
  const bool free_water = humidity >= 1.0;
  const double after = free_water ? target - drag : moisture_at(wood, humidity);
  // The same balance differentiated by the air's vapour pressure.
  const double yielding = free_water ? 1.0 : slope_at(wood, humidity) / (slope_at(wood, humidity) + drag);
  return {.moisture_kg_kg = after,
          .given_kg = dry_mass_kg(layer) * (moisture_kg_kg - after),
          .vapour_Pa = humidity * saturation_Pa,
          .relative_humidity = humidity,
          .response_kg_sPa = layer.area_m2 * conductance * yielding};
}

}  // namespace dewgap
