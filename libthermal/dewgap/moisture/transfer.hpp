// Vapour transfer at a face and through sheets and tape.
#pragma once

namespace dewgap {

/// Mass transfer coefficient on vapour density, m/s, by the Lewis relation: h_c / (rho cp Le^(2/3)).
/// convection_W_m2K >= 0 between the air and the face.
double mass_transfer_m_s(double convection_W_m2K, double volumetric_heat_capacity_J_m3K, double lewis = 0.85);

/// Permeability of still air to vapour, kg/(m s Pa): Schirmer's 2.0e-7 T^0.81 / p (EN ISO 12572 / DIN 52615, from
/// memory), T in K.
double vapour_permeability_air_kg_msPa(double temperature_C, double pressure_Pa = 101325.0);

/// Vapour conductance of a sheet, kg/(s Pa): permeability A / (mu d).
double sheet_vapour_conductance_kg_sPa(double area_m2, double thickness_m, double vapour_resistance_factor,
                                       double temperature_C);
/// Vapour conductance of a tape rim: permeability x perimeter x tape thickness / (mu x tape width).
double tape_vapour_conductance_kg_sPa(double length_m, double tape_thickness_m, double tape_width_m,
                                      double vapour_resistance_factor, double temperature_C);
/// Free diffusion of vapour through the still air of a break (both ends open), kg/(s Pa): permeability A / depth.
double opening_vapour_conductance_kg_sPa(double area_m2, double depth_m, double temperature_C);

}  // namespace dewgap
