#include "dewgap/airflow/flow_lanes_kernel.hpp"

#include <algorithm>
#include <cmath>

namespace dewgap::airflow_kernel {
namespace {

constexpr double equal_shape_share = 1e-13;
// Keeps slopes below 1e80, so that their powers stay finite. An opening in which it counts passes 1e60 m3/s.
constexpr double trace = 1e-160;

/// laminar / root of quadratic: which mixture of laminar and square-root law the opening is.
double shape_of(const FlowResistance& opening) {
  return opening.laminar_Pa_s_m3 / std::sqrt(opening.quadratic_Pa_s2_m6);  // infinite when laminar only
}

bool same_shape(const FlowResistance& one, const FlowResistance& other) {
  const double a = shape_of(one);
  const double b = shape_of(other);
  const double larger = std::max(a, b);
  return a == b || (std::isfinite(larger) && std::abs(a - b) <= equal_shape_share * larger);
}

/// Two openings of one shape side by side. With flows Q and r Q at every pressure the sum is (1 + r) Q, so
/// that laminar falls by 1 + r and quadratic by its square.
FlowResistance side_by_side(const FlowResistance& one, const FlowResistance& other) {
  const double ratio = one.laminar_Pa_s_m3 > 0.0
                           ? one.laminar_Pa_s_m3 / other.laminar_Pa_s_m3
                           : std::sqrt(one.quadratic_Pa_s2_m6 / other.quadratic_Pa_s2_m6);
  const double share = 1.0 / (1.0 + ratio);
  return {.laminar_Pa_s_m3 = share * one.laminar_Pa_s_m3,
          .quadratic_Pa_s2_m6 = share * share * one.quadratic_Pa_s2_m6};
}

std::vector<PlacedOpening> merged(const std::vector<PlacedOpening>& openings) {
  std::vector<PlacedOpening> kept;
  for (const auto& opening : openings) {
    if (opening.resistance.shut()) {
      continue;
    }
    const auto twin = std::find_if(kept.begin(), kept.end(), [&](const PlacedOpening& other) {
      return other.height_m == opening.height_m && same_shape(other.resistance, opening.resistance);
    });
    if (twin == kept.end()) {
      kept.push_back(opening);
    } else {
      twin->resistance = side_by_side(twin->resistance, opening.resistance);
    }
  }
  return kept;
}

}  // namespace

LaneNetwork::LaneNetwork(const GapNetwork& network) {
  room = append(network.to_room, network.reference_height_m);
  room_count = count();
  outdoors = append(network.to_outdoors, network.reference_height_m);
}

HeightRange LaneNetwork::append(const std::vector<PlacedOpening>& openings, double reference_height_m) {
  HeightRange range;
  for (const auto& [resistance, height_m] : merged(openings)) {
    const double a = resistance.laminar_Pa_s_m3;
    const double above_m = height_m - reference_height_m;
    laminar_Pa_s_m3.push_back(a);
    laminar_squared.push_back(a * a + trace);
    four_quadratic.push_back(4.0 * resistance.quadratic_Pa_s2_m6);
    above_reference_m.push_back(above_m);
    range = {.low_m = std::min(range.low_m, above_m), .high_m = std::max(range.high_m, above_m)};
  }
  return range;
}

}  // namespace dewgap::airflow_kernel
