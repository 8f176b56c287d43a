// Long-wave emissivity of coated and uncoated faces.
#pragma once

namespace dewgap {

/// Corrected (hemispherical) emissivity from normal emissivity, EN 12898 / EN 673 Annex A table, linear
/// between rows (from memory). normal_emissivity: 0.03 to 0.89.
double corrected_emissivity(double normal_emissivity);

inline constexpr double uncoated_glass_emissivity = 0.837;  ///< corrected, EN 673, from memory

/// EN 673 radiation conductance between two facing surfaces, W/(m2 K), at the mean temperature in K:
/// 4 sigma Tm^3 / (1/e1 + 1/e2 - 1).
double radiation_conductance_W_m2K(double emissivity_1, double emissivity_2, double mean_temperature_K);

}  // namespace dewgap
