#include "tools/answer/frost_step.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <iterator>

#include "tools/answer/words.hpp"

namespace dewgap::tools {
namespace {

constexpr double half_of_cases = 0.5;

bool is_breaks(VentOption option) {
  return option == VentOption::breaks_bottom || option == VentOption::breaks_bottom_longer ||
         option == VentOption::breaks_bottom_and_top;
}

double acceptable_share(const VentAdvice& advice, VentOption option) {
  const auto* found = option_of(advice, option);
  return found == nullptr ? 0.0 : found->acceptable_share;
}

bool is_fit(const FrostFindings& found) {
  return found.hangs_share >= share_of_a_fit;
}

/// A year that clear mornings go against is no reason to take a dry sheet down.
bool no_way_is_good(const FrostFindings& found) {
  const bool clear_against_it = found.against_model && found.misty == 0;
  return found.has_shares && found.best_share < half_of_cases && !clear_against_it;
}

bool settled_on_breaks(const FrostFindings& found) {
  return found.has_shares && found.settled && !found.against_model && found.breaks_are_new;
}

bool is_open(const FrostFindings& found) {
  return !found.has_shares || !found.settled || found.against_model;
}

struct Row {
  bool (*holds)(const FrostFindings&);
  FrostStep step;
};

/// In the order of the header's table.
constexpr std::array<Row, 12> rows{
    {{[](const FrostFindings& f) { return f.water_ran; }, FrostStep::take_down},
     {[](const FrostFindings& f) { return f.mornings == 0; }, FrostStep::look_after_frost},
     {no_way_is_good, FrostStep::take_down},
     {[](const FrostFindings& f) {
        return f.mostly_misty() && f.has_shares && !is_fit(f) && !settled_on_breaks(f);
      },
      FrostStep::take_down},
     {[](const FrostFindings& f) { return f.water_gets_in; }, FrostStep::mend_first},
     {[](const FrostFindings& f) { return f.mostly_misty() && settled_on_breaks(f); },
      FrostStep::open_breaks},
     {[](const FrostFindings& f) { return f.mostly_misty(); }, FrostStep::keep_and_dry},
     {is_open, FrostStep::keep_and_look},
     {[](const FrostFindings& f) { return is_fit(f) && f.misty == 0; }, FrostStep::keep},
     {[](const FrostFindings& f) { return is_fit(f) || f.hangs_wins; }, FrostStep::keep_and_look},
     {settled_on_breaks, FrostStep::open_breaks},
     {[](const FrostFindings&) { return true; }, FrostStep::call}}};

}  // namespace

FrostFindings frost_findings(const VentAdvice& after, VentOption fitted, const std::vector<Mend>& mends) {
  FrostFindings found;
  for (const auto& morning : after.mornings) {
    found.water_ran = found.water_ran || morning.reading.mist == WinterReading::Mist::runs;
    found.mornings += morning.used ? 1U : 0U;
    found.misty += morning.used && is_large(morning.reading.mist) ? 1U : 0U;
  }
  const auto chance = after.mornings_foretold_share;
  found.against_model = chance && *chance < least_foretold_share;
  found.water_gets_in =
      std::any_of(mends.begin(), mends.end(), [](const Mend& mend) { return mend.kind == MendKind::water; });
  found.has_shares = !after.options.empty();
  found.settled = after.settled;
  found.best_share = acceptable_share(after, after.choice);
  found.hangs_share = acceptable_share(after, fitted);
  found.hangs_wins =
      after.choice == fitted || std::find(after.tied.begin(), after.tied.end(), fitted) != after.tied.end();
  found.breaks_are_new = is_breaks(after.choice) && !is_breaks(fitted);
  return found;
}

FrostStep frost_step(const FrostFindings& found) {
  return std::find_if(rows.begin(), std::prev(rows.end()), [&](const Row& row) { return row.holds(found); })
      ->step;
}

std::string_view step_words(FrostStep step) {
  switch (step) {
    case FrostStep::keep:
      return "KEEP IT AS IT IS";
    case FrostStep::keep_and_look:
      return "KEEP IT, AND LOOK AGAIN";
    case FrostStep::keep_and_dry:
      return "KEEP IT, DRY IT AND LOOK AGAIN";
    case FrostStep::look_after_frost:
      return "LOOK AGAIN AFTER A FROST";
    case FrostStep::mend_first:
      return "MEND FIRST, THEN LOOK AGAIN";
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
    case FrostStep::keep_and_dry:
      return "Wipe the sill dry, feel the rail, see if the mist is gone by noon; note three more mornings. "
             "Drops that run or wet timber: sheet off.";
    case FrostStep::look_after_frost:
      return "None of the mornings followed a frosty night, so they decide nothing.";
    case FrostStep::mend_first:
      return "Until that is done no morning tells what the sheet does; drops or wet timber behind it: sheet "
             "off.";
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
    case FrostStep::keep_and_dry:
      return "keep_dry_and_look_again";
    case FrostStep::look_after_frost:
      return "look_again_after_a_frost";
    case FrostStep::mend_first:
      return "mend_first";
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
