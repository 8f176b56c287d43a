// The words that print and JSON use for the answer's kinds.
#pragma once

#include <string>
#include <string_view>

#include "dewgap/assessment/assess.hpp"

namespace dewgap::tools {

/// For JSON: "fit_after".
std::string_view json_word(Headline headline);
std::string_view json_word(VentOption option);
std::string_view json_word(GateKind gate);
std::string_view json_word(Basis basis);
std::string_view json_word(FixingKind fixing);

/// How the tape runs, as an order to the fitter.
std::string tape_order(VentOption option);

}  // namespace dewgap::tools
