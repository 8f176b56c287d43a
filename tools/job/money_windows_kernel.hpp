// Whose the costs of a money file are.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "tools/job/reader.hpp"

namespace dewgap::tools {

/// A name that two of [[money.windows]] share, and one that none of the job's windows has.
std::vector<FileProblem> window_cost_problems(const TomlNode::Table& root,
                                              const std::optional<std::vector<std::string>>& windows);

}  // namespace dewgap::tools
