// Convection in a closed gap and at the two outer faces: published correlations with their ranges.
#pragma once

#include "dewgap/air/gas.hpp"
#include "dewgap/validity.hpp"

namespace dewgap {

/// Which published correlation gives the Nusselt number of a gap.
enum class GapCorrelation {
  wright,  ///< Wright 1996, in ISO 15099 for vertical gaps; tilted gaps by Hollands 1976 and interpolation
  elsherbiny,  ///< ElSherbiny, Raithby and Hollands 1982, vertical; tilted as above
  en_673,      ///< Nu = max(1, A (Gr Pr)^n) of EN 673
};

/// Nusselt number of a gap, its slope, and what was outside a validated range.
struct GapNusselt {
  double nusselt = 1.0;
  double slope = 0.0;  ///< dNu/dRa
  ValidityFlags flags;
};

/// rayleigh 0 to 1e12; aspect_ratio = height / width, 0.2 to 5000; tilt_deg: 0 is horizontal with heat
/// flowing up, 90 is vertical, 180 is horizontal with heat flowing down (Nu 1). Jumps of Wright's correlation
/// at Ra 1e4 (down by 0.5 %) and 5e4 (up by 0.6 %) are blended over 2 % in Ra (smoothstep), so the value is
/// continuous; inside a band gap_jump_blended is raised. Blending moves Nu by at most 0.33 % there, measured,
/// and by nothing elsewhere. Tilted (from memory): Hollands 1976 below 60 degrees, ElSherbiny 1982 at 60,
/// linear from 60 to 90; their step of a few per cent at 60 is blended over 55 to 60 degrees (our
/// convention). Heat flowing down: 1 + (Nu_90 - 1) sin tilt. en_673: its three positions, linear between.
/// Ranges that raise flags: A 5-110 and Ra to 1e6 (wright, en_673), to 2e7 (elsherbiny); below 60 degrees A
/// from 20 and Ra to 1e5.
GapNusselt gap_nusselt(double rayleigh, double aspect_ratio, double tilt_deg, GapCorrelation correlation);

/// Correlation of Berkovsky and Polevikov's kind for aspect ratios 10-40 used by textbooks for tall gaps:
/// Nu = 0.42 Ra^0.25 Pr^0.012 (H/L)^-0.3, not below 1; flags when H/L leaves 10-40 or Ra leaves 1e4-1e7.
GapNusselt gap_nusselt_textbook(double rayleigh, double prandtl, double aspect_ratio);

/// Ra = g beta |dT| L^3 rho^2 cp / (mu k), beta = 1/T of the gas at its mean temperature, g 9.81 as the
/// standards print it. width_m: of the gap, or the height of a plate, up to 10.
double gap_rayleigh(const GasProperties& gas, double width_m, double difference_K, double mean_temperature_K);

/// Nusselt number of an isothermal vertical plate, Churchill and Chu 1975 (all Rayleigh numbers up to 1e12).
double vertical_plate_nusselt_churchill_chu(double rayleigh, double prandtl);

struct SurfaceFilm {
  double convection_W_m2K = 0.0;
  double slope_W_m2K2 = 0.0;  ///< d h / d(surface temperature)
  ValidityFlags flags;
};

/// Room-side natural convection by ISO 15099 8.3.2.2 (from memory), from the surface's own Rayleigh number
/// over its height. tilt_deg 0 to 90, of a surface seen from the room: 90 vertical, 0 a horizontal
/// skylight pane. The published curves step at tilts of 1 and 15 degrees; they are left as they are, tilt
/// being no unknown. At equal temperatures both h and its slope are given as 0 (h rises from there with the
/// fourth root of the difference).
SurfaceFilm room_side_film(double surface_temperature_C, double air_temperature_C, double height_m,
                           double tilt_deg = 90.0);

/// Outdoor convection at a window from the free wind speed near the wall, 4 + 4 v W/(m2 K) (ISO
/// 15099 8.3.3.3, from memory); wind_m_s 0 to 40.
double outdoor_convection_W_m2K(double wind_m_s);

}  // namespace dewgap
