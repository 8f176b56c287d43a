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
/// Leaves out reflection to and fro between glass and sheet (about 4 % of the cut for clear sheets) and the
/// part of the heat absorbed in the sheet that flows inwards (about a third of it; the glass behind a sheet
/// gives back a little less). At normal incidence the cut is therefore overstated, and the saving
/// understated. Slanting and diffuse light pass a sheet less well (1 - tau about a quarter greater at 60
/// degrees): the opposite error, of about the same size. All these figures are our estimates; the range of
/// sun_used_share is there to hold what is left.
std::array<double, 12> sun_cut_kWh_day(const MonthlySun& sun, double glass_area_m2,
                                       double glass_transmittance, double sheet_transmittance);

}  // namespace dewgap
