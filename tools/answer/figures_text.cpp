#include "tools/answer/figures_text.hpp"

#include <fmt/format.h>

#include <cmath>
#include <stdexcept>

namespace dewgap::tools {

std::string figure(double value, int decimals) {
  if (!std::isfinite(value)) throw std::domain_error("a result is not a finite number");
  auto text = fmt::format("{:.{}f}", value, decimals);
  const bool is_zero = text.find_first_not_of("-0.") == std::string::npos;
  return is_zero && text.starts_with('-') ? text.substr(1) : text;
}

std::string ranged(const Spread& spread, int decimals, double factor) {
  return fmt::format("{} ({} to {})", figure(factor * spread.p50, decimals),
                     figure(factor * spread.p10, decimals), figure(factor * spread.p90, decimals));
}

std::string millions(std::size_t count) {
  constexpr double million = 1e6;
  constexpr double whole_from = 100.0;
  const double value = static_cast<double>(count) / million;
  return value < whole_from ? fmt::format("{:.3g}", value) : figure(value, 0);
}

std::string mornings(const Spread& spread) {
  return fmt::format("{} a year, {} to {}", figure(spread.p50, 0), figure(spread.p10, 0),
                     figure(spread.p90, 0));
}

std::string share_text(double share) {
  if (share > 0.0 && share < 0.01) return "under 1 %";
  if (share > 0.99 && share < 1.0) return "over 99 %";
  return figure(std::round(100.0 * share), 0) + " %";
}

}  // namespace dewgap::tools
