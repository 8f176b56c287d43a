// A solved section drawn to scale: materials by hatch, isotherms with their temperatures, the coldest point
// of the room side. Black and white is enough to read it.
#pragma once

#include <string>

#include "tools/drawing/svg.hpp"
#include "tools/section/solved_section.hpp"

namespace dewgap::tools {

/// Lengths on paper, mm: a page lying down. The scale is the largest usual one at which the section, or the
/// part of it that its file shows, is at most 170 wide and 150 high. Throws InvalidInput when that part holds
/// nothing of the section.
SvgDrawing section_picture(const SolvedSection& solved, const std::string& id);

}  // namespace dewgap::tools
