// An answer made by hand, for tests of the printers alone. Its figures mean nothing.
#pragma once

#include "tools/answer/answered_job.hpp"

namespace dewgap::test {

/// FIT AFTER with money, a plan with screws, and every list filled.
tools::AnsweredJob hand_made_answer();

}  // namespace dewgap::test
