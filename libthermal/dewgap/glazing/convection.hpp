// Convection in a closed gap and at the two outer faces: published correlations with their ranges.
#pragma once

#include "dewgap/air/gas.hpp"
#include "dewgap/validity.hpp"

namespace dewgap {

/// Which published correlation gives the Nusselt number of a gap.
enum class GapCorrelation {
  wright,      ///< Wright 1996, in ISO 15099 for vertical gaps; tilted gaps by Hollands 1976 and interpolation
  elsherbiny,  ///< ElSherbiny, Raithby and Hollands 1982, vertical; tilted as above
  en_673,      ///< Nu = max(1, A (Gr Pr)^n) of EN 673
};

/// Nusselt number of a gap, its slope, and what was outside a validated range.
struct GapNusselt {
  double nusselt = 1.0;
  double slope = 0.0;  ///< dNu/dRa
  ValidityFlags flags;
};

/// rayleigh >= 0; aspect_ratio = height / width, 1 to 2000; tilt_deg: 0 is horizontal with heat flowing up, 90 is
/// vertical, 180 is horizontal with heat flowing down (Nu 1). Jumps of the published correlation at Ra 1e4 and 5e4
/// are blended over 2 % in Ra (smoothstep), so the value is continuous; inside a band gap_jump_blended is raised.
GapNusselt gap_nusselt(double rayleigh, double aspect_ratio, double tilt_deg, GapCorrelation correlation);

/// Berkovsky-Polevikov-like correlation for aspect ratios 10-40 used by textbooks for tall gaps:
/// Nu = 0.42 Ra^0.25 Pr^0.012 (H/L)^-0.3; flags when H/L leaves 10-40 or Ra leaves 1e4-1e7.
GapNusselt gap_nusselt_textbook(double rayleigh, double prandtl, double aspect_ratio);

/// Ra = g beta |dT| L^3 rho^2 cp / (mu k), beta = 1/T of the gas at its mean temperature.
double gap_rayleigh(const GasProperties& gas, double width_m, double difference_K, double mean_temperature_K);

/// Nusselt number of an isothermal vertical plate, Churchill and Chu 1975 (all Rayleigh numbers up to 1e12).
double vertical_plate_nusselt_churchill_chu(double rayleigh, double prandtl);

struct SurfaceFilm {
  double convection_W_m2K = 0.0;
  double slope_W_m2K2 = 0.0;  ///< d h / d(surface temperature)
  ValidityFlags flags;
};

/// Room-side natural convection by ISO 15099 8.3.2.2 (from memory), from the surface's own Rayleigh number over its
/// height. tilt_deg as above but for a surface seen from the room: 90 vertical, 0 a horizontal skylight pane.
SurfaceFilm room_side_film(double surface_temperature_C, double air_temperature_C, double height_m,
                           double tilt_deg = 90.0);

/// Outdoor convection at a window from the free wind speed near the wall, 4 + 4 v W/(m2 K) (ISO 15099 8.3.3.3,
/// from memory); wind_m_s 0 to 40.
double outdoor_convection_W_m2K(double wind_m_s);

}  // namespace dewgap
