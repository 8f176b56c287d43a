// A damp layer's step for loops over hours: prepared once a layer, input unchecked, warm-started.
#pragma once

#include <cmath>

#include "dewgap/air/saturation_table_kernel.hpp"
#include "dewgap/moisture/timber.hpp"
#include "dewgap/moisture/transfer.hpp"

namespace dewgap::moisture_kernel {

/// Moisture content against humidity at one temperature.
struct Isotherm {
  double scale;  // kg/kg
  double k;
  double k1;
  double k2;
};

inline Isotherm isotherm_at(double t) {
  // Wood Handbook eq. 4-5, constants for degrees Celsius (from memory); 18 / W gives kg/kg.
  return {.scale = 18.0 / (349.0 + 1.29 * t + 0.0135 * t * t),
          .k = 0.805 + 0.000736 * t - 0.00000273 * t * t,
          .k1 = 6.27 - 0.00938 * t - 0.000303 * t * t,
          .k2 = 1.91 + 0.0407 * t - 0.000293 * t * t};
}

inline double moisture_at(const Isotherm& wood, double humidity) {
  // Eq. 4-5: M = 18/W [x/(1 - x) + (K1 x + 2 K1 K2 x^2)/(1 + K1 x + K1 K2 x^2)], x = K h.
  const double x = wood.k * humidity;
  const double first = wood.k1 * x;
  const double second = first * wood.k2 * x;
  return wood.scale * (x / (1.0 - x) + (first + 2.0 * second) / (1.0 + first + second));
}

inline double slope_at(const Isotherm& wood, double humidity) {
  // Eq. 4-5 differentiated: of the quotient a/b with b = 1 + K1 x + K1 K2 x^2.
  const double x = wood.k * humidity;
  const double first = wood.k1 * x;
  const double second = first * wood.k2 * x;
  const double b = 1.0 + first + second;
  const double a_slope = wood.k1 * (1.0 + 4.0 * wood.k2 * x);
  const double b_slope = wood.k1 * (1.0 + 2.0 * wood.k2 * x);
  const double dissolved = (a_slope * b - (first + 2.0 * second) * b_slope) / (b * b);
  return wood.scale * wood.k * (1.0 / ((1.0 - x) * (1.0 - x)) + dissolved);
}

/// Moisture content and its slope together, which share their parts.
struct IsothermPoint {
  double moisture_kg_kg;
  double slope_kg_kg;
};

inline IsothermPoint isotherm_point(const Isotherm& wood, double humidity) {
  // moisture_at and slope_at with one division: 1/(1 - x) and 1/b from 1/((1 - x) b).
  const double x = wood.k * humidity;
  const double first = wood.k1 * x;
  const double second = first * wood.k2 * x;
  const double b = 1.0 + first + second;
  const double a = first + 2.0 * second;
  const double both = 1.0 / ((1.0 - x) * b);
  const double free = both * b;
  const double bound = both * (1.0 - x);
  const double a_slope = wood.k1 * (1.0 + 4.0 * wood.k2 * x);
  const double b_slope = wood.k1 * (1.0 + 2.0 * wood.k2 * x);
  return {wood.scale * (x * free + a * bound),
          wood.scale * wood.k * (free * free + (a_slope - a * bound * b_slope) * bound)};
}

/// What of a layer does not change from hour to hour.
struct PreparedLayer {
  double area_m2;
  double dry_mass_kg_m2;
  double dry_mass_kg;
  double inside_air_m;  ///< coat and half the layer, as still air
};

/// Throws InvalidInput as step_damp_layer does.
inline PreparedLayer prepared(const DampLayer& layer) {
  const double mass_kg = dry_mass_kg(layer);
  return {
      .area_m2 = layer.area_m2,
      .dry_mass_kg_m2 = layer.thickness_m * layer.dry_density_kg_m3,
      .dry_mass_kg = mass_kg,
      .inside_air_m = layer.coat_equivalent_air_m + 0.5 * layer.thickness_m * layer.vapour_resistance_factor};
}

/// Humidity at which moisture + drag * humidity reaches the target, 1 when it is not reached. Newton from
/// `start`, inside a bracket. A step under 1e-6 of itself is the last: what is left is of its square.
inline double humidity_reaching_from(double start, const Isotherm& wood, double drag, double target) {
  if (target <= 0.0) {
    return 0.0;
  }
  if (isotherm_point(wood, 1.0).moisture_kg_kg + drag <= target) {
    return 1.0;
  }
  double low = 0.0;
  double high = 1.0;
  double humidity = start > 0.0 && start < 1.0 ? start : 0.5;
  for (int i = 0; i < 75; ++i) {
    const auto [moisture, slope] = isotherm_point(wood, humidity);
    const double excess = moisture + drag * humidity - target;
    (excess > 0.0 ? high : low) = humidity;
    double next = humidity - excess / (slope + drag);
    if (i >= 20 || !(next > low && next < high)) {
      next = 0.5 * (low + high);
    }
    const double moved = std::abs(next - humidity);
    humidity = next;
    if (moved <= 1e-6 * humidity) {
      break;
    }
  }
  return humidity;
}

/// One step as step_damp_layer's: moisture content, humidity, vapour and response within 1e-7 of themselves,
/// what it gives within 1e-7 of the water that the layer holds or passes. `humidity_before`, the layer's
/// relative humidity after the step before, is where the search starts; any other value in 0..1 only costs
/// time. Input is not checked; a temperature outside the table's range throws.
inline DampLayerStep step_prepared_layer(const PreparedLayer& layer, double moisture_kg_kg,
                                         double humidity_before, const DampLayerConditions& conditions,
                                         const air_kernel::SaturationTable& table) {
  const Isotherm wood = isotherm_at(conditions.temperature_C);
  const double saturation_Pa = table.over_water_at(conditions.temperature_C).pressure_Pa;
  // Air film, coat and half the layer in series (EN ISO 12572's mu and s_d, from memory).
  const double film = conditions.transfer_kg_m2sPa;
  const double conductance =
      film / (1.0 + film * layer.inside_air_m / vapour_permeability_air_kg_msPa(conditions.temperature_C));
  // Backward Euler: M(h) - M_before = pull (e_air - h e_sat), pull in kg/kg per Pa.
  const double pull = conductance * conditions.duration_s / layer.dry_mass_kg_m2;
  const double target = moisture_kg_kg + pull * conditions.air_vapour_Pa;
  const double drag = pull * saturation_Pa;
  const double humidity = humidity_reaching_from(humidity_before, wood, drag, target);
  const bool free_water = humidity >= 1.0;
  const auto end = isotherm_point(wood, humidity);
  const double after = free_water ? target - drag : end.moisture_kg_kg;
  const double yielding = free_water ? 1.0 : end.slope_kg_kg / (end.slope_kg_kg + drag);
  return {.moisture_kg_kg = after,
          .given_kg = layer.dry_mass_kg * (moisture_kg_kg - after),
          .vapour_Pa = humidity * saturation_Pa,
          .relative_humidity = humidity,
          .response_kg_sPa = layer.area_m2 * conductance * yielding};
}

}  // namespace dewgap::moisture_kernel
