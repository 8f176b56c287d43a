#include <array>
#include <charconv>
#include <cmath>

#include "dewgap/window/section_words_kernel.hpp"

namespace dewgap {

std::string_view explain(SectionStatus status) {
  switch (status) {
    case SectionStatus::converged:
      return "both error bounds hold";
    case SectionStatus::cell_limit:
      return "stopped at the greatest number of cells, before the error bounds held";
    case SectionStatus::pass_limit:
      return "stopped at the greatest number of passes, before the error bounds held";
    case SectionStatus::cavities_unsettled:
      return "a cavity's conductivity did not settle";
    case SectionStatus::not_balanced:
      return "heat in and heat out do not agree to 1e-9";
  }
  return "unknown";
}

namespace section_kernel {

std::string millimetres(double length_m) {
  const double rounded_mm = std::round(length_m * 1e7) * 1e-4;
  std::array<char, 48> buffer{};
  auto end =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), rounded_mm, std::chars_format::fixed, 4)
          .ptr;
  while (*(end - 1) == '0') {
    --end;
  }
  if (*(end - 1) == '.') {
    --end;
  }
  const std::string text(buffer.data(), end);
  return text == "-0" ? "0" : text;
}

std::string place(SectionPoint point) {
  return "(" + millimetres(point.x_m) + ", " + millimetres(point.y_m) + ") mm";
}

std::string extent(SectionPoint low, SectionPoint high) {
  return "x " + millimetres(low.x_m) + " to " + millimetres(high.x_m) + ", y " + millimetres(low.y_m) +
         " to " + millimetres(high.y_m) + " mm";
}

}  // namespace section_kernel
}  // namespace dewgap
