// Patterns that tell materials apart in black and white.
#pragma once

#include <string>

#include "tools/drawing/svg.hpp"

namespace dewgap::tools {

/// The <pattern> of a material, its id `id_start` and the material's own. A unit of the pattern is `unit` of
/// the drawing.
std::string hatch_pattern(Material material, const std::string& id_start, double unit);
std::string hatch_id(Material material, const std::string& id_start);

}  // namespace dewgap::tools
