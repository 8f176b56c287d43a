#include "dewgap/airflow/openings.hpp"

#include <cmath>
#include <numbers>

#include "dewgap/airflow/flow_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr double seconds_per_hour = 3600.0;

void require_air(double air_density_kg_m3, double air_viscosity_Pa_s) {
  require_in_range(air_density_kg_m3, {0.5, 2.0}, "air_density_kg_m3", "kg/m3");
  require_in_range(air_viscosity_Pa_s, {1e-6, 1e-4}, "air_viscosity_Pa_s", "Pa s");
}

}  // namespace

FlowResistance slot_resistance(const SlotShape& slot, double air_density_kg_m3, double air_viscosity_Pa_s) {
  require_in_range(slot.width_m, {1e-5, 0.1}, "width_m", "m");
  require_in_range(slot.length_m, {1e-4, 50.0}, "length_m", "m");
  require_in_range(slot.depth_m, {1e-4, 0.5}, "depth_m", "m");
  require_in_range(slot.loss_factor, {0.0, 20.0}, "loss_factor", "");
  require_air(air_density_kg_m3, air_viscosity_Pa_s);
  const double w = slot.width_m;
  const double area_m2 = slot.length_m * w;
  // Plane Poiseuille flow between parallel walls (textbook).
  const double laminar = 12.0 * air_viscosity_Pa_s * slot.depth_m / (area_m2 * w * w);
  // Entry, exit and bends: loss_factor dynamic pressures of the mean velocity.
  const double quadratic = slot.loss_factor * air_density_kg_m3 / (2.0 * area_m2 * area_m2);
  return {.laminar_Pa_s_m3 = laminar, .quadratic_Pa_s2_m6 = quadratic};
}

FlowResistance orifice_resistance(double area_m2, double discharge_coefficient, double air_density_kg_m3,
                                  double air_viscosity_Pa_s) {
  require_in_range(area_m2, {1e-8, 1.0}, "area_m2", "m2");
  require_in_range(discharge_coefficient, {0.3, 1.0}, "discharge_coefficient", "");
  require_air(air_density_kg_m3, air_viscosity_Pa_s);
  // Sampson (1891): creeping flow through a round hole in a thin wall, Q = radius^3 dp / (3 mu) (from
  // memory).
  const double radius_m = std::sqrt(area_m2 / std::numbers::pi);
  const double laminar = 3.0 * air_viscosity_Pa_s / (radius_m * radius_m * radius_m);
  // Orifice equation, Q = Cd A sqrt(2 dp / rho).
  const double jet_m2 = discharge_coefficient * area_m2;
  return {.laminar_Pa_s_m3 = laminar, .quadratic_Pa_s2_m6 = air_density_kg_m3 / (2.0 * jet_m2 * jet_m2)};
}

FlowResistance weep_resistance(double diameter_m, double depth_m, int count, double air_density_kg_m3,
                               double air_viscosity_Pa_s) {
  require_in_range(diameter_m, {5e-4, 0.1}, "diameter_m", "m");
  require_in_range(depth_m, {0.0, 0.5}, "depth_m", "m");
  require_in_range(count, {1, 1000}, "count", "");
  constexpr double discharge_coefficient = 0.6;
  const double radius_m = 0.5 * diameter_m;
  const double area_m2 = std::numbers::pi * radius_m * radius_m;
  const FlowResistance hole =
      orifice_resistance(area_m2, discharge_coefficient, air_density_kg_m3, air_viscosity_Pa_s);
  // Hagen-Poiseuille flow through the bore (textbook), in series with the hole.
  const double friction = 8.0 * air_viscosity_Pa_s * depth_m / (area_m2 * radius_m * radius_m);
  // Equal holes side by side share the flow.
  return {.laminar_Pa_s_m3 = (hole.laminar_Pa_s_m3 + friction) / count,
          .quadratic_Pa_s2_m6 = hole.quadratic_Pa_s2_m6 / (static_cast<double>(count) * count)};
}

FlowResistance joint_resistance(double coefficient_m3_h_m, double exponent, double length_m) {
  require_in_range(coefficient_m3_h_m, {0.0, 1000.0}, "coefficient_m3_h_m", "m3/(h m)");
  require_in_range(exponent, {0.5, 1.0}, "exponent", "");
  require_in_range(length_m, {0.0, 100.0}, "length_m", "m");
  const double at_1_Pa = coefficient_m3_h_m * length_m / seconds_per_hour;
  if (at_1_Pa <= 0.0) {
    return {};
  }
  // a Q1 + b Q1^2 = 1 Pa and a Q10 + b Q10^2 = 10 Pa with Q10 = 10^n Q1, solved for a Q1 and b Q1^2.
  const double ratio = std::pow(10.0, exponent);
  const double quadratic_share = (std::pow(10.0, 1.0 - exponent) - 1.0) / (ratio - 1.0);
  const double laminar_share = (ratio - std::pow(10.0, 1.0 - exponent)) / (ratio - 1.0);
  return {.laminar_Pa_s_m3 = laminar_share / at_1_Pa,
          .quadratic_Pa_s2_m6 = quadratic_share / (at_1_Pa * at_1_Pa)};
}

double flow_m3_s(const FlowResistance& opening, double difference_Pa) {
  require_in_range(opening.laminar_Pa_s_m3, {0.0, 1e30}, "laminar_Pa_s_m3", "Pa s/m3");
  require_in_range(opening.quadratic_Pa_s2_m6, {0.0, 1e40}, "quadratic_Pa_s2_m6", "Pa s2/m6");
  require_in_range(difference_Pa, {-1e5, 1e5}, "difference_Pa", "Pa");
  return opening.shut() ? 0.0 : airflow_kernel::flow_and_slope(opening, difference_Pa).flow_m3_s;
}

double feeler_width_m(Feeler feeler) {
  switch (feeler) {
    case Feeler::nothing:
      return 0.0;
    case Feeler::paper:
      return 0.1e-3;
    case Feeler::folded_paper:
      return 0.4e-3;
    case Feeler::bank_card:
      return 0.76e-3;  // ISO/IEC 7810 ID-1
    case Feeler::coin:
      return 1.7e-3;
  }
  throw InvalidInput("feeler", "no such feeler");
}

}  // namespace dewgap
