// Text as a cell of a CSV file.
#pragma once

#include <string>
#include <string_view>

namespace dewgap::tools {

/// Harmless text, quoted where RFC 4180 asks for it. One that a spreadsheet would take for a formula (it
/// starts with = + - @ | or %) gets an apostrophe before it.
std::string csv_text(std::string_view text);

}  // namespace dewgap::tools
