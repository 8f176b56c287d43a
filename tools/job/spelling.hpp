// The nearest known spelling of a word.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace dewgap::tools {

/// Least number of letters to add, drop or change to turn one word into the other (Levenshtein).
/// Words longer than 64 bytes are cut first.
std::size_t edit_distance(std::string_view one, std::string_view other);

/// The known word with the least edit distance, the first of equals; empty when it is further than half its
/// length.
std::string nearest_word(std::string_view word, const std::vector<std::string>& known);

/// The word with its letters A to Z made small.
std::string in_small_letters(std::string_view word);

/// The permitted word, as it is spelled there, that is a slip or two away: capital or small, at most a
/// quarter of its letters (one in a short word). So "protected" never suggests "not protected". Empty when
/// none is.
std::string nearest_permitted(std::string_view word, const std::vector<std::string_view>& permitted);

}  // namespace dewgap::tools
