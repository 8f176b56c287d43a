// The surveyed window as the hour by hour model takes it, for one sample. Internal to assessment/.
#pragma once

#include "dewgap/assessment/sample_run_kernel.hpp"
#include "dewgap/assessment/scenario_kernel.hpp"
#include "dewgap/gap/hours.hpp"

namespace dewgap {

/// The old window as it is: one pane, the openings that a sheet would cover, no timber of its own.
GapDesign old_window_design(const Setting& setting, const UnknownValues& sample);
/// With the sheet. off_in_summer is sealed.
GapDesign sheet_design(const Setting& setting, const UnknownValues& sample, VentOption vent, TapeFault fault);

/// Rails and stiles that face the gap: its perimeter times its depth. Area 0 at frames of metal or plastic.
DampLayer facing_timber(const Setting& setting, const UnknownValues& sample);

/// Of the sun on the window's plane, what each pane absorbs.
struct AbsorbedShares {
  double glass = 0.0;
  double sheet = 0.0;
};
/// What the glass absorbs beyond its material's best value it passes less. Reflections between the panes are
/// left out.
AbsorbedShares absorbed_sun_shares(const Setting& setting, const UnknownValues& sample);

/// Room vapour excess under an option over that with the old window as it is, at winter's mean: sealing stops
/// draught that carried moisture away. Throws CalculationFailed when the balance does not settle.
double excess_factor_under(const Setting& setting, const UnknownValues& sample, VentOption vent,
                           TapeFault fault, const OldWinter& winter);

}  // namespace dewgap
