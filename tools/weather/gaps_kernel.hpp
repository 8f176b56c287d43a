// Hours without a value: which there are, whether they may be filled in, and filling them in.
#pragma once

#include <cstddef>
#include <vector>

#include "tools/weather/values_kernel.hpp"

namespace dewgap::tools::weather {

/// Hours in a row, which may run over the end of the year.
struct Gap {
  std::size_t first_slot;
  std::size_t length_h;
};
/// In the order of their first slots. `is_missing` has one entry a slot; all of them missing are one gap.
std::vector<Gap> gaps_of(const std::vector<bool>& is_missing);

/// Tells gaps longer than `longest_repair_h`, files that end before the year does, and rows or columns of
/// which more than a tenth is missing.
void require_small_gaps(const std::vector<HourlyValues>& of_slots, const YearOrder& order,
                        const CsvRows& table, int longest_repair_h, Problems& problems);

/// Complete columns, and what it took.
struct FilledColumns {
  WeatherColumns columns;
  std::vector<bool> was_filled;  ///< by slot: any value of the hour
  std::size_t filled_hours = 0;
  std::size_t longest_gap_h = 0;
};
/// Fills in as weather_file.hpp says. No column may lack all of its values.
FilledColumns filled_columns(const std::vector<HourlyValues>& of_slots, const SunSite& site);

}  // namespace dewgap::tools::weather
