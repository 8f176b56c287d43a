// A job file of several windows written again from what was read of each.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "tools/job/given_value.hpp"

namespace dewgap::tools {

/// TOML with the same windows: what all of them say alike stands once, above the first [[windows]], all else
/// with its window, and so do the answers to the safety questions and readings. Sections and keys come in the
/// field table's order. `given`: of each window, as
/// the house reader has it, its name as job.name. `house_name`: printed above the answer. Comments, spelling
/// and what was "not known" are not kept.
std::string house_text(const std::vector<std::vector<GivenValue>>& given, std::string_view house_name);

}  // namespace dewgap::tools
