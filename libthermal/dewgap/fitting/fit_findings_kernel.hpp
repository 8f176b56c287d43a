// The single checks behind fit_check, in groups. Private to the room.
#pragma once

#include <vector>

#include "dewgap/fitting/fit_check.hpp"

namespace dewgap::fitting {

/// Back face of the sheet past the fixing face, m.
double sheet_back_m(const FitCheckInput& input);

std::vector<FitFinding> findings_of_parts(const FitCheckInput& input);    ///< what stands out and hangs
std::vector<FitFinding> findings_of_opening(const FitCheckInput& input);  ///< what moves, gaps
std::vector<FitFinding> findings_of_hold(const FitCheckInput& input);     ///< face and timber
std::vector<FitFinding> findings_of_shape(const FitCheckInput& input);    ///< square or not

}  // namespace dewgap::fitting
