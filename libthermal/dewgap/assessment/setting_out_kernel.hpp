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

/// What has to be measured, built or changed before a sheet can be set out, one sentence each. A catch in the
/// way is told by mends_before_fitting.
std::vector<std::string> needed_before_setting_out(const Survey& survey);

}  // namespace dewgap
