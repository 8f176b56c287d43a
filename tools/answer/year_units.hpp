// The units of a year's tables.
#pragma once

#include "tools/job/units.hpp"

namespace dewgap::tools {

inline constexpr Unit grams{"g", 1000.0};
inline constexpr Unit litres_an_hour{"l/h", 3.6e6};
inline constexpr Unit kilowatt_hours{"kWh", 1.0 / 3.6e6};

}  // namespace dewgap::tools
