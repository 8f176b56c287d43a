// Hour-averaged flows of one gap's network, hour after hour: what flows_within_hour gives, fast. Not
// installed.
#pragma once

#include <cstddef>

#include "dewgap/airflow/flow_lanes_kernel.hpp"
#include "dewgap/airflow/gap_network.hpp"

namespace dewgap::airflow_kernel {

/// As GapFlows, without the gap's pressure.
struct MeanFlows {
  double from_room_m3_s = 0.0;
  double from_outdoors_m3_s = 0.0;
  double to_room_m3_s = 0.0;
  double to_outdoors_m3_s = 0.0;
  double net_outwards_m3_s = 0.0;
  double share_of_hour_inwards = 0.0;
  SolveStatus status = SolveStatus::converged;
};

/// One gap's network prepared for many hours. Equal to flows_within_hour of the same network and points
/// within 1e-9 of what flows through all openings (2e-10 by the bound on what a lane leaves out, 2e-11
/// measured over random networks); the share of the hour within the points whose net flow is smaller than
/// that. All gust points are solved at once, starting from the gap pressures of the call before, moved with
/// the pressure; so what was asked before changes the answer within the same bound. A point that does not
/// settle in 20 steps is left to flows_at_pressure. at() allocates nothing. One object serves one thread.
class HourlyFlows {
 public:
  /// gust_points: 1, 3, 5 or 7. Throws InvalidInput as flows_within_hour does.
  explicit HourlyFlows(const GapNetwork& network, int gust_points = 7);

  /// Throws InvalidInput outside the ranges of flows_within_hour. Without gusts one point is solved.
  MeanFlows at(const AirDensities& densities, const PressureWithinHour& pressure);

  /// Points so far that flows_at_pressure had to solve.
  std::size_t points_solved_apart() const { return points_solved_apart_; }

 private:
  static constexpr std::size_t lane_count = 8;  ///< seven points and one that stands idle

  template <std::size_t N>
  MeanFlows mean_of(const AirDensities& densities, const Lane<N>& half_pressure_Pa, const Lane<N>& weights,
                    std::size_t first_lane);
  MeanFlows solve_apart(std::size_t lane, const AirDensities& densities);

  GapNetwork network_;
  LaneNetwork lanes_;
  LaneScratch scratch_;
  Lane<lane_count> deviates_{};
  Lane<lane_count> weights_{};
  std::size_t middle_ = 0;  ///< the lane of the mean pressure
  // The call before: half of the pressures, the gap's pressures, and how the second move with the first.
  Lane<lane_count> half_pressure_Pa_{};
  Lane<lane_count> gap_Pa_{};
  Lane<lane_count> gain_{};
  std::size_t points_solved_apart_ = 0;
};

}  // namespace dewgap::airflow_kernel
