// What to do after the first frosty mornings.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "dewgap/assessment/vent_advice.hpp"

namespace dewgap::tools {

enum class FrostStep {
  keep,           ///< as it hangs
  keep_and_look,  ///< nothing is settled: more mornings
  open_breaks,    ///< cut the breaks that the year favours
  take_down,      ///< dry the window before anything else
  call            ///< another way to make it, more than a knife can do
};

/// Water that ran takes the sheet down, as the first-frost line of `assess` says; so does a year in which no
/// way to tape it stays acceptable in half the plausible cases. What hangs stays while it is the choice, ties
/// with it or stays acceptable in the share that makes a FIT. Else breaks are opened where they are the
/// choice, and what takes more than a knife is for whoever fitted it. Our convention.
FrostStep frost_step(const VentAdvice& after, VentOption fitted, const std::vector<WinterReading>& readings);

/// For people: "KEEP IT AS IT IS", and what to do in a sentence.
std::string_view step_words(FrostStep step);
std::string step_sentence(FrostStep step, VentOption choice);
/// For JSON: "keep".
std::string_view json_word(FrostStep step);

/// Plausible cases that must stay acceptable for a FIT (vent_advice.hpp).
inline constexpr double share_of_a_fit = 0.70;

}  // namespace dewgap::tools
