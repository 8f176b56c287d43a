// The openings of the surveyed window: old joints and putty, tape, breaks and weep holes. Internal to
// assessment/.
#pragma once

#include <vector>

#include "dewgap/airflow/gap_network.hpp"
#include "dewgap/assessment/scenario_kernel.hpp"

namespace dewgap {

/// Putty lines and fixed joints round the panes.
std::vector<PlacedOpening> putty_lines(const Setting& setting, const UnknownValues& sample);
/// Joints between sash and frame; none at a fixed light.
std::vector<PlacedOpening> sash_joints(const Setting& setting, const UnknownValues& sample);
/// What of both breathes into a gap behind the sheet.
std::vector<PlacedOpening> covered_openings(const Setting& setting, const UnknownValues& sample);

/// The old window without a gap: the room itself stands behind its openings, through one wide opening at the
/// reference height.
GapNetwork old_window_network(const Setting& setting, std::vector<PlacedOpening> to_outdoors);

/// The gap's network under an option. off_in_summer is sealed while its sheet hangs.
GapNetwork network_for(const Setting& setting, const UnknownValues& sample, VentOption vent, TapeFault fault);

/// Vapour that diffuses between the room and the gap, kg/(s Pa), at a mean temperature: through the sheet,
/// the tape and the still air of breaks.
double diffusion_to_room_kg_sPa(const Setting& setting, const UnknownValues& sample, VentOption vent,
                                double mean_C);

}  // namespace dewgap
