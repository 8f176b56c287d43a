#include "tools/answer/utf8.hpp"

#include <algorithm>
#include <array>
#include <span>

namespace dewgap::tools {
namespace {

struct CharacterRange {
  std::uint32_t first;
  std::uint32_t last;
};

constexpr std::array zero_columns{
    CharacterRange{0x0300, 0x036F},  CharacterRange{0x0483, 0x0489}, CharacterRange{0x0591, 0x05BD},
    CharacterRange{0x05BF, 0x05BF},  CharacterRange{0x05C1, 0x05C2}, CharacterRange{0x05C4, 0x05C5},
    CharacterRange{0x0610, 0x061A},  CharacterRange{0x064B, 0x065F}, CharacterRange{0x0670, 0x0670},
    CharacterRange{0x06D6, 0x06DC},  CharacterRange{0x06DF, 0x06E4}, CharacterRange{0x1AB0, 0x1AFF},
    CharacterRange{0x1DC0, 0x1DFF},  CharacterRange{0x200B, 0x200D}, CharacterRange{0x20D0, 0x20FF},
    CharacterRange{0xFE00, 0xFE0F},  CharacterRange{0xFE20, 0xFE2F}, CharacterRange{0xFEFF, 0xFEFF},
    CharacterRange{0xE0100, 0xE01EF}};

constexpr std::array two_columns{
    CharacterRange{0x1100, 0x115F},   CharacterRange{0x231A, 0x231B},   CharacterRange{0x2329, 0x232A},
    CharacterRange{0x23E9, 0x23FA},   CharacterRange{0x2600, 0x27BF},   CharacterRange{0x2B1B, 0x2B55},
    CharacterRange{0x2E80, 0x303E},   CharacterRange{0x3041, 0xA4CF},   CharacterRange{0xA960, 0xA97C},
    CharacterRange{0xAC00, 0xD7A3},   CharacterRange{0xF900, 0xFAFF},   CharacterRange{0xFE30, 0xFE6F},
    CharacterRange{0xFF00, 0xFF60},   CharacterRange{0xFFE0, 0xFFE6},   CharacterRange{0x16FE0, 0x18AFF},
    CharacterRange{0x1AFF0, 0x1B2FF}, CharacterRange{0x1F000, 0x1FAFF}, CharacterRange{0x20000, 0x3FFFD}};

bool in_any(std::span<const CharacterRange> ranges, std::uint32_t character) {
  return std::any_of(ranges.begin(), ranges.end(),
                     [&](CharacterRange r) { return r.first <= character && character <= r.last; });
}

std::size_t length_from_first_byte(unsigned char first) {
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first < 0xE0) return 2;
  if (first >= 0xE0 && first < 0xF0) return 3;
  if (first >= 0xF0 && first < 0xF5) return 4;
  return 0;
}

}  // namespace

Utf8Step next_character(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const std::size_t length = length_from_first_byte(byte(0));
  if (length == 0 || length > text.size()) return {};
  if (length == 1) return {byte(0), 1, true};
  std::uint32_t character = byte(0) & (0xFFu >> (length + 1));
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(i) & 0xC0u) != 0x80u) return {};
    character = (character << 6) | (byte(i) & 0x3Fu);
  }
  constexpr std::array<std::uint32_t, 5> least{0, 0, 0x80, 0x800, 0x10000};
  const bool surrogate = character >= 0xD800 && character <= 0xDFFF;
  if (character < least[length] || surrogate || character > 0x10FFFF) return {};
  return {character, length, true};
}

std::size_t columns_of_character(std::uint32_t character) {
  if (character < 0x300) return 1;
  if (in_any(zero_columns, character)) return 0;
  return in_any(two_columns, character) ? 2 : 1;
}

bool turns_direction_or_line(std::uint32_t character) {
  constexpr std::array turning{CharacterRange{0x061C, 0x061C}, CharacterRange{0x200E, 0x200F},
                               CharacterRange{0x2028, 0x202E}, CharacterRange{0x2066, 0x2069}};
  return in_any(turning, character);
}

}  // namespace dewgap::tools
