// Numbers for people: a middle with its range, a share of plausible cases.
#pragma once

#include <cstddef>
#include <string>

#include "dewgap/quantity.hpp"

namespace dewgap::tools {

/// A number with this many decimals, "0.0" never negative.
std::string figure(double value, int decimals);

/// "4.9 (4.6 to 5.2)". Throws std::domain_error for a number that is not finite.
std::string ranged(const Spread& spread, int decimals, double factor = 1.0);

/// A count in millions: "2.79", "0.01", "1200".
std::string millions(std::size_t count);

/// "4 a year, 0 to 20".
std::string mornings(const Spread& spread);

/// "82 %", "over 99 %" short of all and "under 1 %" short of none.
std::string share_text(double share);

}  // namespace dewgap::tools
