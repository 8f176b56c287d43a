#include "tools/drawing/shade.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

namespace dewgap::tools {
namespace {

/// Red, green and blue of the display, 0 to 1; their relative luminance falls from each to the next.
using Colour = std::array<double, 3>;
constexpr std::array<Colour, 5> stops{Colour{0.980, 0.970, 0.930}, Colour{0.790, 0.840, 0.810},
                                      Colour{0.510, 0.665, 0.725}, Colour{0.230, 0.420, 0.580},
                                      Colour{0.070, 0.140, 0.300}};

double linear(double channel) {
  constexpr double knee = 0.04045;  // IEC 61966-2-1, from memory
  return channel <= knee ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

Colour colour_at(double share) {
  if (!(share >= 0.0 && share <= 1.0)) throw std::domain_error("a shade's share lies from 0 to 1");
  const double place = share * static_cast<double>(stops.size() - 1);
  const auto left = std::min(static_cast<std::size_t>(place), stops.size() - 2);
  const double right_share = place - static_cast<double>(left);
  Colour colour{};
  for (std::size_t i = 0; i < colour.size(); ++i)
    colour[i] = stops[left][i] + right_share * (stops[left + 1][i] - stops[left][i]);
  return colour;
}

/// WCAG 2, relative luminance, from memory.
double luminance(const Colour& colour) {
  return 0.2126 * linear(colour[0]) + 0.7152 * linear(colour[1]) + 0.0722 * linear(colour[2]);
}

}  // namespace

std::string shade(double share) {
  const auto colour = colour_at(share);
  std::string text = "#";
  for (const double channel : colour)
    text += fmt::format("{:02x}", static_cast<int>(std::lround(255.0 * channel)));
  return text;
}

std::string ink_on_shade(double share) {
  const double back = luminance(colour_at(share));
  // Contrast with black is (L + 0.05) / 0.05, with white 1.05 / (L + 0.05).
  return (back + 0.05) * (back + 0.05) >= 1.05 * 0.05 ? "#000000" : "#ffffff";
}

}  // namespace dewgap::tools
