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

std::string bends_text(double thickness_m, double deflection_m, double limit_m, double gust_Pa) {
  constexpr double worth_a_figure = 2.0;  // times the limit
  const std::string gust = " in a gust of " + fixed_text(gust_Pa, 0) + " Pa";
  if (deflection_m > worth_a_figure * limit_m) {
    return whole_mm_text(thickness_m) + " bends far over the " + whole_mm_text(limit_m) + " allowed" + gust +
           ": ";
  }
  return whole_mm_text(thickness_m) + " bends " + whole_mm_text(deflection_m) + gust + ", " +
         whole_mm_text(limit_m) + " allowed: ";
}

int nearest_mm(double length_m) {
  return static_cast<int>(std::lround(length_m * 1e3));
}
int fitting_mm(double length_m) {
  return static_cast<int>(std::floor(length_m * 1e3 + 1e-6));
}

}  // namespace dewgap::fitting
