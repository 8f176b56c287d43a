// Mixing rules of ISO 15099 for gases at low pressure, for any gases. Shared inside this room; not installed.
#pragma once

#include <span>

namespace dewgap::gas_kernel {

/// One gas of a mixture at the mixture's temperature. Fractions of a mixture add up to 1.
struct Component {
  double mole_fraction;
  double molar_mass_kg_mol;
  double viscosity_Pa_s;
  double conductivity_W_mK;
  double specific_heat_J_kgK;
};

double mixture_molar_mass_kg_mol(std::span<const Component> gases);
/// Mole-fraction weighted molar specific heat, over the mixture's molar mass.
double mixture_specific_heat_J_kgK(std::span<const Component> gases);
/// Wilke's rule (J. Chem. Phys. 18 (1950) 517).
double mixture_viscosity_Pa_s(std::span<const Component> gases);
/// Conductivity split into a translational part, 15/4 R mu / M, and the internal rest, each mixed by its own
/// rule.
double mixture_conductivity_W_mK(std::span<const Component> gases);

}  // namespace dewgap::gas_kernel
