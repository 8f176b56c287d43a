// What each prior does to a year, and whether it does anything.
#pragma once

#include <string>
#include <vector>

#include "calibration/bank.hpp"

namespace dewgap::calibration {

/// Squared rank correlations of one unknown: mean over the parts of the bank, and the largest with its part.
struct PriorEffect {
  Unknown unknown{};
  double on_hours_wet = 0.0;  ///< sealed
  double on_hours_wet_with_breaks = 0.0;
  double on_heat = 0.0;  ///< sealed
  double largest = 0.0;  ///< of all these
  std::size_t part_of_largest = 0;
  bool varies = true;  ///< in every part
};
std::vector<PriorEffect> prior_effects(const std::vector<BankPart>& bank);

/// What one in a hundred unknowns without effect exceeds in `count` windows, by Student's t at large count.
double squared_correlation_by_chance(std::size_t count);

/// Rows of priors.csv that no survey can call for: 'unknown variant'.
std::vector<std::string> rows_never_sampled();

}  // namespace dewgap::calibration
