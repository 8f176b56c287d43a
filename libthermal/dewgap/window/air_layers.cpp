// The layers of ISO 6946 that whole_window.hpp declares.
#include <algorithm>
#include <cmath>

#include "dewgap/air/constants.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/window/whole_window.hpp"

namespace dewgap {
namespace {

constexpr double unventilated_limit_mm2_per_m = 500.0;
constexpr double well_ventilated_limit_mm2_per_m = 1500.0;
constexpr PermittedRange openings_range_mm2_per_m{0.0, 1e7};
constexpr double conduction_W_mK = 0.025;  // of still air, ISO 6946 Annex D
constexpr double branch_difference_K = 5.0;

/// Convection and conduction, ISO 6946:2017 Annex D, table of ha (from memory).
double convection_W_m2K(const AirLayer& layer) {
  const double still_W_m2K = conduction_W_mK / layer.thickness_m;
  const double difference_K = layer.difference_K;
  const bool small = difference_K <= branch_difference_K;
  switch (layer.direction) {
    case HeatFlow::horizontal:
      return std::max(small ? 1.25 : 0.73 * std::cbrt(difference_K), still_W_m2K);
    case HeatFlow::upwards:
      return std::max(small ? 1.95 : 1.14 * std::cbrt(difference_K), still_W_m2K);
    case HeatFlow::downwards: {
      const double depth_term = std::pow(layer.thickness_m, -0.44);
      return std::max((small ? 0.12 : 0.09 * std::pow(difference_K, 0.187)) * depth_term, still_W_m2K);
    }
  }
  throw InvalidInput("direction", "is not a direction of heat flow");
}

}  // namespace

double unventilated_air_layer_m2K_W(const AirLayer& layer) {
  require_in_range(layer.thickness_m, {0.002, 0.3}, "thickness_m", "m");
  require_in_range(layer.emissivity_1, {0.01, 1.0}, "emissivity_1", "-");
  require_in_range(layer.emissivity_2, {0.01, 1.0}, "emissivity_2", "-");
  require_in_range(layer.mean_temperature_C, {-60.0, 80.0}, "mean_temperature_C", "C");
  require_in_range(layer.difference_K, {0.0, 60.0}, "difference_K", "K");
  // ISO 6946:2017 Annex D, from memory: hr = E hr0, hr0 = 4 sigma Tm^3, E = 1 / (1/e1 + 1/e2 - 1)
  const double mean_K = constants::kelvin(layer.mean_temperature_C);
  const double black_W_m2K = 4.0 * constants::stefan_boltzmann_W_m2K4 * mean_K * mean_K * mean_K;
  const double radiation_W_m2K = black_W_m2K / (1.0 / layer.emissivity_1 + 1.0 / layer.emissivity_2 - 1.0);
  // R = 1 / (ha + hr)
  return 1.0 / (convection_W_m2K(layer) + radiation_W_m2K);
}

LayerVentilation layer_ventilation(double openings_mm2_per_m) {
  require_in_range(openings_mm2_per_m, openings_range_mm2_per_m, "openings_mm2_per_m", "mm2/m");
  if (openings_mm2_per_m <= unventilated_limit_mm2_per_m) {
    return LayerVentilation::unventilated;
  }
  return openings_mm2_per_m <= well_ventilated_limit_mm2_per_m ? LayerVentilation::slightly_ventilated
                                                               : LayerVentilation::well_ventilated;
}

double ventilated_total_resistance_m2K_W(double openings_mm2_per_m, double total_unventilated_m2K_W,
                                         double total_well_ventilated_m2K_W) {
  constexpr PermittedRange resistance_range_m2K_W{1e-3, 100.0};
  require_in_range(total_unventilated_m2K_W, resistance_range_m2K_W, "total_unventilated_m2K_W", "m2 K/W");
  require_in_range(total_well_ventilated_m2K_W, {resistance_range_m2K_W.min, total_unventilated_m2K_W},
                   "total_well_ventilated_m2K_W", "m2 K/W");
  switch (layer_ventilation(openings_mm2_per_m)) {
    case LayerVentilation::unventilated:
      return total_unventilated_m2K_W;
    case LayerVentilation::well_ventilated:
      return total_well_ventilated_m2K_W;
    case LayerVentilation::slightly_ventilated:
      break;
  }
  // ISO 6946:2017 6.9.3, from memory: RT = (1500 - Av)/1000 RTu + (Av - 500)/1000 RTv
  const double open_share = (openings_mm2_per_m - unventilated_limit_mm2_per_m) /
                            (well_ventilated_limit_mm2_per_m - unventilated_limit_mm2_per_m);
  return (1.0 - open_share) * total_unventilated_m2K_W + open_share * total_well_ventilated_m2K_W;
}

}  // namespace dewgap
