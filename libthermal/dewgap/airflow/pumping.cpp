#include "dewgap/airflow/pumping.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "dewgap/air/constants.hpp"
#include "dewgap/airflow/network_checks_kernel.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/numerics/levy_series.hpp"

namespace dewgap {
namespace {

constexpr double pi = std::numbers::pi;

void require_valid(const FlexingSheet& sheet) {
  require_in_range(sheet.width_m, {0.05, 5.0}, "width_m", "m");
  require_in_range(sheet.height_m, {0.05, 5.0}, "height_m", "m");
  require_in_range(sheet.thickness_m, {1e-5, 0.05}, "thickness_m", "m");
  require_in_range(sheet.youngs_modulus_Pa, {1e8, 3e11}, "youngs_modulus_Pa", "Pa");
  require_in_range(sheet.poisson_ratio, {0.0, 0.5}, "poisson_ratio", "");
}

/// D = E t^3 / (12 (1 - nu^2)), N m.
double stiffness_Nm(const FlexingSheet& sheet) {
  const double t = sheet.thickness_m;
  return sheet.youngs_modulus_Pa * t * t * t / (12.0 * (1.0 - sheet.poisson_ratio * sheet.poisson_ratio));
}

struct Sides {
  double short_m;
  double long_m;
};

Sides sides_of(const FlexingSheet& sheet) {
  return {std::min(sheet.width_m, sheet.height_m), std::max(sheet.width_m, sheet.height_m)};
}

double conductance_m3_s(const std::vector<PlacedOpening>& openings) {
  double sum = 0.0;
  for (const auto& opening : openings) {
    sum += flow_m3_s(opening.resistance, 1.0);
  }
  return sum;
}

}  // namespace

double plate_volume_per_pressure_m3_Pa(const FlexingSheet& sheet) {
  require_valid(sheet);
  const auto [a, b] = sides_of(sheet);
  // mean deflection c a^4 / D, times the area
  return numerics::levy_mean_deflection(b / a) * std::pow(a, 5) * b / stiffness_Nm(sheet);
}

double plate_volume_per_pressure_m3_Pa(double width_m, double height_m, double thickness_m,
                                       double youngs_modulus_Pa, double poisson_ratio) {
  return plate_volume_per_pressure_m3_Pa(
      FlexingSheet{width_m, height_m, thickness_m, youngs_modulus_Pa, poisson_ratio});
}

double plate_deflection_per_pressure_m_Pa(const FlexingSheet& sheet) {
  require_valid(sheet);
  const auto [a, b] = sides_of(sheet);
  return numerics::levy_centre(b / a).deflection * std::pow(a, 4) / stiffness_Nm(sheet);
}

double plate_valid_to_Pa(const FlexingSheet& sheet) {
  return 0.5 * sheet.thickness_m / plate_deflection_per_pressure_m_Pa(sheet);
}

double pumped_m3_s(double volume_per_pressure_m3_Pa, double pressure_standard_deviation_Pa,
                   double cycles_per_s) {
  require_in_range(volume_per_pressure_m3_Pa, {0.0, 0.1}, "volume_per_pressure_m3_Pa", "m3/Pa");
  require_in_range(pressure_standard_deviation_Pa, {0.0, 1000.0}, "pressure_standard_deviation_Pa", "Pa");
  require_in_range(cycles_per_s, {0.0, 10.0}, "cycles_per_s", "1/s");
  // Rice: the mean positive slope is sigma' / sqrt(2 pi), the rate of upward crossings sigma' / (2 pi sigma).
  return std::sqrt(2.0 * pi) * pressure_standard_deviation_Pa * cycles_per_s * volume_per_pressure_m3_Pa;
}

double breathed_in_m3_s(double gap_volume_m3, double cooling_K, double mean_temperature_C,
                        double duration_s) {
  require_in_range(gap_volume_m3, {0.0, 100.0}, "gap_volume_m3", "m3");
  require_in_range(cooling_K, {-100.0, 100.0}, "cooling_K", "K");
  require_in_range(mean_temperature_C, {-60.0, 80.0}, "mean_temperature_C", "C");
  require_in_range(duration_s, {1.0, 1e7}, "duration_s", "s");
  // Ideal gas at constant pressure: dV = V dT / T.
  return gap_volume_m3 * std::max(cooling_K, 0.0) / constants::kelvin(mean_temperature_C) / duration_s;
}

double room_share_of_conductance(const GapNetwork& network) {
  airflow_kernel::require_valid(network);
  const double room = conductance_m3_s(network.to_room);
  const double outdoors = conductance_m3_s(network.to_outdoors);
  return room > 0.0 ? room / (room + outdoors) : 0.0;
}

double flexing_response(const GapNetwork& network, double volume_per_pressure_m3_Pa, double cycles_per_s) {
  airflow_kernel::require_valid(network);
  require_in_range(volume_per_pressure_m3_Pa, {0.0, 0.1}, "volume_per_pressure_m3_Pa", "m3/Pa");
  require_in_range(cycles_per_s, {0.0, 10.0}, "cycles_per_s", "1/s");
  const double room = conductance_m3_s(network.to_room);
  const double outdoors = conductance_m3_s(network.to_outdoors);
  if (!(outdoors > 0.0)) {
    return 0.0;
  }
  // A volume that fills through a conductance: a first-order lag, its gain at the gusts' frequency.
  const double turns = 2.0 * pi * cycles_per_s * volume_per_pressure_m3_Pa / (room + outdoors);
  return outdoors / (room + outdoors) / std::hypot(1.0, turns);
}

bool open_to_either_side(const GapNetwork& network) {
  const auto open = [](const PlacedOpening& opening) { return !opening.resistance.shut(); };
  return std::any_of(network.to_room.begin(), network.to_room.end(), open) ||
         std::any_of(network.to_outdoors.begin(), network.to_outdoors.end(), open);
}

}  // namespace dewgap
