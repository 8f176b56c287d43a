// The first-winter check on the vent decision's page.
#include <fmt/format.h>

#include <algorithm>

#include "tools/answer/figures_text.hpp"
#include "tools/answer/text_vent_kernel.hpp"
#include "tools/answer/words.hpp"

namespace dewgap::tools::parts {
namespace {

std::string share_as_it_hangs(const VentAdvice& advice, VentOption fitted) {
  const auto* option = option_of(advice, fitted);
  return option == nullptr ? "not settled" : fmt::format("{} ok", share_text(option->acceptable_share));
}

}  // namespace

void VentPage::frost_check() {
  const auto& check = *job_.frost_check;
  const auto& found = check.found;
  paragraph(fmt::format("{}. {}", step_words(check.step), step_sentence(check.step, advice().choice)), "",
            "  ");
  if (found.misty > 0)
    paragraph(fmt::format("Mist over a third of the pane or more on {} of {} frosty mornings.", found.misty,
                          found.mornings),
              "", "  ");
  if (found.against_model)
    paragraph(fmt::format("THE MORNINGS GO AGAINST THE MODEL: it gave what was seen a chance of {}.",
                          share_text(advice().mornings_foretold_share.value_or(0.0))),
              "", "  ");
  mornings_left_out();
  if (found.mornings == 0) {
    line("Mornings used: none. The year without them:");
    return;
  }
  paragraph(
      fmt::format("As it hangs ({}): {} before these mornings, {} with them.", name_of(check.fitted),
                  share_as_it_hangs(check.before, check.fitted), share_as_it_hangs(advice(), check.fitted)),
      "", "  ");
  line(fmt::format("Mornings used: {}. The year with them:", found.mornings));
}

/// The first few by name, each with its reason.
void VentPage::mornings_left_out() {
  constexpr std::size_t most_named = 3;
  std::size_t left_out = 0;
  for (const auto& morning : advice().mornings) {
    if (morning.used) continue;
    if (++left_out <= most_named)
      paragraph(fmt::format("Left out: {}, {}.", morning.reading.date, morning.why_not), "", "  ");
  }
  if (left_out > most_named) line(fmt::format("Left out besides: {} mornings more.", left_out - most_named));
}

}  // namespace dewgap::tools::parts
