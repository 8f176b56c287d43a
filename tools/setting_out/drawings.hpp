// The fitter's drawings, to scale, in black and white.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "tools/drawing/svg.hpp"
#include "tools/setting_out/job_to_set.hpp"

namespace dewgap::tools {

/// The smallest usual ratio ("1:10" is 10) at which a size, mm, takes no more room than given.
double drawing_ratio(double width_mm, double height_mm, double most_width_mm, double most_height_mm);
/// The largest of three measured lengths, mm.
double largest_mm(const std::array<double, 3>& lengths_m);
/// "1:7.5".
std::string ratio_text(double ratio);

/// The sheet as seen from the room: size, marks numbered with their distance from the left and the bottom
/// edge, tape with its breaks, which edge is the top. For a window that is set out.
SvgDrawing elevation_drawing(const WindowToSet& window, const std::string& id);

/// Cut through member, glass, tape and sheet with what holds it. For a window that is set out.
SvgDrawing section_drawing(const WindowToSet& window, const std::string& id);

/// The opening as measured, without a sheet or a mark. For a window that is refused.
SvgDrawing refused_opening_drawing(const WindowToSet& window, const std::string& id);

/// A stock sheet with the pieces cut from it.
SvgDrawing stock_drawing(const CutGroup& group, std::size_t layout, const std::string& id);

}  // namespace dewgap::tools
