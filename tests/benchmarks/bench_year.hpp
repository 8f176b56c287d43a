// The window and the year of hours that the benchmarks of the gap hour by hour run.
#pragma once

#include <vector>

#include "dewgap/gap/hours.hpp"

namespace dewgap::bench {

/// A worn sash behind an acrylic sheet: an inner seal, putty and sash joint of five openings each and two
/// breaks in the seal, film, pool, soaking timber and a flexing sheet.
GapDesign bench_design();

/// 8760 hours of a carried place, synthesised from its normals, from 1 January: sky, film, sun on a wall that
/// faces south, stack and wind on a dwelling with gusts, the room's vapour by its excess on running means.
std::vector<HourConditions> bench_year();

}  // namespace dewgap::bench
