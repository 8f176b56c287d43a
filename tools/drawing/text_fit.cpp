#include "tools/drawing/text_fit.hpp"

#include <algorithm>
#include <array>

#include "tools/answer/plain_text.hpp"
#include "tools/answer/utf8.hpp"

namespace dewgap::tools {
namespace {

// Hundredths of the font size, U+0020 to U+007E: the wider of two common sans-serif faces.
constexpr std::array<int, 95> ascii_widths{
    32, 40, 46, 84, 64, 95, 78, 27, 39,  39, 50, 84, 32, 36, 32, 34, 64, 64, 64, 64, 64, 64, 64, 64,
    64, 64, 34, 34, 84, 84, 84, 56, 102, 68, 69, 72, 77, 67, 61, 78, 75, 29, 50, 67, 56, 86, 75, 79,
    67, 79, 72, 67, 61, 73, 68, 99, 69,  67, 69, 39, 34, 39, 84, 56, 50, 61, 63, 55, 63, 62, 35, 63,
    63, 28, 28, 58, 28, 97, 63, 61, 63,  63, 41, 52, 39, 63, 59, 82, 59, 59, 52, 64, 34, 64, 84};
constexpr double bold_is_wider = 1.15;
constexpr double other_width = 0.85;
constexpr double wide_width = 1.1;  // of scripts that take two columns on a terminal

double width_of(std::uint32_t character) {
  if (character >= 0x20 && character < 0x7F) return ascii_widths[character - 0x20] / 100.0;
  const auto columns = columns_of_character(character);
  if (columns == 0) return 0.0;
  return columns == 1 ? other_width : wide_width;
}

}  // namespace

double text_width_em(std::string_view text, FontWeight weight) {
  double width = 0.0;
  while (!text.empty()) {
    const Utf8Step step = next_character(text);
    width += width_of(step.character);
    text.remove_prefix(step.bytes);
  }
  return weight == FontWeight::bold ? width * bold_is_wider : width;
}

FittedText fitted_text(std::string_view text, double width, double size, double least_size,
                       FontWeight weight) {
  const auto clean = harmless(text);
  const double em = text_width_em(clean, weight);
  if (em * size <= width) return {clean, size};
  if (em * least_size <= width) return {clean, width / em};
  for (auto columns = columns_of(clean); columns > 1; --columns) {
    auto cut = one_line(clean, columns);
    if (text_width_em(cut, weight) * least_size <= width) return {std::move(cut), least_size};
  }
  return {std::string(), least_size};
}

std::vector<std::string> fitted_lines(std::string_view text, double width, double size, FontWeight weight) {
  // A line of as many columns as fit when it is all of average letters, fewer until every line fits.
  constexpr double narrow_letter = 0.4;
  for (auto columns = static_cast<std::size_t>(std::max(1.0, width / (narrow_letter * size))); columns > 1;
       --columns) {
    auto lines = wrapped(text, columns);
    if (std::all_of(lines.begin(), lines.end(),
                    [&](const std::string& line) { return text_width_em(line, weight) * size <= width; }))
      return lines;
  }
  return wrapped(text, 1);
}

}  // namespace dewgap::tools
