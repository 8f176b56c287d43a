// The vent decision for people on a terminal: one screen of 62 columns.
#pragma once

#include <string>

#include "tools/answer/advised_job.hpp"

namespace dewgap::tools {

/// At most 44 lines. On HOLD: the questions to settle and the cautions, and not a figure more.
std::string text_vent(const AdvisedJob& job);

}  // namespace dewgap::tools
