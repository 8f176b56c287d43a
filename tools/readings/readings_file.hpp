// What was seen behind the sheet in the first frosty weeks: a CSV with one line a morning.
//
// Lines that begin with '#' are comments. The header names the columns, in any order:
//   date                   as the person writes it, at most 40 characters; each only once
//   outdoor_C              the night's lowest, -40 to 30
//   room_C                 0 to 40; may be empty or "not known"
//   room_humidity_percent  5 to 100; the same
//   mist                   on the faces of the gap: none, edges, lower_third, all_over, runs
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "dewgap/assessment/vent_advice.hpp"

namespace dewgap::tools {

inline constexpr std::size_t most_readings = 400;

/// A Failure of bad input says everything that is wrong with the file, "name:line:column: what".
std::vector<WinterReading> read_readings(std::string_view text, std::string_view file_name);

/// An empty form with an example as a comment.
std::string readings_form();

}  // namespace dewgap::tools
