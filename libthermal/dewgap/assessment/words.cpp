#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "dewgap/assessment/verdict_kernel.hpp"

namespace dewgap {
namespace {

AirWay main_way(const VentOutcome& outcome) {
  const std::array<std::pair<double, AirWay>, 5> shares{{{outcome.share_inwards, AirWay::inwards},
                                                         {outcome.share_outwards, AirWay::outwards},
                                                         {outcome.share_both_ways, AirWay::both_ways},
                                                         {outcome.share_room_side, AirWay::room_side},
                                                         {outcome.share_still, AirWay::still}}};
  return std::max_element(shares.begin(), shares.end())->second;
}

std::string reason_for_sealed(AirWay way) {
  switch (way) {
    case AirWay::inwards:
      return "Outdoor air comes in through the old joints and dries the gap; the tape stops it there.";
    case AirWay::outwards:
      return "Room air is drawn out through the gap: every break would feed it more damp room air.";
    case AirWay::both_ways:
      return "Gusts move air both ways through the old joints; breaks would let more room air in behind the "
             "sheet.";
    case AirWay::room_side:
      return "The outer side is tight: breaks would only swap room air, which neither wets nor dries the gap "
             "for good.";
    case AirWay::still:
      return "Hardly any air passes: little vapour gets in, and breaks would add room air.";
  }
  return {};
}

std::string reason_for_breaks(AirWay way) {
  switch (way) {
    case AirWay::inwards:
      return "Outdoor air is drawn in; breaks let more of it wash the gap before it reaches the room.";
    case AirWay::outwards:
      return "Room air is drawn out through the gap; more of it warms the old pane above its dew point.";
    case AirWay::both_ways:
      return "Gusts move air both ways; breaks let more outdoor air through the gap.";
    case AirWay::room_side:
      return "The outer side is tight: breaks let the gap breathe with the room and warm up a little.";
    case AirWay::still:
      return "Hardly any air passes; breaks let the gap breathe with the room.";
  }
  return {};
}

}  // namespace

std::string whole(double value) {
  return std::to_string(static_cast<long long>(std::llround(value)));
}

std::string tenths(double value) {
  const long long rounded = std::llround(10.0 * value);
  const auto text = std::to_string(rounded / 10);
  return rounded % 10 == 0 ? text : text + "." + std::to_string(rounded % 10);
}

std::string percent(double share) {
  if (share > 0.99) {
    return "over 99 %";
  }
  return (share < 0.01 ? "under 1" : whole(100.0 * share)) + " %";
}

std::string share_of_cases(double share) {
  return percent(share) + " of plausible cases";
}

std::string vent_reason(const VentOutcome& chosen) {
  return vent_reason(chosen.option, main_way(chosen));
}

std::string vent_reason(VentOption option, AirWay way) {
  switch (option) {
    case VentOption::sealed:
      return reason_for_sealed(way);
    case VentOption::breaks_bottom:
    case VentOption::breaks_bottom_longer:
    case VentOption::breaks_bottom_and_top:
      return reason_for_breaks(way);
    case VentOption::weep_to_outdoors:
      return "The holes drain what runs down, and let outdoor air in.";
    case VentOption::joints_stripped:
      return way == AirWay::outwards
                 ? "Room air is drawn out through the gap: tighter old joints draw in less of it."
                 : "Tighter old joints let less air change places with the gap's.";
    case VentOption::off_in_summer:
      return reason_for_sealed(way) + " What winter leaves dries when the sheet is off.";
  }
  return {};
}

std::string flip_sentence(const Verdict& verdict, const SideBySide& side) {
  constexpr double beyond_rooms = 0.95;  // above it no room stays for long: walls and panes run
  if (verdict.cause == LeaveCause::saves_nothing) {
    return "More heated hours, or a sheet that lets more sun through, would change this.";
  }
  if (verdict.cause == LeaveCause::never_pays) {
    return "A lower cost or a dearer fuel would change this.";
  }
  const double turns = side.verdict_turns_at_room_humidity;
  if (turns >= beyond_rooms) {
    return "No room humidity would change this.";
  }
  const std::string limit = whole(100.0 * turns) + " %";
  if (verdict.headline == Headline::leave || !verdict.remedies.empty()) {
    return "A room below " + limit + " in the coldest month would do as it is.";
  }
  return "A room above " + limit + " in the coldest month would change this.";
}

std::string_view name_of(Headline headline) {
  switch (headline) {
    case Headline::fit:
      return "FIT";
    case Headline::fit_after:
      return "FIT AFTER";
    case Headline::hold:
      return "HOLD";
    case Headline::leave:
      return "LEAVE";
  }
  return "HOLD";
}

std::string_view name_of(VentOption option) {
  switch (option) {
    case VentOption::sealed:
      return "tape all round";
    case VentOption::breaks_bottom:
      return "two 20 mm breaks at the bottom";
    case VentOption::breaks_bottom_and_top:
      return "two 20 mm breaks at the bottom and two at the top";
    case VentOption::breaks_bottom_longer:
      return "two 100 mm breaks at the bottom";
    case VentOption::weep_to_outdoors:
      return "tape all round, two 6 mm weep holes to outdoors";
    case VentOption::joints_stripped:
      return "tape all round, old joints draught-stripped";
    case VentOption::off_in_summer:
      return "tape all round, off in spring and back in autumn";
  }
  return "tape all round";
}

}  // namespace dewgap
