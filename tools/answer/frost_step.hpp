// What to do after the first frosty mornings.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "dewgap/assessment/mend_first.hpp"
#include "dewgap/assessment/vent_advice.hpp"

namespace dewgap::tools {

enum class FrostStep {
  keep,              ///< as it hangs
  keep_and_look,     ///< nothing is settled: more mornings
  keep_and_dry,      ///< mist on most mornings, held to be harmless: dry what can be reached, more mornings
  look_after_frost,  ///< no morning was frosty: nothing is decided
  mend_first,        ///< water gets in that no tape mends
  open_breaks,       ///< cut the breaks that the year favours
  take_down,         ///< dry the window before anything else
  call               ///< another way to make it, more than a knife can do
};

/// What the step hangs on. Mornings are those used: frosty nights.
struct FrostFindings {
  bool water_ran = false;  ///< on any morning, frosty or not
  std::size_t mornings = 0;
  std::size_t misty = 0;       ///< of them with mist over a third of the pane or more
  bool against_model = false;  ///< it gave what was seen under 10 %
  bool water_gets_in = false;  ///< rain let in, wet timber
  bool has_shares = true;      ///< the year has an answer
  bool settled = true;
  double best_share = 0.0;      ///< of plausible cases in which the choice stays acceptable
  double hangs_share = 0.0;     ///< in which what hangs there does
  bool hangs_wins = false;      ///< it is the choice or ties with it
  bool breaks_are_new = false;  ///< the choice has breaks, what hangs has none

  bool mostly_misty() const { return misty >= 2 && 2 * misty >= mornings; }
};
FrostFindings frost_findings(const VentAdvice& after, VentOption fitted, const std::vector<Mend>& mends);

/// What is seen outranks what is worked out. The first row that holds:
///
///   water ran                                                            take_down
///   no morning used                                                      look_after_frost
///   the best way acceptable in under half the cases,
///     unless the mornings, clear ones, go against the model              take_down
///   mostly misty, what hangs short of a FIT, new breaks not settled on   take_down
///   water gets in                                                        mend_first
///   mostly misty, settled on new breaks                                  open_breaks
///   mostly misty                                                         keep_and_dry
///   no shares, not settled, or against the model                         keep_and_look
///   what hangs is a FIT, no mist over a third of the pane                keep
///   what hangs is a FIT, or wins                                         keep_and_look
///   settled on new breaks                                                open_breaks
///   else                                                                 call
///
/// Mostly misty: on at least two mornings and half of them. Our convention.
FrostStep frost_step(const FrostFindings& found);

/// For people: "KEEP IT AS IT IS", and what to do in a sentence or two.
std::string_view step_words(FrostStep step);
std::string step_sentence(FrostStep step, VentOption choice);
/// For JSON: "keep".
std::string_view json_word(FrostStep step);

/// Plausible cases that must stay acceptable for a FIT (vent_advice.hpp).
inline constexpr double share_of_a_fit = 0.70;

}  // namespace dewgap::tools
