// How wide a text will be in print, and how it is made to fit. For a sans-serif face whose metrics are not
// known: widths of a wide one (transcribed for this project from a freely licensed face), so that text comes
// out narrower rather than wider.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace dewgap::tools {

enum class FontWeight { regular, bold };

/// Estimated width of one line at font size 1.
double text_width_em(std::string_view text, FontWeight weight = FontWeight::regular);

struct FittedText {
  std::string text;
  double size = 0.0;
};
/// The text at `size`, smaller down to `least_size` where `width` asks for it, and cut with an ellipsis where
/// that is still too wide.
FittedText fitted_text(std::string_view text, double width, double size, double least_size,
                       FontWeight weight = FontWeight::regular);

/// Lines of at most `width` at a font size; a longer word is broken. One line at least.
std::vector<std::string> fitted_lines(std::string_view text, double width, double size,
                                      FontWeight weight = FontWeight::regular);

}  // namespace dewgap::tools
