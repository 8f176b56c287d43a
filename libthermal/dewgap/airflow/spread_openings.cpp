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

double thermal_breathing_m3_s(double gap_volume_m3, double daily_swing_K, double mean_temperature_C) {
  constexpr double seconds_per_day = 86400.0;
  require_in_range(gap_volume_m3, {0.0, 100.0}, "gap_volume_m3", "m3");
  require_in_range(daily_swing_K, {0.0, 100.0}, "daily_swing_K", "K");
  require_in_range(mean_temperature_C, {-60.0, 80.0}, "mean_temperature_C", "C");
  // Ideal gas at constant pressure: dV = V dT / T, drawn in once a day.
  return gap_volume_m3 * daily_swing_K / constants::kelvin(mean_temperature_C) / seconds_per_day;
}

}  // namespace dewgap
