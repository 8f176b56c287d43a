#include "tools/answer/year_words.hpp"

#include <fmt/format.h>

#include "tools/answer/figures_text.hpp"

namespace dewgap::tools {

std::string case_words(const ExaminedYear& year, const GapYearSummary& summary) {
  const auto& number = year.options.plausible_case;
  if (!number) return "every unknown at its middle";
  return fmt::format("plausible case {} of {} ({}), {} of the weight", *number, summary.case_count,
                     summary.cases_in_order ? "1: least margin over the dew point, coldest month, sealed"
                                            : "in no order: too few fit what was seen",
                     share_text(summary.case_weight));
}

}  // namespace dewgap::tools
