// Balances the flows of a gap's network at several pressures at once, one pressure a lane. Not installed.
//
// The equations are those of gap_network.cpp. V is a vector of doubles (the compiler's own type), wide as the
// processor's; each lane calculates alike whatever the width.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstring>
#include <limits>

#include "dewgap/airflow/flow_lanes_kernel.hpp"

namespace dewgap::airflow_kernel {

using PairOfDoubles = double __attribute__((vector_size(16)));
using QuadOfDoubles = double __attribute__((vector_size(32)));

/// Bound on the error of a settled lane's flows, over the flow through all openings.
inline constexpr double settled_share = 1e-10;
inline constexpr double left_out_by_a_step = 1.3;  ///< times 4 b step^2 / s^3
/// Only a step that moves less than this share of the flows is carried by slopes: they keep their digits
/// then.
inline constexpr double short_step_share = 0.1;
inline constexpr int most_lane_iterations = 20;

/// Newton on each lane's gap pressure, inside a bracket: half of the step where the imbalance has not halved
/// (gap_network.cpp says why), the bracket's middle where a step leaves the bracket.
///
/// The last step is not evaluated anew: flows are carried over it by their slopes. With s = sqrt(a^2 + 4 b
/// |dp|) and slope 1 / s, what that leaves out of one opening's flow is at most 5.2 b step^2 / s^3, also
/// where the flow turns round (the second-order term alone is b step^2 / s^3). The sum over the openings
/// bounds the imbalance that is left, and since all flows fall with the gap's pressure, the error of each
/// from that imbalance too.
template <class V, std::size_t N>
class LaneBalance {
 public:
  [[gnu::always_inline]] LaneBalance(const LaneNetwork& network, const LaneConditions<N>& conditions,
                                     LaneScratch& scratch)
      : network_(network), conditions_(conditions), scratch_(scratch) {}

  /// At least one opening must be there.
  [[gnu::always_inline]] LaneFlows<N> solve() {
    begin();
    for (int iteration = 0; iteration < most_lane_iterations; ++iteration) {
      sums_ = {};
      add_openings(0, network_.room_count, conditions_.room_gradient_Pa_m, room_level_Pa_);
      add_openings(network_.room_count, network_.count(), conditions_.outdoors_gradient_Pa_m,
                   outdoors_level_Pa_);
      if (judge()) {
        break;
      }
      move();
    }
    return collect();
  }

 private:
  static constexpr std::size_t width = sizeof(V) / sizeof(double);
  static constexpr std::size_t blocks = N / width;
  using Block = std::array<V, blocks>;
  using Mask = decltype(V{} < V{});

  struct Sums {
    Block net{};    ///< into the gap
    Block gross{};  ///< sum of magnitudes
    Block slope{};
    Block curvature{};  ///< sum of 4 b / s^3
  };

  /// Each lane's root lies between the lowest and the highest pressure at which an opening passes nothing.
  [[gnu::always_inline]] void begin() {
    const auto room = columns_Pa(conditions_.room_gradient_Pa_m, network_.room);
    const auto outdoors = columns_Pa(conditions_.outdoors_gradient_Pa_m, network_.outdoors);
    std::memcpy(&room_level_Pa_, &conditions_.half_pressure_Pa, sizeof room_level_Pa_);
    std::memcpy(&gap_Pa_, &conditions_.guess_Pa, sizeof gap_Pa_);
    for (std::size_t j = 0; j < blocks; ++j) {
      outdoors_level_Pa_[j] = -room_level_Pa_[j];
      const V out_low = outdoors_level_Pa_[j] + outdoors.low;
      const V out_high = outdoors_level_Pa_[j] + outdoors.high;
      const V room_low = room_level_Pa_[j] + room.low;
      const V room_high = room_level_Pa_[j] + room.high;
      low_Pa_[j] = out_low < room_low ? out_low : room_low;
      high_Pa_[j] = out_high > room_high ? out_high : room_high;
      const V above = gap_Pa_[j] > low_Pa_[j] ? gap_Pa_[j] : low_Pa_[j];
      gap_Pa_[j] = above < high_Pa_[j] ? above : high_Pa_[j];
      before_[j] = V{} + std::numeric_limits<double>::infinity();
    }
  }

  /// Q = 2 dp / (a + s) and dQ/d(dp) = 1 / s (flow_kernel.hpp), by one division. What the loop uses is
  /// copied, so that it can stay in registers.
  [[gnu::always_inline]] void add_openings(std::size_t first, std::size_t last, double gradient_Pa_m,
                                           const Block& level) {
    const Block level_Pa = level;
    const Block gap_Pa = gap_Pa_;
    Sums sums = sums_;
    double* const flows = scratch_.flow_m3_s.data();
    double* const slopes = scratch_.slope_m3_s_Pa.data();
    for (std::size_t i = first; i < last; ++i) {
      const double a = network_.laminar_Pa_s_m3[i];
      const double a_squared = network_.laminar_squared[i];
      const double b4 = network_.four_quadratic[i];
      const double column_Pa = gradient_Pa_m * network_.above_reference_m[i];
      for (std::size_t j = 0; j < blocks; ++j) {
        const V difference = (level_Pa[j] + column_Pa) - gap_Pa[j];
        V s{};
        for (std::size_t k = 0; k < width; ++k) {
          s[k] = std::sqrt(a_squared + b4 * std::abs(difference[k]));
        }
        const V a_and_s = a + s;
        const V inverse = 1.0 / (s * a_and_s);
        const V flow = (difference + difference) * (s * inverse);
        const V slope = a_and_s * inverse;
        V magnitude{};
        for (std::size_t k = 0; k < width; ++k) {
          magnitude[k] = std::abs(flow[k]);
        }
        sums.net[j] += flow;
        sums.gross[j] += magnitude;
        sums.slope[j] += slope;
        sums.curvature[j] += (b4 * slope) * (slope * slope);
        std::memcpy(flows + i * N + j * width, &flow, sizeof flow);
        std::memcpy(slopes + i * N + j * width, &slope, sizeof slope);
      }
    }
    sums_ = sums;
  }

  /// Newton's step of each lane, and whether what it leaves out is small enough; true when it is in all.
  [[gnu::always_inline]] bool judge() {
    bool all = true;
    for (std::size_t j = 0; j < blocks; ++j) {
      step_Pa_[j] = sums_.net[j] / sums_.slope[j];
      const V left_out = left_out_by_a_step * sums_.curvature[j] * (step_Pa_[j] * step_Pa_[j]);
      const V most_left_out = settled_share * sums_.gross[j];
      const V most_moved = short_step_share * sums_.gross[j];
      const V minus_net = -sums_.net[j];
      settled_[j] = (left_out <= most_left_out) & (sums_.net[j] <= most_moved) & (minus_net <= most_moved);
      for (std::size_t k = 0; k < width; ++k) {
        all = all && settled_[j][k] != 0;
      }
    }
    return all;
  }

  /// Lanes that are settled stand still.
  [[gnu::always_inline]] void move() {
    for (std::size_t j = 0; j < blocks; ++j) {
      const V net = sums_.net[j];
      const V minus_net = -net;
      const V imbalance = net < 0.0 ? minus_net : net;
      const V half_step = 0.5 * step_Pa_[j];
      low_Pa_[j] = net > 0.0 ? gap_Pa_[j] : low_Pa_[j];
      high_Pa_[j] = net > 0.0 ? high_Pa_[j] : gap_Pa_[j];
      const V next = gap_Pa_[j] + (imbalance > 0.5 * before_[j] ? half_step : step_Pa_[j]);
      const V middle = low_Pa_[j] + 0.5 * (high_Pa_[j] - low_Pa_[j]);
      const V above = next > low_Pa_[j] ? next : middle;
      const V inside = above < high_Pa_[j] ? above : middle;
      gap_Pa_[j] = settled_[j] ? gap_Pa_[j] : inside;
      before_[j] = imbalance;
    }
  }

  [[gnu::always_inline]] LaneFlows<N> collect() {
    LaneFlows<N> flows;
    const SideFlows room = flows_of_side(0, network_.room_count);
    const SideFlows outdoors = flows_of_side(network_.room_count, network_.count());
    Block gain;
    for (std::size_t j = 0; j < blocks; ++j) {
      gap_Pa_[j] += step_Pa_[j];
      gain[j] = (room.slope[j] - outdoors.slope[j]) / sums_.slope[j];
    }
    std::memcpy(&flows.from_room_m3_s, &room.in, sizeof room.in);
    std::memcpy(&flows.to_room_m3_s, &room.out, sizeof room.out);
    std::memcpy(&flows.from_outdoors_m3_s, &outdoors.in, sizeof outdoors.in);
    std::memcpy(&flows.to_outdoors_m3_s, &outdoors.out, sizeof outdoors.out);
    std::memcpy(&flows.gap_Pa, &gap_Pa_, sizeof gap_Pa_);
    std::memcpy(&flows.gain, &gain, sizeof gain);
    std::memcpy(&flows.settled, &settled_, sizeof settled_);
    return flows;
  }

  struct SideFlows {
    Block in{};
    Block out{};
    Block slope{};
  };

  /// The flows at the end of the last step: into the gap and out of it.
  [[gnu::always_inline]] SideFlows flows_of_side(std::size_t first, std::size_t last) const {
    SideFlows side;
    const Block step = step_Pa_;
    const double* const flows = scratch_.flow_m3_s.data();
    const double* const slopes = scratch_.slope_m3_s_Pa.data();
    for (std::size_t i = first; i < last; ++i) {
      for (std::size_t j = 0; j < blocks; ++j) {
        V flow{};
        V slope{};
        std::memcpy(&flow, flows + i * N + j * width, sizeof flow);
        std::memcpy(&slope, slopes + i * N + j * width, sizeof slope);
        flow -= slope * step[j];
        const V minus_flow = -flow;
        const V none{};
        side.in[j] += flow > 0.0 ? flow : none;
        side.out[j] += flow < 0.0 ? minus_flow : none;
        side.slope[j] += slope;
      }
    }
    return side;
  }

  /// Void as it stands: bounds nothing.
  struct ColumnRange {
    double low = std::numeric_limits<double>::infinity();
    double high = -std::numeric_limits<double>::infinity();
  };

  [[gnu::always_inline]] static ColumnRange columns_Pa(double gradient_Pa_m, const HeightRange& heights) {
    if (!heights.open()) {
      return {};
    }
    const double a = gradient_Pa_m * heights.low_m;
    const double b = gradient_Pa_m * heights.high_m;
    return {.low = std::min(a, b), .high = std::max(a, b)};
  }

  const LaneNetwork& network_;
  const LaneConditions<N>& conditions_;
  LaneScratch& scratch_;
  Block room_level_Pa_{};
  Block outdoors_level_Pa_{};
  Block gap_Pa_{};
  Block low_Pa_{};
  Block high_Pa_{};
  Block before_{};
  Block step_Pa_{};
  std::array<Mask, blocks> settled_{};
  Sums sums_;
};

}  // namespace dewgap::airflow_kernel
