// Windows and weather for the tests of the gap hour by hour.
#pragma once

#include <cstdint>
#include <vector>

#include "dewgap/gap/hours.hpp"
#include "dewgap/gap/steady.hpp"

namespace dewgap::test {

/// The steady case as a window without pool and timber, so that what solve_gap leaves out is left out.
GapDesign design_of(const GapCase& gap_case);
/// The steady case's moment as one hour.
HourConditions hour_of(const GapCase& gap_case);

/// `days` of invented weather about a case's moment: daily courses of temperature, sun and sky, wind and
/// vapour that change from day to day. `parts` steps an hour, all on the same interpolated weather.
std::vector<HourConditions> weather_about(const GapCase& gap_case, int days, std::uint64_t seed,
                                          int parts = 1);

/// The window with a pool, a weep or none, timber, a flexing sheet and a curtain as the seed has it.
GapDesign furnished(const GapCase& gap_case, std::uint64_t seed);

}  // namespace dewgap::test
