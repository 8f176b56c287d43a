// What bending, stock and catches say to a plan. Private to the room.
#pragma once

#include <optional>

#include "dewgap/fitting/sheet_plan.hpp"

namespace dewgap::fitting {

/// What the span needs; none for film, which hangs in its tape.
std::optional<ThicknessAdvice> span_advice(const SheetPlanInput& input, double width_m, double height_m);

/// The plan with the sheet's deflection, and where it told against the thickness.
SheetPlan with_bending(SheetPlan plan, const SheetPlanInput& input, const ThicknessAdvice& advice);

/// The plan with what stands against it from diagonals, stock and catches.
SheetPlan with_refusals(SheetPlan plan, const SheetPlanInput& input);

}  // namespace dewgap::fitting
