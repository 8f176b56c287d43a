// What the columns of a weather file are.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "tools/weather/csv_rows_kernel.hpp"
#include "tools/weather/quantities_kernel.hpp"

namespace dewgap::tools::weather {

/// Which end of its hour a stamp names.
enum class Stamped { start, end };

/// Positions of the columns that tell the time: `time`, or the other three.
struct TimeColumns {
  Stamped stamped = Stamped::start;
  std::optional<std::size_t> time;
  std::size_t month = 0;
  std::size_t day = 0;
  std::size_t hour = 0;
};

struct DataColumn {
  const QuantityRule* rule;
  const ColumnUnit* unit;
  std::size_t position;
  TextMark mark;

  std::string name() const { return std::string(rule->name) + "_" + std::string(unit->suffix); }
};

struct Header {
  TimeColumns time;
  std::vector<DataColumn> columns;
  std::vector<std::string> unknown;  ///< names of columns that are left out
};

/// Tells everything that is wrong with the header, and stops if anything is.
Header read_header(const Row& header, Problems& problems);

}  // namespace dewgap::tools::weather
