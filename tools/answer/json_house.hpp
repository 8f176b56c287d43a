// The answer for a house of several windows, for programs. Its form: json_schema.hpp.
#pragma once

#include <string>

#include "tools/answer/answered_house.hpp"

namespace dewgap::tools {

/// A window on HOLD has no figure, and none of it is in the totals. Throws std::domain_error rather than
/// write a number that is not finite.
std::string json_house(const AnsweredHouse& house);

}  // namespace dewgap::tools
