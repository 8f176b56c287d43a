// Lines of equal temperature through a solved section.
#pragma once

#include <vector>

#include "dewgap/window/section_result.hpp"

namespace dewgap::tools {

using SectionLine = std::vector<SectionPoint>;

/// The isotherm through the solved cells, in as few lines as it falls into: where the bilinear field of each
/// cell crosses the level on its sides (marching squares), straight in between. A saddle is parted by the
/// value at its middle. A closed line ends where it begins.
std::vector<SectionLine> isotherm(const TemperatureField& field, double level_C);

/// The parts of a line within a rectangle.
std::vector<SectionLine> clipped(const SectionLine& line, SectionPoint low, SectionPoint high);

/// The same line within `tolerance_m` with as few of its points as that takes (Douglas and Peucker 1973).
SectionLine simplified(const SectionLine& line, double tolerance_m);

/// Levels at a round step strictly between two temperatures, `fewest` to about twice as many.
struct IsothermLevels {
  double step_K = 1.0;
  std::vector<double> at_C;
};
IsothermLevels isotherm_levels(double low_C, double high_C, int fewest = 7);

}  // namespace dewgap::tools
