// The command line as a function, so that tests call it in-process.
#pragma once

#include <string>
#include <vector>

#include "tools/streams.hpp"

namespace dewgap::tools {

/// Runs dewgap with the arguments after the program's name. Returns the exit code: 0 computed (HOLD
/// included), 1 could not be computed, 2 bad input or usage, 3 file trouble. Results go to `out` whole or not
/// at all, but for the hours of `year`, which are written as they are worked out; diagnostics to `err`.
int run(const std::vector<std::string>& arguments, Streams streams);

}  // namespace dewgap::tools
