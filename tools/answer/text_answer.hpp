// The answer for people on a terminal: one screen of 62 columns, the gates first.
#pragma once

#include <string>

#include "tools/answer/answered_job.hpp"

namespace dewgap::tools {

/// An ordinary job takes at most 44 lines, 40 on HOLD; many marks for fixings, steps to take first or few
/// cases that fit add some. On HOLD: the questions to settle and the cautions; no saving, no size to cut, no
/// figure for drilling.
std::string text_answer(const AnsweredJob& job);

}  // namespace dewgap::tools
