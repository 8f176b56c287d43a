#include <cmath>

#include "dewgap/air/saturation.hpp"
#include "hour_correlations.hpp"

namespace dewgap::bench {
namespace {

using constants::celsius_zero_K;

/// What a gap's convection follows from.
struct GapAir {
  GasProperties gas;
  double rayleigh = 0.0;
  GapNusselt nu;
  double nusselt = 1.0;  ///< with the spread of correlations on Nu - 1
  double convection_W_m2K = 0.0;
};

GapAir gap_air(const Stack& stack, double mean_K, double difference_K) {
  const auto& gap = stack.gaps[0];
  GapAir air;
  air.gas = gas_properties_iso_15099(gap.gas, mean_K - celsius_zero_K);
  air.rayleigh = gap_rayleigh(air.gas, gap.width_m, difference_K, mean_K);
  air.nu = gap_nusselt(air.rayleigh, stack.height_m / gap.width_m, 90.0, stack.correlation);
  air.nusselt = 1.0 + gap.convection_factor * (air.nu.nusselt - 1.0);
  air.convection_W_m2K = air.gas.conductivity_W_mK * air.nusselt / gap.width_m;
  return air;
}

/// Slopes of convection over the outer and the inner face; those of the gas by a central difference over 1 K,
/// since the fits are all but linear.
std::array<double, 2> convection_slopes(const Stack& stack, const GapAir& air, double mean_K,
                                        double difference_K) {
  const auto& gap = stack.gaps[0];
  const auto low = gas_properties_iso_15099(gap.gas, mean_K - celsius_zero_K - 0.5);
  const auto high = gas_properties_iso_15099(gap.gas, mean_K - celsius_zero_K + 0.5);
  const double log_slope =
      -3.0 / mean_K + (high.specific_heat_J_kgK - low.specific_heat_J_kgK) / air.gas.specific_heat_J_kgK -
      (high.viscosity_Pa_s - low.viscosity_Pa_s) / air.gas.viscosity_Pa_s -
      (high.conductivity_W_mK - low.conductivity_W_mK) / air.gas.conductivity_W_mK;
  const double slope = gap.convection_factor * air.nu.slope * air.rayleigh;
  const double by_mean = 0.5 *
                         ((high.conductivity_W_mK - low.conductivity_W_mK) * air.nusselt +
                          air.gas.conductivity_W_mK * slope * log_slope) /
                         gap.width_m;
  const double by_difference = air.gas.conductivity_W_mK * slope / difference_K / gap.width_m;
  return {by_mean - by_difference, by_mean + by_difference};
}

}  // namespace

void CalledCorrelations::set_room(double room_K, double factor) {
  room_C_ = room_K - celsius_zero_K;
  film_factor_ = factor;
}

double CalledCorrelations::saturation_Pa(std::size_t, double surface_C) const {
  return saturation_pressure_Pa(surface_C);
}

double CalledCorrelations::saturation_slope_Pa_K(std::size_t, double surface_C) const {
  return dewgap::saturation_slope_Pa_K(surface_C);
}

glazing_kernel::GapExchange CalledCorrelations::gap(const GapFaces& faces) const {
  const double mean_K = 0.5 * (faces.outer_K + faces.inner_K);
  const double half_K = 0.5 * (faces.outer_K - faces.inner_K);
  glazing_kernel::GapExchange exchange;
  const double h = gap_air(stack_, mean_K, -2.0 * half_K).convection_W_m2K;
  // Air node: 2 h (T1 - Tg) + 2 h (T2 - Tg) + C (Tin - Tg) = 0.
  const double off_mean_K = faces.stream_W_m2K / (4.0 * h + faces.stream_W_m2K) * (faces.inlet_K - mean_K);
  exchange.convection_W_m2K = h;
  exchange.air_temperature_K = mean_K + off_mean_K;
  exchange.from_outer_W_m2 = 2.0 * h * (half_K - off_mean_K);
  exchange.from_inner_W_m2 = 2.0 * h * (-half_K - off_mean_K);
  return exchange;
}

glazing_kernel::GapExchange CalledCorrelations::gap_slopes(const GapFaces& faces) const {
  const double mean_K = 0.5 * (faces.outer_K + faces.inner_K);
  const double half_K = 0.5 * (faces.outer_K - faces.inner_K);
  const auto air = gap_air(stack_, mean_K, -2.0 * half_K);
  const double h = air.convection_W_m2K;
  const auto h_slope = convection_slopes(stack_, air, mean_K, -2.0 * half_K);
  const double all = 4.0 * h + faces.stream_W_m2K;
  const double share = faces.stream_W_m2K / all;
  const double off_mean_K = share * (faces.inlet_K - mean_K);
  glazing_kernel::GapExchange exchange;
  for (std::size_t side = 0; side < 2; ++side) {
    const double half_slope = side == 0 ? 0.5 : -0.5;
    const double off_slope = -0.5 * share - 4.0 * off_mean_K / all * h_slope[side];
    exchange.from_outer_slope[side] =
        2.0 * h_slope[side] * (half_K - off_mean_K) + 2.0 * h * (half_slope - off_slope);
    exchange.from_inner_slope[side] =
        2.0 * h_slope[side] * (-half_K - off_mean_K) + 2.0 * h * (-half_slope - off_slope);
  }
  return exchange;
}

double CalledCorrelations::room_film_W_m2K(double face_K) const {
  return film_factor_ * room_side_film(face_K - celsius_zero_K, room_C_, stack_.height_m).convection_W_m2K;
}

double CalledCorrelations::room_film_slope_W_m2K2(double face_K) const {
  return film_factor_ * room_side_film(face_K - celsius_zero_K, room_C_, stack_.height_m).slope_W_m2K2;
}

SideFlows CalledCorrelations::flows(Side side, const SidePressure& pressure) const {
  SideFlows sums;
  for (const auto& opening : openings(side)) {
    const double a = opening.resistance.laminar_Pa_s_m3;
    const double b = opening.resistance.quadratic_Pa_s2_m6;
    const double column_Pa = pressure.gradient_Pa_m * (opening.height_m - network_.reference_height_m);
    for (std::size_t k = 0; k < gust_points; ++k) {
      // dp = a Q + b Q|Q|
      const double difference = pressure.level_Pa[k] + column_Pa;
      const double flow = 2.0 * difference / (a + std::sqrt(a * a + 4.0 * b * std::abs(difference)));
      sums.net[k] += flow;
      sums.in[k] += std::max(0.0, flow);
    }
  }
  return sums;
}

SideSlopes CalledCorrelations::flow_slopes(Side side, const SidePressure& pressure) const {
  SideSlopes sums;
  for (const auto& opening : openings(side)) {
    const double a = opening.resistance.laminar_Pa_s_m3;
    const double b = opening.resistance.quadratic_Pa_s2_m6;
    const double column_Pa = pressure.gradient_Pa_m * (opening.height_m - network_.reference_height_m);
    for (std::size_t k = 0; k < gust_points; ++k) {
      const double difference = pressure.level_Pa[k] + column_Pa;
      const double slope = 1.0 / std::sqrt(a * a + 4.0 * b * std::abs(difference));
      sums.net[k] += slope;
      sums.in[k] += difference > 0.0 ? slope : 0.0;
    }
  }
  return sums;
}

}  // namespace dewgap::bench
