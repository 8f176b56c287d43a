// A side of a section file: its air or cut-off, and the outer edges that belong to it.
#pragma once

#include "dewgap/window/section.hpp"
#include "tools/section/keys_kernel.hpp"

namespace dewgap::tools::section_file {

/// What is wrong is reported.
SectionBoundary side_of(TableKeys& keys);

}  // namespace dewgap::tools::section_file
