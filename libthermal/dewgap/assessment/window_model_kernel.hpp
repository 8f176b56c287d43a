// The surveyed window as the physics sees it: lengths, areas, materials. Internal to assessment/.
#pragma once

#include <vector>

#include "dewgap/assessment/assess.hpp"
#include "dewgap/materials/materials.hpp"

namespace dewgap {

struct WindowModel {
  double width_m = 0.0;  ///< mean opening
  double height_m = 0.0;
  double glass_height_m = 0.0;  ///< of one pane: sets the films and the gap's convection
  WindowAreas areas;
  double joint_length_m = 0.0;  ///< between sash and frame, meeting rail included; 0 for a fixed light
  double putty_length_m = 0.0;
  double meeting_rail_m = 0.0;  ///< or the meeting stile of sashes that move sideways
  double glass_thickness_m = 0.0;
  double frame_thickness_m = 0.0;
  double gap_width_m = 0.0;
  double sheet_thickness_m = 0.0;
  double tape_thickness_m = 0.0;
  double tape_width_m = 0.0;
  double frame_u_W_m2K = 0.0;
  SheetProperties sheet;
  TapeProperties tape;
  bool joints_in_series = false;      ///< the sheet covers them: they breathe into the gap
  std::vector<ResolvedInput> inputs;  ///< each with its basis
};

/// Throws InvalidInput for geometry that contradicts itself.
WindowModel window_model(const Survey& survey);
/// The same of a survey that need not be valid.
WindowModel resolved_window(const Survey& survey);

}  // namespace dewgap
