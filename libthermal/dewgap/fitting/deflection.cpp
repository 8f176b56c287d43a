#include "dewgap/fitting/deflection.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "dewgap/errors.hpp"
#include "dewgap/fitting/plate_series_kernel.hpp"
#include "dewgap/fitting/practice.hpp"
#include "dewgap/fitting/text_kernel.hpp"
#include "dewgap/numerics/levy_series.hpp"

namespace dewgap {
namespace {

constexpr PermittedRange side_range_m{0.02, 5.0};
constexpr PermittedRange thickness_range_m{1e-5, 0.05};
constexpr PermittedRange pressure_range_Pa{0.0, 2000.0};

/// D = E t^3 / (12 (1 - nu^2)), N m.
double stiffness_Nm(const SheetProperties& sheet, double thickness_m) {
  return sheet.young_modulus_Pa.best * std::pow(thickness_m, 3) /
         (12.0 * (1.0 - sheet.poisson_ratio * sheet.poisson_ratio));
}

void require_plate(double width_m, double height_m, double thickness_m) {
  require_in_range(width_m, side_range_m, "width_m", "m");
  require_in_range(height_m, side_range_m, "height_m", "m");
  require_in_range(thickness_m, thickness_range_m, "thickness_m", "m");
}

double trade_thickness_m(double longer_m) {
  return longer_m > practice::long_side_m ? practice::long_sheet_thickness_m : practice::sheet_thickness_m;
}

std::string thickness_reason(const ThicknessAdvice& advice, const DesignLoad& load) {
  const auto bends =
      fitting::bends_text(advice.trade_thickness_m, advice.trade_deflection_m, advice.limit_m, load.gust_Pa);
  if (!advice.least_thickness_m) {
    return bends + "no stocked thickness is enough.";
  }
  return *advice.least_thickness_m > advice.trade_thickness_m
             ? bends + fitting::whole_mm_text(*advice.least_thickness_m) + " sheet."
             : std::string();
}

}  // namespace

PlateCoefficients plate_coefficients(double long_over_short, double poisson_ratio, PlateEdges edges) {
  require_in_range(long_over_short, {1.0, 1000.0}, "long_over_short", "");
  require_in_range(poisson_ratio, {0.0, 0.5}, "poisson_ratio", "");
  switch (edges) {
    case PlateEdges::simply_supported:
      return fitting::simply_supported_plate(long_over_short, poisson_ratio);
    case PlateEdges::clamped:
      return fitting::clamped_plate(long_over_short, poisson_ratio);
  }
  throw InvalidInput("edges", "is not a known kind");
}

double central_force_coefficient(double long_over_short) {
  require_in_range(long_over_short, {1.0, 1000.0}, "long_over_short", "");
  return numerics::levy_central_force(long_over_short);
}

PlateAnswer plate_under_pressure(SheetKind sheet, double width_m, double height_m, double thickness_m,
                                 double pressure_Pa, PlateEdges edges) {
  require_plate(width_m, height_m, thickness_m);
  require_in_range(pressure_Pa, pressure_range_Pa, "pressure_Pa", "Pa");
  const auto [a, b] = std::minmax(width_m, height_m);
  const auto properties = sheet_properties(sheet);
  const auto plate = plate_coefficients(b / a, properties.poisson_ratio, edges);
  PlateAnswer answer;
  // w = alpha q a^4 / D
  answer.deflection_m =
      plate.deflection * pressure_Pa * std::pow(a, 4) / stiffness_Nm(properties, thickness_m);
  // sigma = 6 M / t^2
  const double moment = std::max({plate.moment_along_short, plate.moment_along_long, -plate.edge_moment});
  answer.stress_Pa = 6.0 * moment * pressure_Pa * a * a / (thickness_m * thickness_m);
  answer.large_deflection = answer.deflection_m > thickness_m;
  return answer;
}

double deflection_under_push_m(SheetKind sheet, double width_m, double height_m, double thickness_m,
                               double force_N) {
  require_plate(width_m, height_m, thickness_m);
  require_in_range(force_N, {0.0, 1000.0}, "force_N", "N");
  const auto [a, b] = std::minmax(width_m, height_m);
  return central_force_coefficient(b / a) * force_N * a * a /
         stiffness_Nm(sheet_properties(sheet), thickness_m);
}

double edge_lift_m(SheetKind sheet, double short_side_m, double thickness_m, double spacing_m,
                   double pressure_Pa) {
  require_plate(short_side_m, short_side_m, thickness_m);
  require_in_range(spacing_m, side_range_m, "spacing_m", "m");
  require_in_range(pressure_Pa, pressure_range_Pa, "pressure_Pa", "Pa");
  const double load_N_m = 0.5 * pressure_Pa * short_side_m;
  const double inertia_m4 = 0.5 * spacing_m * std::pow(thickness_m, 3) / 12.0;
  // beam on two supports: 5 p s^4 / (384 E I)
  return 5.0 * load_N_m * std::pow(spacing_m, 4) /
         (384.0 * sheet_properties(sheet).young_modulus_Pa.best * inertia_m4);
}

std::vector<double> stocked_thicknesses_m(SheetKind sheet) {
  switch (sheet) {
    case SheetKind::acrylic:
    case SheetKind::polycarbonate:
      return {0.002, 0.003, 0.004, 0.005, 0.006, 0.008, 0.010, 0.012};
    case SheetKind::petg:
      return {0.002, 0.003, 0.004, 0.005, 0.006, 0.008};
    case SheetKind::glass:
      return {0.003, 0.004, 0.006, 0.008, 0.010, 0.012};
    case SheetKind::pet_film:
      return {};
  }
  throw InvalidInput("kind of sheet", "is not a known one");
}

ThicknessAdvice least_thickness(SheetKind sheet, double width_m, double height_m, const DesignLoad& load) {
  if (sheet == SheetKind::pet_film) {
    throw InvalidInput("sheet", "is a film, which does not hold by bending");
  }
  require_in_range(load.gust_Pa, pressure_range_Pa, "gust_Pa", "Pa");
  constexpr double thinnest_m = 0.003;
  ThicknessAdvice advice{.trade_thickness_m = trade_thickness_m(std::max(width_m, height_m)),
                         .least_thickness_m = {},
                         .limit_m = deflection_limit_share * std::min(width_m, height_m),
                         .reason = {}};
  advice.trade_deflection_m =
      plate_under_pressure(sheet, width_m, height_m, advice.trade_thickness_m, load.gust_Pa).deflection_m;
  for (const double thickness_m : stocked_thicknesses_m(sheet)) {
    const auto answer = plate_under_pressure(sheet, width_m, height_m, thickness_m, load.gust_Pa);
    const bool enough =
        answer.deflection_m <= advice.limit_m && answer.stress_Pa <= design_stress_Pa(sheet).best;
    if (enough && thickness_m >= thinnest_m) {
      advice.least_thickness_m = thickness_m;
      break;
    }
  }
  advice.reason = thickness_reason(advice, load);
  return advice;
}

}  // namespace dewgap
