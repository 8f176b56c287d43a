// Vapour transfer at a face and through sheets and tape.
#pragma once

namespace dewgap {

/// Mass transfer coefficient on vapour density, m/s, by the Lewis relation: h_c / (rho cp Le^(2/3)).
/// convection_W_m2K 0 to 1000 between the air and the face; volumetric heat capacity 100 to 5000 J/(m3 K);
/// Lewis number (thermal over mass diffusivity) 0.5 to 2, for water vapour in air handbooks give 0.84 to 0.87
/// (from memory). On vapour pressure this is beta_p = h_m / (R_v T), about 7e-9 h_c kg/(m2 s Pa).
double mass_transfer_m_s(double convection_W_m2K, double volumetric_heat_capacity_J_m3K, double lewis = 0.85);

/// Permeability of still air to vapour, kg/(m s Pa): Schirmer's 2.0e-7 T^0.81 / p (EN ISO 12572 / DIN 52615,
/// from memory), T in K. Temperature -60 to 80 C, pressure 5e4 to 1.2e5 Pa. The rounded 2.0e-7 is 1.5 % above
/// the same source's 2.306e-5 m2/s (T / 273.15 K)^1.81 / (R_v T).
double vapour_permeability_air_kg_msPa(double temperature_C, double pressure_Pa = 101325.0);

/// Vapour conductance of a sheet, kg/(s Pa): permeability A / (mu d). Area 0 to 100 m2, thickness 1e-6 to 0.2
/// m, resistance factor mu (against still air) 1 to 1e11. Films at the faces add next to nothing and are left
/// out.
double sheet_vapour_conductance_kg_sPa(double area_m2, double thickness_m, double vapour_resistance_factor,
                                       double temperature_C);
/// Vapour conductance of a tape rim: permeability x perimeter x tape thickness / (mu x tape width).
/// Length 0 to 100 m, tape thickness 0 to 0.05 m, tape width (along the vapour's path) 1e-4 to 0.2 m, mu 1 to
/// 1e11.
double tape_vapour_conductance_kg_sPa(double length_m, double tape_thickness_m, double tape_width_m,
                                      double vapour_resistance_factor, double temperature_C);
/// Free diffusion of vapour through the still air of a break (both ends open), kg/(s Pa): permeability A /
/// depth. Area 0 to 1 m2, depth 1e-4 to 0.5 m. The resistance of the air at both ends is left out, so this is
/// an upper bound for openings that are short for their width.
double opening_vapour_conductance_kg_sPa(double area_m2, double depth_m, double temperature_C);

}  // namespace dewgap
