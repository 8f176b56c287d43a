// Sun that an added sheet keeps out, as energy a day.
#pragma once

#include <array>

#include "dewgap/climate/sun.hpp"

namespace dewgap {

/// Transmitted sun before minus after, kWh/day by month: area x irradiation x tau_glass x (1 - tau_sheet).
///
/// Area 0 to 100 m2 of glass behind the sheet; solar transmittances 0 to 1 at normal incidence (materials
/// carry the range); irradiation 0 to 15 kWh/(m2 day). Throws InvalidInput outside.
///
/// sheet_transmittance is the share that reaches the room: direct, or with the part of the absorbed heat that
/// flows inwards (assessment adds it). Leaves out reflection to and fro between glass and sheet (about 4 % of
/// the cut) and that slanting light passes a sheet less well: the first overstates the cut, the second
/// understates it.
std::array<double, 12> sun_cut_kWh_day(const MonthlySun& sun, double glass_area_m2,
                                       double glass_transmittance, double sheet_transmittance);

}  // namespace dewgap
