// From weighted runs to what is added up over windows. Internal to assessment/.
#pragma once

#include "dewgap/assessment/saving_samples.hpp"
#include "dewgap/assessment/summary_kernel.hpp"

namespace dewgap {

SavingSamples saving_samples_of(const WeightedRuns& runs, VentOption chosen, const Survey& survey);

}  // namespace dewgap
