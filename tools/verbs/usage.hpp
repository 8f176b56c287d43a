// Options of a verb as typed, and how it ends when one is wrong.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "dewgap/assessment/assess.hpp"

namespace dewgap::tools {

/// Ends the verb as bad usage: what is wrong, and where its help is.
[[noreturn]] void bad_usage(std::string_view verb, const std::string& what);

/// What --window-hours takes.
inline constexpr std::uint64_t least_window_hours = 10'000;
inline constexpr std::uint64_t most_window_hours = 1'000'000'000'000;

struct WholeNumberOption {
  std::string_view verb;
  std::string_view name;  ///< "--samples"
  std::uint64_t least = 0;
  std::uint64_t most = 0;
  std::string_view also = {};  ///< what else it takes, for the complaint
};

/// A whole number as typed, digits only; `otherwise` when nothing was.
std::uint64_t whole_number(const WholeNumberOption& option, const std::string& typed,
                           std::uint64_t otherwise);

/// A way to make the tape, as the JSON names it.
VentOption vent_option(std::string_view verb, std::string_view name, const std::string& typed);

/// "sealed, breaks_bottom, ...": what vent_option takes.
std::string vent_option_words();

}  // namespace dewgap::tools
