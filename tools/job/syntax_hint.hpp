// What to write instead, for the slips that newcomers to TOML make.
#pragma once

#include <string>
#include <string_view>

namespace dewgap::tools {

/// A hint for a line on which the parser stopped: a decimal comma, words without quotes or in curly ones, a
/// unit behind a number. Empty when none of these is seen.
std::string syntax_hint(std::string_view line);

/// Whether a text says 'nobody has looked' in words other than "not known": "unknown", "don't know".
bool means_not_known(std::string_view text);

}  // namespace dewgap::tools
