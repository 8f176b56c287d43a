// One page to fill in by hand at the window.
#pragma once

#include <string>

#include "tools/drawing/svg.hpp"
#include "tools/job/field.hpp"

namespace dewgap::tools {

/// One A4 page of HTML, black and white: every field of the short job in the order of its file, with boxes to
/// tick or room to write, its key beside it, and drawings of where to measure and what to look for. Made from
/// the table, so that a key that is added there stands on the card.
std::string survey_card(const FieldTable& table);

/// Smallest text on the card, pt.
inline constexpr double card_text_pt = 7.5;

/// The drawings, by the section beside which they stand; for tests that no text is clipped.
struct CardDrawing {
  std::string_view section;
  SvgDrawing drawing;
};
std::vector<CardDrawing> card_drawings();

}  // namespace dewgap::tools
