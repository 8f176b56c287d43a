// Which row tells which hour of the year.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "tools/weather/stamps_kernel.hpp"

namespace dewgap::tools::weather {

/// An hour of the year from 1 January, 0 h is a slot.
struct YearOrder {
  std::vector<std::optional<std::size_t>> row_of_slot;  ///< 8760, or 8784 with a 29 February
  std::size_t first_slot = 0;                           ///< that of the first row
  std::optional<double> utc_offset_h;                   ///< of the clock, where known
  std::vector<std::string> notes;
};

/// Tells times that are not on the hour, occur twice, go back or reach beyond a year, and stops. At least one
/// stamp. `utc_offset_h` is the clock that is wanted; without it, that of the smallest offset in the stamps.
YearOrder order_of_year(const std::vector<Stamp>& stamps, const TimeColumns& columns,
                        std::optional<double> utc_offset_h, Problems& problems);

/// "5 March, 07:00" of a slot.
std::string slot_text(std::size_t slot, std::size_t hours);

}  // namespace dewgap::tools::weather
