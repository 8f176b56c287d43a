// What the flow network accepts as input. Not installed.
#pragma once

#include "dewgap/airflow/gap_network.hpp"

namespace dewgap::airflow_kernel {

/// Each throws InvalidInput outside the ranges that gap_network.hpp states.
void require_valid(const GapNetwork& network);
void require_valid(const AirDensities& densities);
void require_valid(const PressureWithinHour& pressure);

}  // namespace dewgap::airflow_kernel
