// The window's edge by conduction, where the job asks for it.
#include <fmt/format.h>

#include "tools/answer/figures_text.hpp"
#include "tools/answer/text_parts_kernel.hpp"
#include "tools/job/units.hpp"

namespace dewgap::tools::parts {
namespace {

/// "2.1 (1.9 to 2.4)", or "6.0" where all three are printed alike.
std::string between(const EdgeRange& range, int decimals) {
  const auto middle = figure(range.middle, decimals);
  const bool alike = figure(range.low, decimals) == middle && figure(range.high, decimals) == middle;
  return alike ? middle : ranged({range.low, range.middle, range.high}, decimals);
}

std::string in_the_gap(const EdgeAnswer& edge) {
  const auto factor = figure(edge.gap_edge_factor.middle, 2);
  if (factor == "1.00") return "In the gap nothing is colder than the middle of the old glass.";
  return fmt::format("Coldest in the gap: {}, over outdoors {} of the middle of the old glass.",
                     edge.gap_spot, factor);
}

}  // namespace

void AnswerPage::edge() {
  if (!figures().edge) return;
  const auto& edge = *figures().edge;
  const auto at_break = edge.break_factor
                            ? fmt::format(" (at a break in the tape {})", figure(*edge.break_factor, 2))
                            : std::string();
  paragraph(fmt::format(
                "Edge, by conduction: frame U {} W/(m2 K). Coldest towards the room now: {}, fRsi {}; with "
                "the sheet: {}, fRsi {}{}, mould there if the room is above {} % in the coldest month. {}",
                between(edge.frame_u_W_m2K, 1), edge.room_spot_before,
                figure(edge.room_factor_before.middle, 2), edge.room_spot, figure(edge.room_factor.middle, 2),
                at_break, ranged(edge.mould_from_humidity, 0, per_cent.per_base), in_the_gap(edge)),
            "", "  ");
}

}  // namespace dewgap::tools::parts
