// The numbers of a weather file, column by column.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "tools/weather/header_kernel.hpp"
#include "tools/weather/year_order_kernel.hpp"

namespace dewgap::tools::weather {

/// A column in the library's own unit; an hour without a value has none.
struct HourlyValues {
  DataColumn column;
  std::vector<std::optional<double>> values;
};

struct ReadValues {
  std::vector<HourlyValues> columns;  ///< a value a row
  std::vector<std::string> notes;
};

/// Tells cells that are neither a number nor empty, and numbers out of range. Such a cell holds some value of
/// its range in what is returned, so that it does not count as missing too.
ReadValues read_values(const CsvRows& table, const Header& header, Problems& problems);

/// The same by slots of the year.
std::vector<HourlyValues> in_order_of_year(const std::vector<HourlyValues>& of_rows, const YearOrder& order);

}  // namespace dewgap::tools::weather
