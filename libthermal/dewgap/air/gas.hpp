// Transport properties of the gases that fill glazing gaps. NaN and values outside a stated range throw
// InvalidInput.
//
// The two sources differ from each other, for pure gases between -10 and 20 C, by up to 1 % in
// conductivity, 1.5 % in viscosity, 1.5 % in specific heat and 2 % in density; EN 673's densities are lower
// than the ideal gas at 101 325 Pa.
#pragma once

namespace dewgap {

/// Fill of a gap by volume fractions that add up to 1 (checked to 1e-9).
struct GasMixture {
  double air = 1.0;
  double argon = 0.0;
  double krypton = 0.0;
};

struct GasProperties {
  double density_kg_m3 = 0.0;
  double viscosity_Pa_s = 0.0;
  double conductivity_W_mK = 0.0;
  double specific_heat_J_kgK = 0.0;
};

/// EN 673 Table 1 / ISO 10292 between -10 and 20 C, linear in temperature and in fraction (EN 673
/// clause 5.3.4, from memory). Throws outside -30 to 50 C; outside -10 to 20 C the table is continued
/// linearly.
GasProperties gas_properties_en_673(const GasMixture& gas, double temperature_C);

/// ISO 15099 Annex B fits, linear in temperature, ideal-gas density, mixtures by its mixing rules (from
/// memory): mole-fraction weighted molar specific heat, Wilke's viscosity rule, Mason-Saxena-like
/// conductivity. Valid 173 to 373 K here; throws outside. Density at `pressure_Pa`, 30 to 120 kPa.
GasProperties gas_properties_iso_15099(const GasMixture& gas, double temperature_C,
                                       double pressure_Pa = 101325.0);

}  // namespace dewgap
