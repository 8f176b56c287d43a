// Weather that passes line by line and yet cannot be right, or is to be doubted, as a whole.
#pragma once

#include <string>
#include <vector>

#include "tools/weather/values_kernel.hpp"
#include "tools/weather/weather_figures.hpp"

namespace dewgap::tools::weather {

/// Tells columns named per cent that hold shares: none of their values is above 1.5 % (cloud: and some are
/// above 0).
void require_percents(const std::vector<HourlyValues>& of_slots, Problems& problems);

/// Tells what no place on earth has. Limits are our convention, from memory, wider than the records:
///  - the year's mean -60 to 36 C; the coldest month's at most 33 C;
///  - the warmest month's, taken to sea level at 6.5 K/km, at least 10 C within 40 degrees of the equator,
///    0 C within 60, -5 C farther north, -15 C farther south: values in another unit than the name says;
///  - a standard deviation of the hours of at least 0.5 K;
///  - outside the tropics, June to August warmer than December to February in the north, colder in the south;
///  - relative humidity of 10 % or more on average.
void require_possible_year(const WeatherFigures& figures, double elevation_m, const Header& header,
                           Problems& problems);

/// What may be, but is seldom right, a sentence each: humidity that hardly changes, much wind or none, and a
/// year's sun outside 500 to 2800 kWh/m2. Our convention.
std::vector<std::string> doubts_about(const WeatherFigures& figures);

}  // namespace dewgap::tools::weather
