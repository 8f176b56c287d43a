#include "tools/answer/words.hpp"

#include <fmt/format.h>

#include "dewgap/fitting/practice.hpp"
#include "tools/job/units.hpp"

namespace dewgap::tools {

std::string_view json_word(Headline headline) {
  switch (headline) {
    case Headline::fit:
      return "fit";
    case Headline::fit_after:
      return "fit_after";
    case Headline::hold:
      return "hold";
    case Headline::leave:
      return "leave";
  }
  return "hold";
}

std::string_view json_word(VentOption option) {
  switch (option) {
    case VentOption::sealed:
      return "sealed";
    case VentOption::breaks_bottom:
      return "breaks_bottom";
    case VentOption::breaks_bottom_and_top:
      return "breaks_bottom_and_top";
  }
  return "sealed";
}

std::string_view json_word(GateKind gate) {
  switch (gate) {
    case GateKind::way_out:
      return "way_out";
    case GateKind::burning:
      return "burning";
    case GateKind::fresh_air:
      return "fresh_air";
    case GateKind::protection:
      return "protection";
    case GateKind::old_glass:
      return "old_glass";
  }
  return "way_out";
}

std::string_view json_word(Basis basis) {
  switch (basis) {
    case Basis::measured:
      return "measured";
    case Basis::described:
      return "described";
    case Basis::archetype:
      return "archetype";
    case Basis::defaulted:
      return "default";
  }
  return "default";
}

std::string_view json_word(FixingKind fixing) {
  switch (fixing) {
    case FixingKind::turn_clips:
      return "turn_clips";
    case FixingKind::screws:
      return "screws";
    case FixingKind::tape_only:
      return "tape_only";
    case FixingKind::beads:
      return "beads";
  }
  return "tape_only";
}

std::string tape_order(VentOption option) {
  const double break_mm = millimetres.from_base(practice::vent_break_m);
  switch (option) {
    case VentOption::sealed:
      return "all round; corners joined, no daylight.";
    case VentOption::breaks_bottom:
      return fmt::format("all round but two {:.0f} mm breaks, bottom left and bottom right.", break_mm);
    case VentOption::breaks_bottom_and_top:
      return fmt::format("all round but four {:.0f} mm breaks, left and right at bottom and top.", break_mm);
  }
  return {};
}

}  // namespace dewgap::tools
