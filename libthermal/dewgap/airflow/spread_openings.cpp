// Joints spread over a height, and thermal breathing.
#include "dewgap/air/constants.hpp"
#include "dewgap/airflow/gap_network.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

std::vector<PlacedOpening> placed(const FlowResistance& part, double low_m, double high_m, int count) {
  require_in_range(low_m, {-1.0, 50.0}, "low_m", "m");
  require_in_range(high_m, {low_m, 50.0}, "high_m", "m");
  std::vector<PlacedOpening> openings;
  openings.reserve(static_cast<std::size_t>(count));
  for (int i = 0; i < count; ++i) {
    openings.push_back({part, low_m + (high_m - low_m) * (i + 0.5) / count});
  }
  return openings;
}

}  // namespace

std::vector<PlacedOpening> spread_over_height(const SlotShape& whole, double low_m, double high_m,
                                              int count) {
  require_in_range(count, {1, 1000}, "count", "");
  SlotShape part = whole;
  part.length_m = whole.length_m / count;
  return placed(slot_resistance(part), low_m, high_m, count);
}

std::vector<PlacedOpening> spread_joint_over_height(double coefficient_m3_h_m, double exponent,
                                                    double length_m, double low_m, double high_m, int count) {
  require_in_range(count, {1, 1000}, "count", "");
  return placed(joint_resistance(coefficient_m3_h_m, exponent, length_m / count), low_m, high_m, count);
}

}  // namespace dewgap
