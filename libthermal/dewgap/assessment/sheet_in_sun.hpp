// How hot the surveyed window's sheet gets in full sun, against what its material bears for good.
#pragma once

#include <optional>
#include <string>

#include "dewgap/assessment/sun_on_sheet.hpp"
#include "dewgap/assessment/survey.hpp"

namespace dewgap {

/// Whether a blind or shutter hangs before the sheet.
enum class BlindThere { not_known, no, yes };

struct SheetInSun {
  /// blocks: above the limit as the window is; mind: within 10 K of it, or above it or near it behind a dark
  /// blind where nobody has looked whether there is one.
  FitSeverity severity = FitSeverity::fine;
  std::string sentence;
  double sheet_C = 0.0;  ///< hotter face, as the window is: behind the dark blind where there is one
  double limit_C = 0.0;
  double margin_K = 0.0;             ///< limit less sheet_C
  double without_blind_C = 0.0;      ///< the same face with nothing before it
  double behind_dark_blind_C = 0.0;  ///< with a dark blind drawn over it, there or not
  BlindThere blind = BlindThere::not_known;
};

/// The still summer's day of SunOnSheetInput, whatever the window faces: 900 W/m2, 30 C outdoors, 28 C in the
/// room. The gap and the old glass are the survey's or their defaults, the height the opening's. A blind or
/// shutter is taken as dark and drawn, and at its surveyed clearance, but no nearer than 3 mm and no farther
/// than 250 mm; 30 mm where there is none to measure. A blind left between the old glass and the sheet is not
/// asked for and left out. For a valid survey; throws CalculationFailed when a balance does not settle.
SheetInSun sheet_in_sun(const Survey& survey, const std::optional<double>& planned_thickness_m = {});

}  // namespace dewgap
