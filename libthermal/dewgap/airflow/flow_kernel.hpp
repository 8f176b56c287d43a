// Flow and its slope through one opening, inlined where a network sums many. Not installed.
#pragma once

#include <cmath>

#include "dewgap/airflow/openings.hpp"

namespace dewgap::airflow_kernel {

struct FlowAndSlope {
  double flow_m3_s = 0.0;
  double slope_m3_s_Pa = 0.0;
};

/// Root of dp = a Q + b Q|Q| without cancellation: Q = 2 dp / (a + s), s = sqrt(a^2 + 4 b |dp|), dQ/d(dp) =
/// 1/s. An opening without laminar term has an infinite slope at zero. Must not be called for a shut opening.
inline FlowAndSlope flow_and_slope(const FlowResistance& opening, double difference_Pa) {
  const double a = opening.laminar_Pa_s_m3;
  const double s = std::sqrt(a * a + 4.0 * opening.quadratic_Pa_s2_m6 * std::abs(difference_Pa));
  const double sum = a + s;
  return {sum > 0.0 ? 2.0 * difference_Pa / sum : 0.0, 1.0 / s};
}

}  // namespace dewgap::airflow_kernel
