// A vent decision with every part filled in, made by hand.
#pragma once

#include "tools/answer/advised_job.hpp"

namespace dewgap::test {

VentAdvice hand_made_advice();

/// Asked with readings, so that it has the first-winter check too.
tools::AdvisedJob hand_made_advised_job();

}  // namespace dewgap::test
