#include "tools/answer/plain_text.hpp"

#include "tools/answer/utf8.hpp"

namespace dewgap::tools {
namespace {

constexpr std::string_view replacement = "\xEF\xBF\xBD";
constexpr std::string_view ellipsis = "\xE2\x80\xA6";

bool is_control(std::uint32_t character) {
  return character < 0x20 || (character >= 0x7F && character < 0xA0);
}

/// The longest start of the text that fits, marks kept with their letter.
std::string_view start_that_fits(std::string_view text, std::size_t columns) {
  std::size_t used = 0;
  std::size_t end = 0;
  while (end < text.size()) {
    const Utf8Step step = next_character(text.substr(end));
    used += columns_of_character(step.character);
    if (used > columns) break;
    end += step.bytes;
  }
  return text.substr(0, end);
}

/// Takes the first word off the text.
std::string_view take_word(std::string_view& text) {
  const std::size_t start = std::min(text.find_first_not_of(' '), text.size());
  const std::size_t end = std::min(text.find(' ', start), text.size());
  const auto word = text.substr(start, end - start);
  text.remove_prefix(end);
  return word;
}

/// Lines being filled word by word.
class Filling {
 public:
  Filling(std::size_t columns, std::string_view first, std::string_view rest)
      : columns_(columns), rest_(rest), line_(first), start_(columns_of(first)), used_(start_) {}

  void add(std::string_view word) {
    const std::size_t blank = used_ > start_ ? 1 : 0;
    if (used_ + blank + columns_of(word) <= columns_) {
      put(blank, word);
    } else if (used_ > start_) {
      break_line();
      add(word);
    } else {
      add_broken(word);
    }
  }

  std::vector<std::string> finish() {
    lines_.push_back(std::move(line_));
    return std::move(lines_);
  }

 private:
  void put(std::size_t blanks, std::string_view word) {
    line_.append(blanks, ' ').append(word);
    used_ += blanks + columns_of(word);
  }

  void break_line() {
    lines_.push_back(std::move(line_));
    line_ = rest_;
    start_ = used_ = columns_of(rest_);
  }

  void add_broken(std::string_view word) {
    auto part = start_that_fits(word, columns_ > start_ ? columns_ - start_ : 0);
    if (part.empty()) part = word.substr(0, next_character(word).bytes);
    put(0, part);
    if (part.size() == word.size()) return;
    break_line();
    add(word.substr(part.size()));
  }

  std::size_t columns_;
  std::string_view rest_;
  std::string line_;
  std::size_t start_;
  std::size_t used_;
  std::vector<std::string> lines_;
};

}  // namespace

std::optional<std::size_t> first_invalid_utf8(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size()) {
    const Utf8Step step = next_character(text.substr(at));
    if (!step.valid) return at;
    at += step.bytes;
  }
  return std::nullopt;
}

std::size_t columns_of(std::string_view text) {
  std::size_t columns = 0;
  while (!text.empty()) {
    const Utf8Step step = next_character(text);
    columns += columns_of_character(step.character);
    text.remove_prefix(step.bytes);
  }
  return columns;
}

std::string harmless(std::string_view text) {
  std::string clean;
  clean.reserve(text.size());
  while (!text.empty()) {
    const Utf8Step step = next_character(text);
    if (!step.valid || turns_direction_or_line(step.character))
      clean += replacement;
    else if (is_control(step.character))
      clean += ' ';
    else
      clean += text.substr(0, step.bytes);
    text.remove_prefix(step.bytes);
  }
  return clean;
}

std::string one_line(std::string_view text, std::size_t columns) {
  std::string clean = harmless(text);
  if (columns_of(clean) <= columns) return clean;
  std::string cut(start_that_fits(clean, columns - 1));
  cut.erase(cut.find_last_not_of(' ') + 1);
  return cut.append(ellipsis);
}

std::vector<std::string> wrapped(std::string_view text, std::size_t columns, std::string_view first,
                                 std::string_view rest) {
  const std::string clean = harmless(text);
  Filling filling(columns, first, rest);
  std::string_view left = clean;
  for (auto word = take_word(left); !word.empty(); word = take_word(left)) filling.add(word);
  return filling.finish();
}

std::string padded(std::string_view text, std::size_t columns) {
  std::string filled(text);
  for (std::size_t used = columns_of(text); used < columns; ++used) filled += ' ';
  return filled;
}

}  // namespace dewgap::tools
