// A sheet's temperature in the sun against what its material bears. The temperature itself comes from
// assessment/sun_on_sheet.hpp.
#pragma once

#include <string>

#include "dewgap/fitting/fit_check.hpp"
#include "dewgap/materials/materials.hpp"

namespace dewgap {

/// How an acrylic sheet was made; of no consequence for the others.
enum class SheetGrade { not_known, extruded, cast };

/// Temperature that the material bears for good, C: acrylic 70 extruded or not known, 80 cast; the others the
/// low end of their range in materials.csv.
double lasting_limit_C(SheetKind sheet, SheetGrade grade = SheetGrade::not_known);

struct SunFinding {
  FitSeverity severity = FitSeverity::fine;  ///< blocks: above the limit; mind: within 10 K of it
  std::string sentence;
  double temperature_C = 0.0;
  double limit_C = 0.0;
  double margin_K = 0.0;  ///< limit less temperature
};

/// temperature -60 to 200 C. The margin of 10 K within which it is 'mind' is our convention: a radiator below
/// and uneven shade are not in the temperature.
SunFinding sun_finding(double temperature_C, SheetKind sheet, SheetGrade grade = SheetGrade::not_known);

}  // namespace dewgap
