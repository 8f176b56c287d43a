// Text for a terminal: UTF-8 checked, control characters replaced, measured in columns, wrapped and cut.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace dewgap::tools {

/// Byte at which the text stops being UTF-8 (overlong forms and surrogates are not); nothing when all is
/// well.
std::optional<std::size_t> first_invalid_utf8(std::string_view text);

/// Columns that a terminal needs: 0 for combining marks, 2 for wide scripts and pictures, else 1.
std::size_t columns_of(std::string_view text);

/// The text with everything replaced that could move a terminal's cursor, break the line or turn the
/// direction of writing: controls become blanks, direction marks and invalid bytes U+FFFD.
std::string harmless(std::string_view text);

/// One harmless line of at most `columns`, cut with an ellipsis between characters.
std::string one_line(std::string_view text, std::size_t columns);

/// Breaks a text at blanks into lines of at most `columns`; a longer word is broken between characters. The
/// first line starts with `first`, the others with `rest`, both counted.
std::vector<std::string> wrapped(std::string_view text, std::size_t columns, std::string_view first = {},
                                 std::string_view rest = {});

/// The text followed by blanks up to `columns`.
std::string padded(std::string_view text, std::size_t columns);

}  // namespace dewgap::tools
