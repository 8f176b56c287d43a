// The units that people write in files, and what they are in the library.
#pragma once

#include <string_view>

namespace dewgap::tools {

/// A unit of the files: `per_base` of it make one of the library's own unit (1000 mm a metre, 100 per cent a
/// one).
struct Unit {
  std::string_view symbol;
  double per_base = 1.0;

  constexpr double to_base(double in_files) const { return in_files / per_base; }
  constexpr double from_base(double in_library) const { return in_library * per_base; }
};

inline constexpr Unit millimetres{"mm", 1000.0};
inline constexpr Unit per_cent{"per cent", 100.0};
inline constexpr Unit per_cent_a_year{"per cent a year", 100.0};
inline constexpr Unit celsius{"C"};
inline constexpr Unit kelvin{"K"};
inline constexpr Unit kilometres{"km"};
inline constexpr Unit metres{"m"};
inline constexpr Unit pascals{"Pa"};
inline constexpr Unit hours_a_day{"h a day"};
inline constexpr Unit kilowatt_hours_a_year{"kWh a year"};
inline constexpr Unit leakage_of_joint{"m3/(h m) at 1 Pa"};
inline constexpr Unit air_flow{"m3/h"};
inline constexpr Unit transmittance{"W/(m2 K)"};
inline constexpr Unit conductivity{"W/(m K)"};
inline constexpr Unit degrees{"degrees"};
inline constexpr Unit years{"years"};
inline constexpr Unit carbon_of_fuel{"kg per kWh"};
inline constexpr Unit currency_per_kilowatt_hour{"currency per kWh"};
inline constexpr Unit currency{"currency"};
inline constexpr Unit plain{""};

}  // namespace dewgap::tools
