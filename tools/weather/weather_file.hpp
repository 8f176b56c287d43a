// Reads a year of hourly weather from a CSV text.
//
// Lines that begin with '#' are comments. Above the header they may carry, one a line, what follows here, and
// `# source: ` with the citation:
//
//   # latitude_deg: 45.0      north positive
//   # longitude_deg: 8.0      east positive
//   # utc_offset_h: 1         of the clock that the hours are told by
//   # elevation_m: 240
//
// The header names each column by quantity and unit, in any order; capitals do not matter, and unknown
// columns are left out:
//
//   time          time_start or time_end: 2024-01-31T13:00 (ISO 8601), Z or +01:00 after it where known;
//                 or month, day and hour_start (0 to 23) or hour_end (1 to 24)
//   temperature   air_temperature_C (K, F)
//   humidity      relative_humidity_percent (share), dew_point_C (K, F) or vapour_pressure_Pa (hPa, kPa),
//                 over water, also below zero
//   wind          wind_m_s (km_h), wind_direction_deg; optional
//   sun           global_W_m2 (Wh_m2, kJ_m2: of the hour), or beam_normal_W_m2 and diffuse_W_m2, or all
//   sky           cloud_cover_percent (share), and sky_temperature_C (K, F) or long_wave_W_m2; optional
//
// Values are means of the hours. A year is 8760 hours, or 8784 with a 29 February; it begins at any hour and
// is put in the order January to December. Times with offsets are put on one clock: that of utc_offset_h
// where it is given, else of the smallest offset in the file (standard time). Months of different years are
// joined by month, day and hour.
//
// Hours without a row or a value (empty, NaN, NA or -) are filled in straight between their neighbours, the
// year closed: global and diffuse by their share of the extraterrestrial, at most 1, beam while the sun is
// up, a wind's direction along the shorter arc, vapour to at most saturation. Sun of -10 to 0 W/m2, which
// instruments show at night, counts as 0 and is told.
//
// A year that no place on earth has is refused, as shares under per cent are and values in another unit than
// the column's name says; what is only seldom right is a warning (plausible_kernel.hpp has the limits).
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "dewgap/climate/hourly_year.hpp"
#include "tools/job/toml_tree.hpp"
#include "tools/weather/weather_figures.hpp"

namespace dewgap::tools {

/// What stands here goes before what the file says.
struct WeatherFileOptions {
  int longest_repair_h = 3;  ///< 0 to 24; 0 refuses a file with a missing value
  std::optional<double> latitude_deg = std::nullopt;
  std::optional<double> longitude_deg = std::nullopt;
  std::optional<double> utc_offset_h = std::nullopt;
  std::optional<double> elevation_m = std::nullopt;
};

struct WeatherFile {
  HourlyYear year;
  WeatherIdentity identity;
  std::size_t repaired_hours = 0;  ///< hours in which at least one value was filled in
  std::size_t longest_repaired_gap_h = 0;
  std::vector<std::string> notes;     ///< what was moved, filled in, modelled or left out, a sentence each
  std::vector<std::string> warnings;  ///< what is to be doubted, a sentence each
  std::vector<std::string> ignored_columns;  ///< by name
  WeatherFigures figures;
  TextMark latitude_mark;  ///< where the latitude stands
};

/// A Failure of bad input says everything that is wrong with the file, "name:line:column: what", at most 20
/// lines and three of a kind. Options outside their range throw InvalidInput.
WeatherFile read_weather(std::string_view text, std::string_view file_name,
                         const WeatherFileOptions& options = {});

}  // namespace dewgap::tools
