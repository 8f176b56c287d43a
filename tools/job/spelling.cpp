#include "tools/job/spelling.hpp"

#include <algorithm>
#include <numeric>

namespace dewgap::tools {

std::size_t edit_distance(std::string_view one, std::string_view other) {
  constexpr std::size_t longest = 64;
  one = one.substr(0, longest);
  other = other.substr(0, longest);
  std::vector<std::size_t> row(other.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 0; i < one.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i + 1;
    for (std::size_t j = 0; j < other.size(); ++j) {
      const std::size_t change = diagonal + (one[i] == other[j] ? 0 : 1);
      diagonal = row[j + 1];
      row[j + 1] = std::min({change, row[j] + 1, row[j + 1] + 1});
    }
  }
  return row.back();
}

std::string nearest_word(std::string_view word, const std::vector<std::string>& known) {
  std::string nearest;
  std::size_t least = word.size() + 64;
  for (const auto& candidate : known) {
    const std::size_t distance = edit_distance(word, candidate);
    if (distance >= least || 2 * distance > candidate.size()) continue;
    least = distance;
    nearest = candidate;
  }
  return nearest;
}

std::string in_small_letters(std::string_view word) {
  std::string small(word);
  for (char& c : small)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return small;
}

std::string nearest_permitted(std::string_view word, const std::vector<std::string_view>& permitted) {
  std::string nearest;
  std::size_t least = word.size() + 64;
  for (const auto candidate : permitted) {
    const std::size_t distance = edit_distance(in_small_letters(word), in_small_letters(candidate));
    const std::size_t slips = std::max<std::size_t>(1, candidate.size() / 4);
    if (distance >= least || distance > slips) continue;
    least = distance;
    nearest = candidate;
  }
  return nearest;
}

}  // namespace dewgap::tools
