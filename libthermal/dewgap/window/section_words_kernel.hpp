// Places of a section in words: millimetres, for messages.
#pragma once

#include <string>

#include "dewgap/window/section_result.hpp"

namespace dewgap::section_kernel {

/// Millimetres to a tenth of a micrometre, without trailing zeros.
std::string millimetres(double length_m);
/// "(12.5, 30) mm"
std::string place(SectionPoint point);
/// "x 0 to 10, y 5 to 7 mm"
std::string extent(SectionPoint low, SectionPoint high);

}  // namespace dewgap::section_kernel
