// What is claimed of one simulated window after each stage, from windows of its part of the bank that are
// never judged themselves. (Leaving out the judged window alone would make claims and truths hang together:
// each claim would be lower by one case where it comes true.)
#pragma once

#include <optional>
#include <vector>

#include "calibration/observed.hpp"

namespace dewgap::calibration {

/// Whose likelihoods weigh the other windows: as the library states them, or the chance that the answers were
/// drawn with. The second is calibrated but for the bank's own size: it says how well the first could do.
enum class Weighing { stated, chance };
inline constexpr std::array<Weighing, 2> all_weighings{Weighing::stated, Weighing::chance};

/// Which evidence speaks after a stage: its own and all before it, or its own alone.
enum class Hearing { all_so_far, alone };
inline constexpr std::array<Hearing, 2> all_hearings{Hearing::all_so_far, Hearing::alone};

/// A share that was claimed, and whether it came true.
struct Claim {
  double share = 0.0;
  bool came_true = false;
};

/// All claims of one window after one stage.
struct Claims {
  double effective = 0.0;  ///< cases, Kish's
  std::array<std::optional<Claim>, every_vent_option.size()>
      acceptable{};                 ///< of the options that are offered
  Claim chosen;                     ///< of the option that would be chosen
  double best_share_of_best = 0.0;  ///< claimed best share of the truly best options, mean
  double rank_of_best = 0.0;        ///< mean over the truly best options of the place by best share, from 1
  double place_by_chance = 0;       ///< what that would be in any order: the middle place
  bool first_is_best = false;       ///< whether the option with the largest best share is truly best
};

/// Log-likelihoods to weights of sum 1; windows before `first_case` have none.
std::vector<double> weights_of_cases(std::size_t first_case, const std::vector<double>& log_likelihood);

/// Claims of window `truth`, one of those before `first_case`, from the windows from there on.
Claims claims_of(const BankPart& part, std::size_t truth, std::size_t first_case,
                 const std::vector<double>& log_likelihood);

/// By stage.
std::vector<Claims> staged_claims(const BankPart& part, std::size_t truth, std::size_t first_case,
                                  const Observed& observed, Weighing weighing, Hearing hearing);

}  // namespace dewgap::calibration
