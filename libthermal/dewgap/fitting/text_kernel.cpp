#include "dewgap/fitting/text_kernel.hpp"

#include <array>
#include <charconv>
#include <cmath>

namespace dewgap::fitting {

std::string fixed_text(double value, int digits) {
  std::array<char, 64> buffer{};
  const auto end =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, digits)
          .ptr;
  return {buffer.data(), end};
}

std::string whole_mm_text(double length_m) {
  return fixed_text(length_m * 1e3, 0) + " mm";
}
std::string tenth_mm_text(double length_m) {
  return fixed_text(length_m * 1e3, 1) + " mm";
}

int nearest_mm(double length_m) {
  return static_cast<int>(std::lround(length_m * 1e3));
}
int fitting_mm(double length_m) {
  return static_cast<int>(std::floor(length_m * 1e3 + 1e-6));
}

}  // namespace dewgap::fitting
