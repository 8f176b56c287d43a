// Figures of the cases that were run, for people.
#pragma once

#include <cstddef>
#include <string>

#include "tools/answer/advised_job.hpp"

namespace dewgap::tools {

/// Which ends a range of so many cases has: "10th-90th percentile", or "least-greatest of all 16 cases".
std::string range_words(std::size_t cases);
/// "12 (0-80)": the middle and that range.
std::string narrow_range(const CaseSpread& spread, std::size_t cases);
/// "12 (6 to 40)", or "12 (all 16 cases: 2 to 90)".
std::string wide_range(const CaseSpread& spread, std::size_t cases);

/// Why nothing is settled, and what to do about it when it is the bound that was given; no full stop.
std::string unsettled_words(const VentAdvice& advice);

}  // namespace dewgap::tools
