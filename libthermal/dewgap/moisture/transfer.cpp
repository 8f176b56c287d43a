#include "dewgap/moisture/transfer.hpp"

#include <cmath>

#include "dewgap/air/constants.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr PermittedRange resistance_factors{1.0, 1e11};

}  // namespace

double mass_transfer_m_s(double convection_W_m2K, double volumetric_heat_capacity_J_m3K, double lewis) {
  require_in_range(convection_W_m2K, {0.0, 1000.0}, "convection_W_m2K", "W/(m2 K)");
  require_in_range(volumetric_heat_capacity_J_m3K, {100.0, 5000.0}, "volumetric_heat_capacity_J_m3K",
                   "J/(m3 K)");
  require_in_range(lewis, {0.5, 2.0}, "lewis", "");
  // Lewis relation (handbook, from memory): h_m = h_c / (rho c_p Le^(2/3)).
  return convection_W_m2K / (volumetric_heat_capacity_J_m3K * std::pow(lewis, 2.0 / 3.0));
}

double vapour_permeability_air_kg_msPa(double temperature_C, double pressure_Pa) {
  require_in_range(temperature_C, {-60.0, 80.0}, "temperature_C", "C");
  require_in_range(pressure_Pa, {5e4, 1.2e5}, "pressure_Pa", "Pa");
  // DIN 52615 after Schirmer, in the rounded form 2.0e-7 T^0.81 / p (from memory).
  return 2.0e-7 * std::pow(constants::kelvin(temperature_C), 0.81) / pressure_Pa;
}

double sheet_vapour_conductance_kg_sPa(double area_m2, double thickness_m, double vapour_resistance_factor,
                                       double temperature_C) {
  require_in_range(area_m2, {0.0, 100.0}, "area_m2", "m2");
  require_in_range(thickness_m, {1e-6, 0.2}, "thickness_m", "m");
  require_in_range(vapour_resistance_factor, resistance_factors, "vapour_resistance_factor", "");
  // Fick's law with mu as EN ISO 12572 defines it: the sheet is as good as mu d of still air.
  return vapour_permeability_air_kg_msPa(temperature_C) * area_m2 / (vapour_resistance_factor * thickness_m);
}

double tape_vapour_conductance_kg_sPa(double length_m, double tape_thickness_m, double tape_width_m,
                                      double vapour_resistance_factor, double temperature_C) {
  require_in_range(length_m, {0.0, 100.0}, "length_m", "m");
  require_in_range(tape_thickness_m, {0.0, 0.05}, "tape_thickness_m", "m");
  require_in_range(tape_width_m, {1e-4, 0.2}, "tape_width_m", "m");
  require_in_range(vapour_resistance_factor, resistance_factors, "vapour_resistance_factor", "");
  // Fick's law across the tape's width; the vapour's path has the tape's edge as its area.
  return vapour_permeability_air_kg_msPa(temperature_C) * length_m * tape_thickness_m /
         (vapour_resistance_factor * tape_width_m);
}

double opening_vapour_conductance_kg_sPa(double area_m2, double depth_m, double temperature_C) {
  require_in_range(area_m2, {0.0, 1.0}, "area_m2", "m2");
  require_in_range(depth_m, {1e-4, 0.5}, "depth_m", "m");
  // Fick's law through still air.
  return vapour_permeability_air_kg_msPa(temperature_C) * area_m2 / depth_m;
}

}  // namespace dewgap
