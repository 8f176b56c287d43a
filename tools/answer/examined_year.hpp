// A year of one window with what its printers need from the job.
#pragma once

#include <optional>

#include "tools/answer/advised_job.hpp"
#include "tools/answer/year_months.hpp"

namespace dewgap::tools {

struct ExaminedYear {
  AnsweredJob job;  ///< on HOLD its assessment says so, and there is nothing below
  VentOption option = VentOption::sealed;
  GapYearOptions options;
  std::optional<GapYearSummary> summary;
  YearFigures figures;
};

}  // namespace dewgap::tools
