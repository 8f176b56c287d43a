#include "dewgap/assessment/gates.hpp"

namespace dewgap {
namespace {

void add_way_out(const SettleFirst& a, std::vector<OpenGate>& gates) {
  if (a.way_out == WayOut::not_a_way_out) {
    return;
  }
  gates.push_back({GateKind::way_out, a.way_out.has_value(),
                   "Might anyone have to get out through this window in a fire?",
                   "A covered way out is no way out, however the sheet is held."});
}

void add_burning(const SettleFirst& a, std::vector<OpenGate>& gates) {
  if (a.burning == Burning::nothing || a.burning == Burning::balanced_flue) {
    return;
  }
  gates.push_back({GateKind::burning, a.burning.has_value(),
                   "Does anything burn fuel in this room or draw air from it?",
                   "It needs the air that the old window lets in: a registered engineer must say so first."});
}

void add_fresh_air(const SettleFirst& a, std::vector<OpenGate>& gates) {
  if (a.fresh_air == FreshAir::other_way_to_breathe) {
    return;
  }
  gates.push_back({GateKind::fresh_air, a.fresh_air.has_value(),
                   "Has the room another vent or window that opens?",
                   "This window may be the room's only fresh air."});
}

std::string protection_reason(const SettleFirst& a) {
  if (!a.protection.has_value()) {
    return "Work inside a protected building may need consent before the first hole.";
  }
  return a.protection == Protection::consent_pending ? "Consent has been asked for and is not there yet."
                                                     : "Consent has not been asked for.";
}

void add_protection(const SettleFirst& a, std::vector<OpenGate>& gates) {
  if (a.protection == Protection::unprotected || a.protection == Protection::consent_given) {
    return;
  }
  gates.push_back({GateKind::protection, a.protection.has_value(),
                   "Is the building protected, and is consent in hand?", protection_reason(a)});
}

void add_old_glass(const SettleFirst& a, std::vector<OpenGate>& gates) {
  if (a.old_glass == OldGlassKind::plain) {
    return;
  }
  gates.push_back({GateKind::old_glass, a.old_glass.has_value(), "Is the glass leaded, painted or historic?",
                   "Such glass gets colder behind a sheet: a specialist must look first."});
}

}  // namespace

std::vector<OpenGate> open_gates(const SettleFirst& answers) {
  std::vector<OpenGate> gates;
  add_way_out(answers, gates);
  add_burning(answers, gates);
  add_fresh_air(answers, gates);
  add_protection(answers, gates);
  add_old_glass(answers, gates);
  return gates;
}

}  // namespace dewgap
