// How far a sheet bends under a gust or a hand, its stress, and how thick it has to be.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dewgap/materials/materials.hpp"

namespace dewgap {

/// simply_supported: edges turn freely and stay in plane, as on compressible tape under clips. clamped: edges
/// held fast in direction; the other bound.
enum class PlateEdges { simply_supported, clamped };

/// Coefficients of a rectangular thin plate under uniform pressure q, a the short and b the long side:
/// deflection w = deflection q a^4 / D, moments M = moment q a^2, at the centre but edge_moment.
struct PlateCoefficients {
  double deflection = 0.0;
  double moment_along_short = 0.0;  ///< bends the short span; the larger
  double moment_along_long = 0.0;
  double edge_moment = 0.0;  ///< at the middle of the long edge, at most zero; 0 when simply supported
};

/// Small deflections of a thin plate. Simply supported: Levy's series (Timoshenko and Woinowsky-Krieger,
/// Theory of Plates and Shells, 1959, section 30). Clamped: the simply supported plate with edge moments that
/// bring the slope of the edges to zero (same, section 44). From memory; held against their Tables 8 and 35
/// for a Poisson ratio of 0.3: within half the last digit but for listed rows. long_over_short 1 to 1000,
/// poisson_ratio 0 to 0.5.
PlateCoefficients plate_coefficients(double long_over_short, double poisson_ratio, PlateEdges edges);

/// Deflection coefficient of a force at the centre, w = c P a^2 / D, simply supported (same, section 34).
double central_force_coefficient(double long_over_short);

/// What a sheet is designed for. Our convention, no source: 50 Pa is the gust that reaches the sheet through
/// a leaky window in a wind of about 9 m/s; 50 N a hand that wipes or leans lightly.
struct DesignLoad {
  double gust_Pa = 50.0;      ///< 0 to 2000
  double hand_push_N = 50.0;  ///< 0 to 1000
};

struct PlateAnswer {
  double deflection_m = 0.0;      ///< of the centre
  double stress_Pa = 0.0;         ///< largest, in bending
  bool large_deflection = false;  ///< over one thickness: membrane effects, left out, stiffen it; upper bound
};

/// Sheet of width x height (0.02 to 5 m) and thickness (1e-5 to 0.05 m) under a uniform pressure (0 to
/// 2000 Pa), with the material's best modulus. Short-time stiffness: creep under lasting load is left out.
PlateAnswer plate_under_pressure(SheetKind sheet, double width_m, double height_m, double thickness_m,
                                 double pressure_Pa, PlateEdges edges = PlateEdges::simply_supported);

/// Deflection of the centre under a force there, simply supported, m. force 0 to 1000 N.
double deflection_under_push_m(SheetKind sheet, double width_m, double height_m, double thickness_m,
                               double force_N);

/// Sag of the sheet's edge between two fixings, m, when pressure draws it off the frame: a strip half a
/// spacing wide as a beam on two supports that carries the pressure on half the short side. Our convention,
/// no source; an upper bound. spacing 0.02 to 5 m.
double edge_lift_m(SheetKind sheet, double short_side_m, double thickness_m, double spacing_m,
                   double pressure_Pa);

/// Largest deflection allowed, as a share of the short side: a fiftieth, our convention. With 50 Pa it keeps
/// the trade's 4 mm to about 1.0 x 1.5 m in acrylic.
inline constexpr double deflection_limit_share = 1.0 / 50.0;

/// Thicknesses commonly stocked, m, thinnest first (common practice, no source); none for film.
std::vector<double> stocked_thicknesses_m(SheetKind sheet);

struct ThicknessAdvice {
  double trade_thickness_m = 0.0;           ///< 4 mm, 5 mm when a side exceeds 2 m
  std::optional<double> least_thickness_m;  ///< stocked, within limit and stress; none does: no value
  double limit_m = 0.0;                     ///< deflection allowed
  double trade_deflection_m = 0.0;          ///< of the trade's thickness
  std::string reason;                       ///< one sentence, where the two differ; else empty
};

/// Least stocked thickness, not under 3 mm, that keeps the deflection under a gust to the limit and the
/// stress to the material's design stress, simply supported. Not for film, which is held as a membrane
/// (throws).
ThicknessAdvice least_thickness(SheetKind sheet, double width_m, double height_m,
                                const DesignLoad& load = {});

}  // namespace dewgap
