// A window's weighted plausible cases of heat and draught, kept so that several windows can be added up.
#pragma once

#include <array>
#include <vector>

#include "dewgap/assessment/priors.hpp"

namespace dewgap {

/// One figure over the cases, and how it hangs on what is not known.
struct SampledFigure {
  std::vector<double> values;  ///< a case each
  /// Signed weighted rank correlation with each unknown, -1 to 1; 0 for those of a year of hours alone.
  std::array<double, unknown_count> rank_correlation{};
};

/// With the vent option of the answer. Equally long; `weights` sum to 1.
struct SavingSamples {
  std::vector<double> weights;
  SampledFigure heat_saved_kWh;           ///< a year, as SideBySide::heat_saved_kWh
  SampledFigure draught_cut_m3_h;         ///< winter mean, before less after, counted once
  SampledFigure ventilation_needed_m3_h;  ///< of that, what ventilation must still bring in
};

}  // namespace dewgap
