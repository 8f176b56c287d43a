// A year by month for programs. Its form: json_schema.hpp.
#pragma once

#include <string>

#include "tools/answer/examined_year.hpp"

namespace dewgap::tools {

/// On HOLD there is no key but those of the questions, the cautions and the run. Throws std::domain_error
/// rather than write a number that is not finite.
std::string json_year(const ExaminedYear& year);

}  // namespace dewgap::tools
