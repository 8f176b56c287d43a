// The gates: safety questions that come before any answer.
#pragma once

#include <string>
#include <vector>

#include "dewgap/assessment/survey.hpp"

namespace dewgap {

enum class GateKind { way_out, burning, fresh_air, protection, old_glass };

struct OpenGate {
  GateKind kind;
  bool answered = false;  ///< false: nobody has answered it
  std::string question;   ///< what to settle, in words
  std::string why;        ///< the reason it holds
};

/// The gates that hold, in the order above; empty when all are safely answered.
std::vector<OpenGate> open_gates(const SettleFirst& answers);

}  // namespace dewgap
