// Timber beside the glass through a year, for one sample. Internal to assessment/.
#pragma once

#include <optional>

#include "dewgap/assessment/frame_moisture.hpp"
#include "dewgap/assessment/year_run_kernel.hpp"

namespace dewgap {

struct PairedTimber {
  TimberYear without;
  TimberYear with;
};
/// Both windows through the same hours; none when the winter balance or more than 0.1 % of the hours do not
/// settle.
std::optional<PairedTimber> paired_timber(const YearSetting& year, const UnknownValues& sample,
                                          VentOption option);

}  // namespace dewgap
