// The answer to a section: a page of text, JSON, and the room side as a table.
#pragma once

#include <string>

#include "tools/section/solved_section.hpp"

namespace dewgap::tools {

std::string text_section(const SolvedSection& solved);

/// Its form: dewgap schema --section.
std::string json_section(const SolvedSection& solved);

/// Temperatures along the faces of all room sides, a line for each crossing of the grid.
std::string csv_section(const SolvedSection& solved);

/// One sentence: what was reached when the bounds were not.
std::string reached_text(const SolvedSection& solved);

}  // namespace dewgap::tools
