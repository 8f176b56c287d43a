// How far the days of a month lie about its mean: shared by degree-days and the synthesised year. Private to
// climate/.
#pragma once

#include <cmath>

#include "dewgap/climate/places_kernel.hpp"

namespace dewgap::climate {

inline constexpr double erbs_a = 1.698;  // Erbs, Klein and Beckman 1983, from memory

/// Spread that scales Erbs, Klein and Beckman's distribution, K: sm sqrt(N), sm = 1.45 - 0.0290 tm + 0.0664
/// sy. From memory.
inline double erbs_scale_K(double mean_C, double days, double yearly_sd_K) {
  return (1.45 - 0.0290 * mean_C + 0.0664 * yearly_sd_K) * std::sqrt(days);
}

/// Standard deviation of the days, K: that of the logistic distribution which their formula integrates.
inline double spread_of_days_K(double mean_C, double days, double yearly_sd_K) {
  return erbs_scale_K(mean_C, days, yearly_sd_K) * pi / (2.0 * std::sqrt(3.0) * erbs_a);
}

}  // namespace dewgap::climate
