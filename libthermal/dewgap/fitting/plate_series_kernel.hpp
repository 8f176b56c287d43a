// Series of the rectangular plate, short side 1. Private to the room.
#pragma once

#include "dewgap/fitting/deflection.hpp"

namespace dewgap::fitting {

/// Levy's series; see plate_coefficients.
PlateCoefficients simply_supported_plate(double long_over_short, double poisson_ratio);
/// Edge moments by superposition; beyond 6 the strip's values, which it has reached by then.
PlateCoefficients clamped_plate(double long_over_short, double poisson_ratio);

}  // namespace dewgap::fitting
