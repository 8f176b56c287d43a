// Latent heat of a film through 0 C. Private to gap/.
#pragma once

#include <cmath>

#include "dewgap/air/constants.hpp"

namespace dewgap::gap_kernel {

struct LatentHeat {
  double value_J_kg = 0.0;
  double slope_J_kgK = 0.0;
};

/// Of vapour that becomes film at a face. Across 0 C the film is part ice, part water: blended over half a
/// kelvin, since a jump there would leave some states without a balance (our convention).
inline LatentHeat film_latent_heat(double face_C) {
  constexpr double half_band_K = 0.25;
  const double water = constants::evaporation_heat_0C_J_kg - constants::evaporation_heat_fall_J_kgK * face_C;
  if (face_C >= half_band_K) {
    return {water, -constants::evaporation_heat_fall_J_kgK};
  }
  if (face_C <= -half_band_K) {
    return {constants::sublimation_heat_J_kg, 0.0};
  }
  const double at_band =
      constants::evaporation_heat_0C_J_kg - constants::evaporation_heat_fall_J_kgK * half_band_K;
  const double slope = (at_band - constants::sublimation_heat_J_kg) / (2.0 * half_band_K);
  return {constants::sublimation_heat_J_kg + slope * (face_C + half_band_K), slope};
}

}  // namespace dewgap::gap_kernel
