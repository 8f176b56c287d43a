#include <cmath>
#include <numbers>

#include "dewgap/air/constants.hpp"
#include "dewgap/air/gas_kernel.hpp"

namespace dewgap::gas_kernel {
namespace {

// sum_i x_i property_i / (sum_j x_j weight_ij), where weight_ii is 1: the pattern of all three rules. It
// equals the standard's sum_i property_i / (1 + sum_j weight_ij x_j / x_i) and needs no case for a fraction
// of zero.
template <class Property, class Weight>
double mixed(std::span<const Component> gases, Property&& property, Weight&& weight) {
  double sum = 0.0;
  for (const Component& i : gases) {
    double neighbours = 0.0;
    for (const Component& j : gases) {
      neighbours += j.mole_fraction * weight(i, j);
    }
    sum += i.mole_fraction * property(i) / neighbours;
  }
  return sum;
}

// Translational part of the conductivity, as of a monatomic gas: 15/4 R mu / M (ISO 15099 Annex B, from
// memory).
double translational_W_mK(const Component& gas) {
  return 15.0 / 4.0 * constants::molar_gas_J_molK / gas.molar_mass_kg_mol * gas.viscosity_Pa_s;
}

// phi_ij of the internal part: [1 + (k'_i/k'_j)^(1/2) (M_i/M_j)^(1/4)]^2 / (2 sqrt(2) [1 + M_i/M_j]^(1/2)).
double conductivity_weight(const Component& i, const Component& j) {
  const double mass_ratio = i.molar_mass_kg_mol / j.molar_mass_kg_mol;
  const double bracket =
      1.0 + std::sqrt(translational_W_mK(i) / translational_W_mK(j)) * std::sqrt(std::sqrt(mass_ratio));
  return bracket * bracket / (2.0 * std::numbers::sqrt2 * std::sqrt(1.0 + mass_ratio));
}

// psi_ij of the translational part: phi_ij [1 + 2.41 (M_i - M_j)(M_i - 0.142 M_j) / (M_i + M_j)^2].
double translational_weight(const Component& i, const Component& j) {
  const double Mi = i.molar_mass_kg_mol;
  const double Mj = j.molar_mass_kg_mol;
  return conductivity_weight(i, j) * (1.0 + 2.41 * (Mi - Mj) * (Mi - 0.142 * Mj) / ((Mi + Mj) * (Mi + Mj)));
}

// phi_ij of Wilke: [1 + (mu_i/mu_j)^(1/2) (M_j/M_i)^(1/4)]^2 / (2 sqrt(2) [1 + M_i/M_j]^(1/2)).
double viscosity_weight(const Component& i, const Component& j) {
  const double mass_ratio = i.molar_mass_kg_mol / j.molar_mass_kg_mol;
  const double bracket =
      1.0 + std::sqrt(i.viscosity_Pa_s / j.viscosity_Pa_s) / std::sqrt(std::sqrt(mass_ratio));
  return bracket * bracket / (2.0 * std::numbers::sqrt2 * std::sqrt(1.0 + mass_ratio));
}

}  // namespace

double mixture_molar_mass_kg_mol(std::span<const Component> gases) {
  double sum = 0.0;
  for (const Component& gas : gases) {
    sum += gas.mole_fraction * gas.molar_mass_kg_mol;
  }
  return sum;
}

double mixture_specific_heat_J_kgK(std::span<const Component> gases) {
  // ISO 15099 Annex B: cp_mix = sum x_i cp_i M_i / M_mix, from memory.
  double molar_J_molK = 0.0;
  for (const Component& gas : gases) {
    molar_J_molK += gas.mole_fraction * gas.specific_heat_J_kgK * gas.molar_mass_kg_mol;
  }
  return molar_J_molK / mixture_molar_mass_kg_mol(gases);
}

double mixture_viscosity_Pa_s(std::span<const Component> gases) {
  // ISO 15099 Annex B, viscosity of mixtures (Wilke), from memory.
  return mixed(
      gases, [](const Component& gas) { return gas.viscosity_Pa_s; }, viscosity_weight);
}

double mixture_conductivity_W_mK(std::span<const Component> gases) {
  // ISO 15099 Annex B, conductivity of mixtures, from memory: k = k' + k''.
  const double translational = mixed(gases, translational_W_mK, translational_weight);
  const auto internal_W_mK = [](const Component& gas) {
    return gas.conductivity_W_mK - translational_W_mK(gas);
  };
  const double internal = mixed(gases, internal_W_mK, conductivity_weight);
  return translational + internal;
}

}  // namespace dewgap::gas_kernel
