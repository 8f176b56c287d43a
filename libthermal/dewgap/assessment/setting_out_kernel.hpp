// What to cut and fix at the surveyed window, and what is missing for it. Internal to assessment/.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dewgap/assessment/vent_option.hpp"
#include "dewgap/assessment/window_model_kernel.hpp"
#include "dewgap/fitting/sheet_plan.hpp"

namespace dewgap {

/// The sheet set out for the part of the window that it covers: the opening for the frame and the reveal, the
/// visible glass of one sash or pane for those. None when that glass is not measured, or when its panes do
/// not tell the glass of a sash: more than one a sash, or two that don't fit the opening's height.
/// The tape is broken as the vent option has it.
std::optional<SheetPlan> plan_for(const Survey& survey, const WindowModel& window,
                                  VentOption vent = VentOption::sealed);

/// The breaks in the tape that an option asks for; none for most.
std::vector<BreaksWanted> breaks_wanted(VentOption vent);

/// Where the sheet sits, and what it is sized from: the opening, or the visible glass where that is covered
/// and measured.
SheetSeat seat_of(Cover cover);
MeasuredOpening measured_for_sheet(const Survey& survey);

/// For a survey without a plan: what to measure, a sentence.
std::string what_to_measure(const Survey& survey);

}  // namespace dewgap
