// From many years of every option to one choice, and how clear it is. Internal to assessment/.
#pragma once

#include <string>
#include <vector>

#include "dewgap/assessment/year_run_kernel.hpp"

namespace dewgap {

// Our convention: options of one case in the same band share the win within the larger of the two.
inline constexpr double heat_tie_kWh = 3.0;
inline constexpr double heat_tie_share = 0.02;  ///< of the best one's heat in the season

bool is_acceptable(const OptionYear& year);
const OptionYear& year_of(const SampleYear& sample, VentOption option);

/// Which of the options is best in one case or shares the win: band first, then heat. In the order given.
std::vector<bool> winners(const SampleYear& sample, const std::vector<VentOption>& options);

/// Shares of the weight of all cases; options in the order given.
struct VentChoice {
  VentOption choice = VentOption::sealed;
  std::size_t place = 0;          ///< of the choice in the options
  std::vector<std::size_t> tied;  ///< places of the others that tie with it
  std::vector<double> acceptable_share;
  std::vector<double> best_share;
  double share() const { return acceptable_share[place]; }
};
/// Most acceptable wins; of those within the tie of it the first in the options' order. Weep holes to
/// outdoors are weighed only where no other option reaches enough_share.
VentChoice choose(const std::vector<SampleYear>& years, const std::vector<double>& weights,
                  const std::vector<VentOption>& options);

/// Why the choice is not clear yet, a clause; empty when it is (see vent_advice.hpp).
std::string unclear_because(const std::vector<SampleYear>& years, const std::vector<double>& counts,
                            const std::vector<VentOption>& options, const VentChoice& choice);

}  // namespace dewgap
