// Levy's series of the rectangular plate whose edges turn freely, without dimensions: short side 1, long side
// long_over_short (1 to 1000), unit stiffness, and a unit pressure all over or a unit force at the centre.
//
// From Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 1959, sections 28 to 34, from memory.
// 50 odd terms: the first left out is 1e-10 of the first in the deflection and the volume, 5e-7 in the
// curvatures, 1e-6 under a force.
#pragma once

namespace dewgap::numerics {

struct PlateCentre {
  double deflection = 0.0;
  double curvature_across = 0.0;  ///< along the short side, -w_xx
  double curvature_along = 0.0;   ///< along the long side, -w_yy
};

/// At the centre, under a pressure.
PlateCentre levy_centre(double long_over_short);

/// Deflection under a pressure, averaged over the plate.
double levy_mean_deflection(double long_over_short);

/// Deflection of the centre under a force there.
double levy_central_force(double long_over_short);

}  // namespace dewgap::numerics
