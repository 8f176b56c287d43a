// All claims of the judged windows, and how they held.
#pragma once

#include "calibration/reliability.hpp"

namespace dewgap::calibration {

/// All that is claimed of the judged windows, by weighing, window and stage.
struct Judged {
  std::array<std::vector<std::vector<Claims>>, all_weighings.size()> claims;
  double least_effective = 50.0;  ///< with fewer cases nothing is claimed
};
const std::vector<std::vector<Claims>>& claims_under(const Judged& judged, Weighing weighing);

/// Within sampling error: chance gives so large a chi-square at least once in a thousand times, and no bin is
/// off by more sampling errors.
inline constexpr double least_probability = 0.001;
inline constexpr double most_deviation = 3.3;

/// One stage under one weighing.
struct StageSummary {
  std::size_t windows = 0;
  std::size_t settled = 0;
  double median_effective = 0.0;  ///< cases, of those settled
  std::array<Reliability, every_vent_option.size()> options;
  Reliability chosen;
  double brier = 0.0;  ///< of all options' claims
  double largest_deviation() const;
  bool holds() const;  ///< all options' claims and the chosen one's are within sampling error
};
StageSummary summary_of(const Judged& judged, Weighing weighing, Stage stage);

}  // namespace dewgap::calibration
