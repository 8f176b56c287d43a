#include "tools/answer/frost_step.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "tools/answer/words.hpp"

namespace dewgap::tools {
namespace {

constexpr double half_of_cases = 0.5;

bool is_breaks(VentOption option) {
  return option == VentOption::breaks_bottom || option == VentOption::breaks_bottom_longer ||
         option == VentOption::breaks_bottom_and_top;
}

bool has_run(const WinterReading& reading) {
  return reading.mist == WinterReading::Mist::runs;
}

double acceptable_share(const VentAdvice& advice, VentOption option) {
  const auto* found = option_of(advice, option);
  return found == nullptr ? 0.0 : found->acceptable_share;
}

bool stays(const VentAdvice& after, VentOption fitted) {
  const bool ties = std::find(after.tied.begin(), after.tied.end(), fitted) != after.tied.end();
  return after.choice == fitted || ties || acceptable_share(after, fitted) >= share_of_a_fit;
}

}  // namespace

FrostStep frost_step(const VentAdvice& after, VentOption fitted, const std::vector<WinterReading>& readings) {
  if (std::any_of(readings.begin(), readings.end(), has_run)) return FrostStep::take_down;
  if (after.options.empty()) return FrostStep::keep_and_look;
  if (acceptable_share(after, after.choice) < half_of_cases) return FrostStep::take_down;
  if (stays(after, fitted)) return FrostStep::keep;
  if (!after.settled) return FrostStep::keep_and_look;
  return is_breaks(after.choice) && !is_breaks(fitted) ? FrostStep::open_breaks : FrostStep::call;
}

std::string_view step_words(FrostStep step) {
  switch (step) {
    case FrostStep::keep:
      return "KEEP IT AS IT IS";
    case FrostStep::keep_and_look:
      return "KEEP IT, AND LOOK AGAIN";
    case FrostStep::open_breaks:
      return "OPEN BREAKS IN THE TAPE";
    case FrostStep::take_down:
      return "TAKE IT DOWN AND DRY THE WINDOW";
    case FrostStep::call:
      return "CALL WHOEVER FITTED IT";
  }
  return {};
}

std::string step_sentence(FrostStep step, VentOption choice) {
  switch (step) {
    case FrostStep::keep:
      return "Nothing to do but look again after the next hard frost.";
    case FrostStep::keep_and_look:
      return "The mornings so far do not settle it: note three more, with the room's humidity.";
    case FrostStep::open_breaks:
      return fmt::format("Cut the tape: {}", tape_order(choice));
    case FrostStep::take_down:
      return "Sheet off today. Wipe the glass and air the room until timber and sill are dry, then ask again "
             "before it goes back.";
    case FrostStep::call:
      return fmt::format("It wants to be made another way: {}.", name_of(choice));
  }
  return {};
}

std::string_view json_word(FrostStep step) {
  switch (step) {
    case FrostStep::keep:
      return "keep";
    case FrostStep::keep_and_look:
      return "keep_and_look_again";
    case FrostStep::open_breaks:
      return "open_breaks";
    case FrostStep::take_down:
      return "take_down_and_dry";
    case FrostStep::call:
      return "call";
  }
  return "call";
}

}  // namespace dewgap::tools
