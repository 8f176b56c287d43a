// What a year of weather is like in a few figures: told with every answer that rests on a weather file.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>

#include "dewgap/climate/hourly_year.hpp"

namespace dewgap::tools {

/// Which file it was, so that it can be known again, and how it was read.
struct WeatherIdentity {
  std::string name;            ///< without its folder
  std::size_t rows = 0;        ///< below the header
  std::uint64_t checksum = 0;  ///< fnv1a_64 of its bytes
  int longest_repair_h = 0;
};

struct WeatherFigures {
  double latitude_deg = 0.0;
  double longitude_deg = 0.0;
  double mean_C = 0.0;
  double temperature_sd_K = 0.0;     ///< of the hours
  std::array<double, 12> month_C{};  ///< means, January first
  double relative_humidity = 0.0;    ///< mean of the hours, over water
  double relative_humidity_sd = 0.0;
  double wind_m_s = 0.0;
  double sun_kWh_m2 = 0.0;  ///< of the year, on the horizontal

  double coldest_month_C() const;
  double warmest_month_C() const;
};

/// Throws InvalidInput for a year that is not one (require_valid).
WeatherFigures figures_of(const HourlyYear& year);

/// "51.0 N, 10.0 W".
std::string coordinates_text(double latitude_deg, double longitude_deg);

}  // namespace dewgap::tools
