// How a figure of the report's document becomes text: the one routine for all that the page prints.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

namespace dewgap::tools {

/// A number, or a spread {p10, p50, p90} as "4.9 (4.6 to 5.2)", of few cases {p50, least, greatest} as
/// "4.9 (all cases: 4.1 to 5.8)", in one of the forms
///   "0", "1", "2", "3"   so many decimals,
///   "+0", "+1"           the same with a sign,
///   "share"              a share of 1 as per cent: "82 %", "over 99 %",
///   "range"              of a spread alone: "4.6 to 5.2", no decimal; "range1" one.
/// Throws std::invalid_argument for another form or value, std::domain_error for a number that is not finite.
std::string figure_text(const nlohmann::ordered_json& value, std::string_view form);

}  // namespace dewgap::tools
