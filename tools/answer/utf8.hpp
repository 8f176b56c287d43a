// One character of UTF-8 at a time.
#pragma once

#include <cstdint>
#include <string_view>

namespace dewgap::tools {

/// A character, or one byte that belongs to none.
struct Utf8Step {
  std::uint32_t character = 0xFFFD;
  std::size_t bytes = 1;
  bool valid = false;
};

/// The character at the start of a text that is not empty. Overlong forms, surrogates and what lies beyond
/// U+10FFFF are invalid (RFC 3629).
Utf8Step next_character(std::string_view text);

/// Columns of one character on a terminal, 0, 1 or 2. Ranges after Unicode Standard Annex 11 and the general
/// categories Mn and Me, from memory and merged; a character that is not listed counts 1.
std::size_t columns_of_character(std::uint32_t character);

/// Marks and overrides that turn the direction of writing (Unicode Standard Annex 9), and line separators.
bool turns_direction_or_line(std::uint32_t character);

}  // namespace dewgap::tools
