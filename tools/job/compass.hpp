// Compass words and their bearing.
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <vector>

namespace dewgap::tools {

/// The eight words, from north by east, 45 degrees apart.
inline constexpr std::array<std::string_view, 8> compass_rose{"north", "north-east", "east", "south-east",
                                                              "south", "south-west", "west", "north-west"};

inline std::vector<std::string_view> compass_words() {
  return {compass_rose.begin(), compass_rose.end()};
}

/// Degrees from north by east, 0 to 315; nothing for another word.
inline std::optional<double> compass_bearing_deg(std::string_view word) {
  for (std::size_t i = 0; i < compass_rose.size(); ++i)
    if (compass_rose[i] == word) return 45.0 * static_cast<double>(i);
  return std::nullopt;
}

}  // namespace dewgap::tools
