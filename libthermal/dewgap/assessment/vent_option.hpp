// The ways in which tape and old window can be made, and what an observation did to an answer: words that the
// answer for a year and the whole answer share.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <iterator>
#include <optional>
#include <string>
#include <string_view>

namespace dewgap {

/// How tape and old window are made. The steady check compares sealed, breaks_bottom and
/// breaks_bottom_and_top; a year of hours compares all. Lengths and heights are the trade's defaults.
enum class VentOption {
  sealed,
  breaks_bottom,          ///< two of 20 mm at the bottom
  breaks_bottom_longer,   ///< two of 100 mm at the bottom
  breaks_bottom_and_top,  ///< two of 20 mm at the bottom and two at the top
  weep_to_outdoors,       ///< sealed to the room; two 6 mm holes through the bottom rail to outdoors
  joints_stripped,        ///< sealed to the room; the old window's joints draught-stripped
  off_in_summer           ///< sealed; taken off in spring, the window dried, put back in autumn
};
std::string_view name_of(VentOption option);

/// In the order in which ties are won: the simplest first.
inline constexpr std::array<VentOption, 7> every_vent_option{VentOption::sealed,
                                                             VentOption::breaks_bottom,
                                                             VentOption::breaks_bottom_longer,
                                                             VentOption::breaks_bottom_and_top,
                                                             VentOption::weep_to_outdoors,
                                                             VentOption::joints_stripped,
                                                             VentOption::off_in_summer};
/// Where an option stands among them.
constexpr std::size_t place_of(VentOption option) {
  const auto* const place = std::find(every_vent_option.begin(), every_vent_option.end(), option);
  return static_cast<std::size_t>(std::distance(every_vent_option.begin(), place));
}

/// Evidence used, and how far it moved the answer.
struct EvidenceUse {
  std::string observation;
  std::string answer;
  bool used = false;
  std::string why_not;           ///< when not used
  double effective_share = 1.0;  ///< effective sample share left by this observation alone
  bool fits_the_rest = true;  ///< false: what the rest makes plausible would hardly have been seen like this
  /// How likely this answer was held before it was seen: its mean probability, of all possible answers, over
  /// the cases as the evidence listed before it weighs them. No value for what is not used, nor for readings
  /// of a number (hygrometer, feelers), which have a density.
  std::optional<double> foretold_share = std::nullopt;
};

}  // namespace dewgap
