#include "tools/verbs/usage.hpp"

#include <fmt/format.h>

#include <charconv>

#include "tools/answer/plain_text.hpp"
#include "tools/answer/words.hpp"
#include "tools/failure.hpp"
#include "tools/job/spelling.hpp"

namespace dewgap::tools {

void bad_usage(std::string_view verb, const std::string& what) {
  throw Failure(ExitCode::bad_input, fmt::format("dewgap {}: {}\nTry dewgap {} --help.\n", verb, what, verb));
}

std::uint64_t whole_number(const WholeNumberOption& option, const std::string& typed,
                           std::uint64_t otherwise) {
  if (typed.empty()) return otherwise;
  std::uint64_t value = 0;
  const auto* end = typed.data() + typed.size();
  const auto [at, error] = std::from_chars(typed.data(), end, value);
  if (error != std::errc() || at != end || value < option.least || value > option.most)
    bad_usage(option.verb,
              fmt::format("{} {}: must be a whole number from {} to {}{}{}", option.name, one_line(typed, 40),
                          option.least, option.most, option.also.empty() ? "" : ", ", option.also));
  return value;
}

VentOption vent_option(std::string_view verb, std::string_view name, const std::string& typed) {
  std::vector<std::string> words;
  for (const auto option : every_vent_option) {
    if (json_word(option) == typed) return option;
    words.emplace_back(json_word(option));
  }
  const auto nearest = nearest_word(typed, words);
  bad_usage(verb, fmt::format("{} {}: {}must be one of {}", name, one_line(typed, 40),
                              nearest.empty() ? "" : fmt::format("nearest known is {}; ", nearest),
                              vent_option_words()));
}

std::string vent_option_words() {
  std::string words;
  for (const auto option : every_vent_option)
    words.append(words.empty() ? "" : ", ").append(json_word(option));
  return words;
}

}  // namespace dewgap::tools
