// Physical constants of the house, each with unit, value and source.
#pragma once

namespace dewgap::constants {

inline constexpr double stefan_boltzmann_W_m2K4 = 5.670374419e-8;  // CODATA 2018, exact to the digits shown
inline constexpr double stefan_boltzmann_en_673_W_m2K4 = 5.67e-8;  // EN 673, from memory
inline constexpr double en_673_mean_temperature_K = 283.0;         // EN 673 5.3: of all gaps, from memory
inline constexpr double celsius_zero_K = 273.15;                   // SI, exact
inline constexpr double standard_gravity_m_s2 = 9.80665;           // CGPM 1901, exact
inline constexpr double molar_gas_J_molK = 8.314462618;            // CODATA 2018
inline constexpr double molar_mass_water_kg_mol = 18.01528e-3;     // IAPWS
inline constexpr double molar_mass_dry_air_kg_mol = 28.9647e-3;    // CIPM-2007 air, 400 ppm CO2, from memory
inline constexpr double gas_constant_water_J_kgK = molar_gas_J_molK / molar_mass_water_kg_mol;
inline constexpr double gas_constant_dry_air_J_kgK = molar_gas_J_molK / molar_mass_dry_air_kg_mol;
inline constexpr double specific_heat_dry_air_J_kgK = 1006.0;  // ASHRAE Fundamentals, from memory
inline constexpr double specific_heat_vapour_J_kgK = 1860.0;   // ASHRAE Fundamentals, from memory
inline constexpr double evaporation_heat_0C_J_kg = 2501.0e3;   // ASHRAE Fundamentals, from memory
inline constexpr double evaporation_heat_fall_J_kgK = 2.36e3;  // handbooks, from memory; within 0.1 % to 40 C
inline constexpr double sublimation_heat_J_kg = 2834.0e3;      // handbooks, from memory
inline constexpr double standard_pressure_Pa = 101325.0;       // ISO 2533, exact
inline constexpr double lewis_number_water_in_air = 0.85;      // handbooks give 0.84-0.87, from memory

constexpr double kelvin(double temperature_C) {
  return temperature_C + celsius_zero_K;
}

}  // namespace dewgap::constants
