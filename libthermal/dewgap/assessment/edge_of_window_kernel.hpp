// The edge's section solved for a survey, and its use in a case. Internal to assessment/.
#pragma once

#include "dewgap/assessment/summary_kernel.hpp"

namespace dewgap {

/// None unless the survey asks for it. Throws CalculationFailed when a section does not settle. Some tenths
/// of a second.
std::optional<EdgeOfWindow> edge_of_window(const Setting& setting);
/// Puts it in the place of the default frame, with its record.
void use_edge(const EdgeOfWindow& edge, Setting& setting);

/// frame_u_factor about the section's Uf.
Prior narrowed_frame_factor(const EdgeOfWindow& edge, const Survey& survey, const Prior& prior);

/// As window/cover.hpp has it, or with the section's cut of frame and edge. `u` has the section's Psi.
WindowConductance conductance_with_sheet(const Setting& setting, const WindowTransmittances& u);
double edge_psi_W_mK(const Setting& setting);
/// Of the gap's coldest place with the sheet: GapCase::edge_temperature_factor.
double gap_edge_factor(const Setting& setting, const UnknownValues& sample);

/// Of the room's air at the edge's coldest place towards the room, with the sheet, 0..1 and above.
std::optional<double> edge_spot_humidity(const Setting& setting, const Moment& month);

/// What an answer says of it, with the verdict's tape.
std::optional<EdgeAnswer> edge_answer(const Setting& setting, const WeightedRuns& runs, VentOption chosen);

}  // namespace dewgap
