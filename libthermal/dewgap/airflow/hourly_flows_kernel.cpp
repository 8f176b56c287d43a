#include "dewgap/airflow/hourly_flows_kernel.hpp"

#include "dewgap/air/constants.hpp"
#include "dewgap/airflow/balance_lanes_kernel.hpp"
#include "dewgap/airflow/gauss_hermite_kernel.hpp"
#include "dewgap/airflow/network_checks_kernel.hpp"
#include "dewgap/errors.hpp"

// Twice as wide vectors where the processor has them. -ffp-contract=off makes the numbers the same.
#if defined(__GNUC__) && defined(__x86_64__) && defined(__linux__)
#define DEWGAP_HAS_WIDE_VECTORS 1
#else
#define DEWGAP_HAS_WIDE_VECTORS 0
#endif

namespace dewgap::airflow_kernel {
namespace {

#if DEWGAP_HAS_WIDE_VECTORS
[[gnu::target("avx2")]] LaneFlows<8> balance_wide(const LaneNetwork& network,
                                                  const LaneConditions<8>& conditions, LaneScratch& scratch) {
  return LaneBalance<QuadOfDoubles, 8>(network, conditions, scratch).solve();
}
#endif

LaneFlows<8> balance(const LaneNetwork& network, const LaneConditions<8>& conditions, LaneScratch& scratch) {
#if DEWGAP_HAS_WIDE_VECTORS
  if (__builtin_cpu_supports("avx2")) {
    return balance_wide(network, conditions, scratch);
  }
#endif
  return LaneBalance<PairOfDoubles, 8>(network, conditions, scratch).solve();
}

/// One pressure; the other lane of the pair repeats it.
LaneFlows<2> balance(const LaneNetwork& network, const LaneConditions<2>& conditions, LaneScratch& scratch) {
  return LaneBalance<PairOfDoubles, 2>(network, conditions, scratch).solve();
}

/// p_side(z) - p_gap(z) rises by (rho_gap - rho_side) g with height (gap_network.hpp).
template <std::size_t N>
LaneConditions<N> columns_of(const AirDensities& densities) {
  constexpr double g = constants::standard_gravity_m_s2;
  return {.room_gradient_Pa_m = (densities.gap_kg_m3 - densities.room_kg_m3) * g,
          .outdoors_gradient_Pa_m = (densities.gap_kg_m3 - densities.outdoor_kg_m3) * g,
          .half_pressure_Pa = {},
          .guess_Pa = {}};
}

/// With both sides open, half of what enters from the room and leaves outdoors less the other way.
template <std::size_t N>
MeanFlows flows_of_lane(const LaneFlows<N>& flows, std::size_t k, double passable) {
  const double room_in = flows.from_room_m3_s[k] - flows.to_room_m3_s[k];
  const double outdoors_in = flows.from_outdoors_m3_s[k] - flows.to_outdoors_m3_s[k];
  const double net = passable * 0.5 * (room_in - outdoors_in);
  return {.from_room_m3_s = flows.from_room_m3_s[k],
          .from_outdoors_m3_s = flows.from_outdoors_m3_s[k],
          .to_room_m3_s = flows.to_room_m3_s[k],
          .to_outdoors_m3_s = flows.to_outdoors_m3_s[k],
          .net_outwards_m3_s = net,
          .share_of_hour_inwards = net < 0.0 ? 1.0 : 0.0};
}

MeanFlows sum_of(const MeanFlows& sum, const MeanFlows& part, double weight) {
  return {.from_room_m3_s = sum.from_room_m3_s + weight * part.from_room_m3_s,
          .from_outdoors_m3_s = sum.from_outdoors_m3_s + weight * part.from_outdoors_m3_s,
          .to_room_m3_s = sum.to_room_m3_s + weight * part.to_room_m3_s,
          .to_outdoors_m3_s = sum.to_outdoors_m3_s + weight * part.to_outdoors_m3_s,
          .net_outwards_m3_s = sum.net_outwards_m3_s + weight * part.net_outwards_m3_s,
          .share_of_hour_inwards = sum.share_of_hour_inwards + weight * part.share_of_hour_inwards,
          .status = sum.status == SolveStatus::converged ? part.status : sum.status};
}

}  // namespace

HourlyFlows::HourlyFlows(const GapNetwork& network, int gust_points) : network_(network), lanes_(network) {
  require_valid(network);
  require_in_range(gust_points, {1, 7}, "gust_points", "");
  const auto rule = normal_points(gust_points);
  for (std::size_t k = 0; k < rule.size(); ++k) {
    deviates_[k] = rule[k].deviate;
    weights_[k] = rule[k].weight;
  }
  middle_ = rule.size() / 2;
  scratch_.flow_m3_s.resize(lane_count * lanes_.count());
  scratch_.slope_m3_s_Pa.resize(lane_count * lanes_.count());
}

MeanFlows HourlyFlows::at(const AirDensities& densities, const PressureWithinHour& pressure) {
  require_valid(densities);
  require_valid(pressure);
  if (lanes_.count() == 0) {
    return {};
  }
  if (pressure.standard_deviation_Pa <= 0.0) {
    return mean_of<2>(densities, {0.5 * pressure.mean_Pa, 0.5 * pressure.mean_Pa}, {1.0, 0.0}, middle_);
  }
  Lane<lane_count> half_Pa;
  for (std::size_t k = 0; k < lane_count; ++k) {
    half_Pa[k] = 0.5 * (pressure.mean_Pa + deviates_[k] * pressure.standard_deviation_Pa);
  }
  return mean_of<lane_count>(densities, half_Pa, weights_, 0);
}

template <std::size_t N>
MeanFlows HourlyFlows::mean_of(const AirDensities& densities, const Lane<N>& half_pressure_Pa,
                               const Lane<N>& weights, std::size_t first_lane) {
  auto conditions = columns_of<N>(densities);
  conditions.half_pressure_Pa = half_pressure_Pa;
  for (std::size_t k = 0; k < N; ++k) {
    const std::size_t lane = weights[k] > 0.0 ? first_lane + k : middle_;
    conditions.guess_Pa[k] = gap_Pa_[lane] + gain_[lane] * (half_pressure_Pa[k] - half_pressure_Pa_[lane]);
  }
  const LaneFlows<N> flows = balance(lanes_, conditions, scratch_);
  const double passable = lanes_.passable() ? 1.0 : 0.0;
  MeanFlows mean;
  for (std::size_t k = 0; k < N && weights[k] > 0.0; ++k) {
    half_pressure_Pa_[first_lane + k] = half_pressure_Pa[k];
    gain_[first_lane + k] = flows.gain[k];
    gap_Pa_[first_lane + k] = flows.gap_Pa[k];
    const bool settled = flows.settled[k] != 0;
    const MeanFlows part =
        settled ? flows_of_lane(flows, k, passable) : solve_apart(first_lane + k, densities);
    mean = sum_of(mean, part, weights[k]);
  }
  return mean;
}

MeanFlows HourlyFlows::solve_apart(std::size_t lane, const AirDensities& densities) {
  ++points_solved_apart_;
  const GapFlows flows = flows_at_pressure(network_, densities, 2.0 * half_pressure_Pa_[lane]);
  gap_Pa_[lane] = flows.gap_pressure_Pa - half_pressure_Pa_[lane];
  gain_[lane] = 0.0;
  return {.from_room_m3_s = flows.from_room_m3_s,
          .from_outdoors_m3_s = flows.from_outdoors_m3_s,
          .to_room_m3_s = flows.to_room_m3_s,
          .to_outdoors_m3_s = flows.to_outdoors_m3_s,
          .net_outwards_m3_s = flows.net_outwards_m3_s,
          .share_of_hour_inwards = flows.share_of_hour_inwards,
          .status = flows.status};
}

}  // namespace dewgap::airflow_kernel
