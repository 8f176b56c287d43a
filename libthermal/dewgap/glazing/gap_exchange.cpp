#include "dewgap/glazing/gap_exchange_kernel.hpp"

#include <cmath>

namespace dewgap::glazing_kernel {
namespace {

struct Convection {
  double value_W_m2K = 0.0;
  double slope_outer = 0.0;  // over the outdoor-side face's temperature
  double slope_inner = 0.0;
  ValidityFlags flags;
};

Convection convection(const GapModel& gap, double outer_K, double inner_K) {
  if (gap.held_W_m2K > 0.0) {
    return {gap.held_W_m2K, 0.0, 0.0, {}};
  }
  const double difference = inner_K - outer_K;
  const double size = std::abs(difference);
  const double sign = difference < 0.0 ? -1.0 : 1.0;
  const auto gas = gap.gas.at(0.5 * (outer_K + inner_K));
  // Ra = g beta |dT| L^3 rho^2 cp / (mu k) (ISO 15099 5.3.2, EN 673 5.3; from memory)
  const double per_kelvin = gas.rayleigh_factor * gap.width_m * gap.width_m * gap.width_m;
  const auto nu = (difference < 0.0 ? gap.law_down : gap.law_up).at(per_kelvin * size);
  // hc = k Nu / width, with the spread of correlations on Nu - 1
  const double nusselt = 1.0 + gap.convection_factor * (nu.nusselt - 1.0);
  const double slope = gap.convection_factor * nu.slope * per_kelvin;  // dNu/d|dT|
  const double per_metre = 1.0 / gap.width_m;
  const double by_mean =
      0.5 * per_metre *
      (gas.conductivity_slope * nusselt + gas.conductivity_W_mK * slope * size * gas.rayleigh_log_slope);
  const double by_difference = gas.conductivity_W_mK * slope * sign * per_metre;
  return {gas.conductivity_W_mK * nusselt * per_metre, by_mean - by_difference, by_mean + by_difference,
          nu.flags};
}

}  // namespace

GapExchange GapModel::exchange(double outer_face_K, double inner_face_K) const {
  const auto h = convection(*this, outer_face_K, inner_face_K);
  GapExchange result;
  result.convection_W_m2K = h.value_W_m2K;
  result.flags = h.flags;
  // Air node: 2 h (T1 - Tg) + 2 h (T2 - Tg) + C (Tin - Tg) = 0. Written about the faces' mean, so that no
  // stream is the closed gap to the last digit: Tg = Tm + C (Tin - Tm) / (4 h + C).
  const double mean = 0.5 * (outer_face_K + inner_face_K);
  const double share = stream_W_m2K / (4.0 * h.value_W_m2K + stream_W_m2K);
  const double off_mean = share * (inlet_temperature_K - mean);
  result.air_temperature_K = mean + off_mean;
  const double half = 0.5 * (outer_face_K - inner_face_K);
  result.from_outer_W_m2 = 2.0 * h.value_W_m2K * (half - off_mean);
  result.from_inner_W_m2 = 2.0 * h.value_W_m2K * (-half - off_mean);
  const double off_by_mean = -0.5 * share;  // over either face, h held
  const double off_by_h = stream_W_m2K > 0.0 ? -4.0 * off_mean * share / stream_W_m2K : 0.0;
  const std::array h_slope{h.slope_outer, h.slope_inner};
  for (std::size_t side = 0; side < 2; ++side) {
    const double half_slope = side == 0 ? 0.5 : -0.5;
    const double off_slope = off_by_mean + off_by_h * h_slope[side];
    result.from_outer_slope[side] =
        2.0 * h_slope[side] * (half - off_mean) + 2.0 * h.value_W_m2K * (half_slope - off_slope);
    result.from_inner_slope[side] =
        2.0 * h_slope[side] * (-half - off_mean) + 2.0 * h.value_W_m2K * (-half_slope - off_slope);
  }
  return result;
}

}  // namespace dewgap::glazing_kernel
