// A job or money file written again from what was read, so that the same figures can be made from it.
#pragma once

#include <string>
#include <vector>

#include "tools/job/given_value.hpp"

namespace dewgap::tools {

/// TOML with the same values: the sections in their order, each reading a [[section]] of its own. Comments,
/// spelling and what was "not known" are not kept.
std::string job_text(const std::vector<GivenValue>& given);

}  // namespace dewgap::tools
