// The answer for people on a terminal: at most 62 columns, the gates first.
#pragma once

#include <string>

#include "tools/answer/answered_job.hpp"

namespace dewgap::tools {

/// On HOLD: the questions to settle and the cautions; no saving, no size to cut, no figure for drilling.
std::string text_answer(const AnsweredJob& job);

}  // namespace dewgap::tools
