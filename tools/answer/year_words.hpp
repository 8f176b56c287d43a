// What is said of a year wherever it is printed.
#pragma once

#include <string>
#include <string_view>

#include "tools/answer/examined_year.hpp"

namespace dewgap::tools {

inline constexpr std::string_view heat_note =
    "Heat: through the window (glass and gap), all hours; incoming air is not charged: not the saving.";
inline constexpr std::string_view room_note =
    "Room humidity: modelled from outdoor air plus an excess, unless the job fixes it; in summer it follows "
    "outdoors.";
inline constexpr std::string_view wind_note =
    "Wind: at the station; its angle from the window's normal, 0 onto it, 180 from behind; where modelled, "
    "the "
    "angle holds for a day.";

/// "every unknown at its middle", or which case, by what order, and what it stands for.
std::string case_words(const ExaminedYear& year, const GapYearSummary& summary);

}  // namespace dewgap::tools
