// Reading the carried tables, and what several sources of this room share. Private to the library.
#pragma once

#include <string_view>
#include <vector>

#include "dewgap/climate/places.hpp"

namespace dewgap::climate {

/// Joins a table of places with their monthly normals. Throws InvalidInput for a place without exactly its
/// twelve months, months of an unknown place, a key used twice, and for values that require_valid rejects.
std::vector<Place> parse_places(std::string_view places_csv, std::string_view monthly_normals_csv);

/// The part of require_valid that concerns a month's temperatures.
void require_valid_temperatures(const MonthlyNormals& month);

/// Fewest insertions, deletions and substitutions of one letter between two texts.
std::size_t edit_distance(std::string_view a, std::string_view b);

inline constexpr double pi = 3.14159265358979323846;
constexpr double radians(double degrees) {
  return degrees * pi / 180.0;
}
constexpr double degrees(double radians) {
  return radians * 180.0 / pi;
}

}  // namespace dewgap::climate
