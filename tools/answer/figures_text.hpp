// Numbers for people: a middle with its range, a share of plausible cases.
#pragma once

#include <string>

#include "dewgap/quantity.hpp"

namespace dewgap::tools {

/// A number with this many decimals, "0.0" never negative.
std::string figure(double value, int decimals);

/// "4.9 (4.6 to 5.2)". Throws std::domain_error for a number that is not finite.
std::string ranged(const Spread& spread, int decimals, double factor = 1.0);

/// "82 %", "over 99 %" short of all and "under 1 %" short of none.
std::string share_text(double share);

}  // namespace dewgap::tools
