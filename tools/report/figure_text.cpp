#include "tools/report/figure_text.hpp"

#include <stdexcept>

#include "tools/answer/figures_text.hpp"

namespace dewgap::tools {
namespace {

using Json = nlohmann::ordered_json;

int decimals_of(char digit) {
  if (digit < '0' || digit > '3') throw std::invalid_argument("a figure has 0 to 3 decimals");
  return digit - '0';
}

std::string one_number(double value, std::string_view form) {
  if (form == "share") return share_text(value);
  const bool has_sign = form.starts_with('+');
  const auto text = figure(value, decimals_of(form.back()));
  const bool is_above_zero = value > 0.0 && text.find_first_of("123456789") != std::string::npos;
  return has_sign && is_above_zero ? "+" + text : text;
}

/// From the 10th to the 90th percentile; of few cases from the least to the greatest, and it says so.
std::string range_text(const Json& spread, std::string_view form) {
  const bool has_percentiles = spread.contains("p10");
  return (has_percentiles ? "" : "all cases: ") +
         one_number(spread.at(has_percentiles ? "p10" : "least").get<double>(), form) + " to " +
         one_number(spread.at(has_percentiles ? "p90" : "greatest").get<double>(), form);
}

}  // namespace

std::string figure_text(const Json& value, std::string_view form) {
  if (form.empty()) throw std::invalid_argument("a figure needs a form");
  if (value.is_number()) return one_number(value.get<double>(), form);
  if (!value.is_object() || !value.contains("p50")) throw std::invalid_argument("not a figure");
  if (form.starts_with("range")) return range_text(value, form == "range" ? "0" : form.substr(5));
  return one_number(value.at("p50").get<double>(), form) + " (" + range_text(value, form) + ")";
}

}  // namespace dewgap::tools
