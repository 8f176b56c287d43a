// A year by month for people on a terminal: 62 columns.
#pragma once

#include <string>

#include "tools/answer/examined_year.hpp"

namespace dewgap::tools {

/// On HOLD: the questions to settle and the cautions, and not a figure more.
std::string text_year(const ExaminedYear& year);

}  // namespace dewgap::tools
