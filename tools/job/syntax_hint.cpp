#include "tools/job/syntax_hint.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "tools/answer/plain_text.hpp"
#include "tools/job/field.hpp"
#include "tools/job/spelling.hpp"

namespace dewgap::tools {
namespace {

constexpr std::array<std::string_view, 8> curly_quotes{"\xE2\x80\x98", "\xE2\x80\x99", "\xE2\x80\x9A",
                                                       "\xE2\x80\x9C", "\xE2\x80\x9D", "\xE2\x80\x9E",
                                                       "\xC2\xAB",     "\xC2\xBB"};
constexpr std::string_view blanks = " \t\r";

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

std::string_view trimmed(std::string_view text) {
  const auto start = std::min(text.find_first_not_of(blanks), text.size());
  text.remove_prefix(start);
  return text.substr(0, text.find_last_not_of(blanks) + 1);
}

std::string without(std::string text, std::string_view part) {
  for (auto at = text.find(part); at != std::string::npos; at = text.find(part)) text.erase(at, part.size());
  return text;
}

/// What stands behind the first '=', without a comment and without what is in straight quotes.
std::string bare_value(std::string_view line) {
  const auto equals = line.find('=');
  if (equals == std::string_view::npos) return {};
  std::string bare;
  bool quoted = false;
  for (const char c : line.substr(equals + 1)) {
    if (c == '"') quoted = !quoted;
    if (c == '#' && !quoted) break;
    if (!quoted && c != '"') bare += c;
  }
  return std::string(trimmed(bare));
}

/// "4.5" of "4,5"; empty when the value is no number with a decimal comma. In a list a comma is right.
std::string with_point(std::string_view value) {
  const auto comma = value.find(',');
  if (comma == std::string_view::npos || comma == 0 || comma + 1 == value.size()) return {};
  const auto whole = value.substr(0, comma);
  const auto rest = value.substr(comma + 1);
  const auto digits = [](std::string_view text) { return std::all_of(text.begin(), text.end(), is_digit); };
  const bool has_sign = whole.front() == '-' || whole.front() == '+';
  const auto unsigned_whole = whole.substr(has_sign ? 1 : 0);
  if (unsigned_whole.empty() || !digits(unsigned_whole) || !digits(rest)) return {};
  return fmt::format("{}.{}", whole, rest);
}

std::string quotes_hint(std::string_view value) {
  auto word = std::string(value);
  for (const auto quote : curly_quotes) word = without(std::move(word), quote);
  if (word.starts_with('\'')) word.erase(0, 1);
  if (word.ends_with('\'')) word.pop_back();
  if (word.empty() || word.front() == '[') return "put words in straight quotes, \"like this\"";
  return fmt::format("put words in straight quotes: \"{}\"", one_line(trimmed(word), 40));
}

}  // namespace

std::string syntax_hint(std::string_view line) {
  const auto value = bare_value(line);
  if (value.empty()) return {};
  if (const auto number = with_point(value); !number.empty())
    return fmt::format("use a point: {}", one_line(number, 40));
  const bool curly = std::any_of(curly_quotes.begin(), curly_quotes.end(), [&](std::string_view quote) {
    return value.find(quote) != std::string::npos;
  });
  if (curly) return quotes_hint(value);
  if (std::none_of(value.begin(), value.end(), is_letter)) return {};
  if (is_digit(value.front())) return "give the number alone; its unit is in the key";
  return quotes_hint(value);
}

bool means_not_known(std::string_view text) {
  auto words = in_small_letters(trimmed(text));
  for (const std::string_view apostrophe : {"'", "\xE2\x80\x99"})
    words = without(std::move(words), apostrophe);
  constexpr std::array<std::string_view, 8> ways{"unknown",  "dont know", "do not know", "i dont know",
                                                 "not sure", "notknown",  "not-known",   "?"};
  return std::find(ways.begin(), ways.end(), words) != ways.end();
}

}  // namespace dewgap::tools
