// What is wrong with a section's values, names and polygons, each taken alone.
#pragma once

#include "dewgap/window/section.hpp"

namespace dewgap::section_kernel {

/// Throws InvalidInput for the first fault found.
void check_values(const Section& section);
void check_polygon(const SectionItem& item);

/// Place of a name among the boundaries; throws InvalidInput that `asked_by` asks for it in vain.
std::size_t boundary_named(const Section& section, std::string_view name, std::string_view asked_by);

}  // namespace dewgap::section_kernel
