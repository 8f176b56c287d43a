// The time of a row.
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include "tools/weather/header_kernel.hpp"

namespace dewgap::tools::weather {

/// The start of an hour as the file's clock tells it.
struct Stamp {
  TextMark mark;
  std::string_view text;         ///< as it stands in the file
  std::chrono::local_days day;   ///< of the year 2000 when the file tells month and day only
  std::chrono::minutes time{0};  ///< from midnight; -60 for the hour that ends at midnight
  std::optional<std::chrono::minutes> utc_offset;
};

/// One a row. Times that do not parse are told; the result is then one of fewer rows.
std::vector<Stamp> read_stamps(const CsvRows& table, const TimeColumns& columns, Problems& problems);

}  // namespace dewgap::tools::weather
