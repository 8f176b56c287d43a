// Where the station stands: from the comments above the header, or from what was given with the file.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "tools/weather/csv_rows_kernel.hpp"
#include "tools/weather/weather_file.hpp"

namespace dewgap::tools::weather {

struct SiteFacts {
  std::optional<double> latitude_deg;
  std::optional<double> longitude_deg;
  std::optional<double> utc_offset_h;  ///< may still come from the times
  std::optional<double> elevation_m;
  TextMark latitude_mark;
  std::string source;
  std::vector<std::string> notes;
};

/// Options go before comments. Comments that are no such fact are skipped.
SiteFacts read_site_facts(const std::vector<Row>& comments, const WeatherFileOptions& options,
                          Problems& problems);

/// Tells a missing latitude, longitude or offset.
void require_site(const SiteFacts& facts, Problems& problems);

}  // namespace dewgap::tools::weather
