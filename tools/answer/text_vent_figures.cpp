#include "tools/answer/text_vent_figures.hpp"

#include <fmt/format.h>

#include "tools/answer/figures_text.hpp"

namespace dewgap::tools {
namespace {

struct Ends {
  double low = 0.0;
  double high = 0.0;
};

bool are_few(std::size_t cases) {
  return cases < least_cases_for_percentiles;
}

Ends ends_of(const CaseSpread& spread, std::size_t cases) {
  return are_few(cases) ? Ends{spread.least, spread.greatest} : Ends{spread.p10, spread.p90};
}

}  // namespace

std::string range_words(std::size_t cases) {
  return are_few(cases) ? fmt::format("least-greatest of all {} cases", cases) : "10th-90th percentile";
}

std::string narrow_range(const CaseSpread& spread, std::size_t cases) {
  const auto ends = ends_of(spread, cases);
  return fmt::format("{} ({}-{})", figure(spread.p50, 0), figure(ends.low, 0), figure(ends.high, 0));
}

std::string wide_range(const CaseSpread& spread, std::size_t cases) {
  const auto ends = ends_of(spread, cases);
  return fmt::format("{} ({}{} to {})", figure(spread.p50, 0),
                     are_few(cases) ? fmt::format("all {} cases: ", cases) : std::string(),
                     figure(ends.low, 0), figure(ends.high, 0));
}

std::string unsettled_words(const VentAdvice& advice) {
  if (advice.least_window_hours)
    return fmt::format("too few window-hours for eight cases; give --window-hours {}",
                       *advice.least_window_hours);
  const auto& because = advice.not_settled_because;
  return because.ends_with('.') ? because.substr(0, because.size() - 1) : because;
}

}  // namespace dewgap::tools
