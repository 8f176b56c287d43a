// From what a survey measured to the drawn bottom of the window. Internal to assessment/.
#pragma once

#include <vector>

#include "dewgap/assessment/window_model_kernel.hpp"
#include "dewgap/window/ready_sections.hpp"

namespace dewgap {

/// Conductivities that the section is drawn with.
struct EdgeMaterials {
  double frame_W_mK = 0.0;
  double sub_frame_W_mK = 0.0;
  double gap_W_m2K = 0.0;  ///< conductance of the gap
};
/// Best values, and a gap of usual size.
EdgeMaterials usual_edge_materials(FrameKind frame);

/// Whether the sheet's tape stands on the steel itself.
bool sheet_on_steel(const Survey& survey);

/// Throws InvalidInput, with the library's own names of the sizes, for what cannot be drawn.
ReadySection edge_section(const Survey& survey, const WindowModel& window, const EdgeMaterials& materials);

/// What stands against the section of a survey that asks for it and has no other problem.
std::vector<SurveyProblem> edge_problems(const Survey& survey);

}  // namespace dewgap
