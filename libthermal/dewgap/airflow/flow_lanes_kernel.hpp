// One gap's network at several pressures at once, one pressure a lane: what goes in and out. Not installed.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

#include "dewgap/airflow/gap_network.hpp"

namespace dewgap::airflow_kernel {

template <std::size_t N>
using Lane = std::array<double, N>;

/// Heights above the reference height between which a side's openings lie.
struct HeightRange {
  double low_m = std::numeric_limits<double>::infinity();
  double high_m = -std::numeric_limits<double>::infinity();
  bool open() const { return low_m <= high_m; }
};

/// The openings that are not shut, as flat arrays, the room's first. Openings of one side at one height whose
/// laminar^2 / quadratic is the same are one opening here: their flows stand in one proportion at every
/// pressure.
struct LaneNetwork {
  explicit LaneNetwork(const GapNetwork& network);

  std::vector<double> laminar_Pa_s_m3;
  std::vector<double> laminar_squared;  ///< with a trace added, so that no square root is 0
  std::vector<double> four_quadratic;
  std::vector<double> above_reference_m;
  std::size_t room_count = 0;
  HeightRange room;
  HeightRange outdoors;
  std::size_t count() const { return laminar_Pa_s_m3.size(); }
  bool passable() const { return room.open() && outdoors.open(); }

 private:
  HeightRange append(const std::vector<PlacedOpening>& openings, double reference_height_m);
};

/// Pressures are relative to the mean of room and outdoors at the reference height, so the room's is half of
/// the pressure across the window. The gradients say how the gap pressure at which an opening passes nothing
/// rises with its height.
template <std::size_t N>
struct LaneConditions {
  double room_gradient_Pa_m = 0.0;
  double outdoors_gradient_Pa_m = 0.0;
  Lane<N> half_pressure_Pa{};
  Lane<N> guess_Pa{};
};

/// Flows of each lane and its gap pressure.
template <std::size_t N>
struct LaneFlows {
  Lane<N> from_room_m3_s{};
  Lane<N> to_room_m3_s{};
  Lane<N> from_outdoors_m3_s{};
  Lane<N> to_outdoors_m3_s{};
  Lane<N> gap_Pa{};
  Lane<N> gain{};                         ///< of the gap pressure with half the pressure
  std::array<std::int64_t, N> settled{};  ///< not 0 where the lane holds an answer
};

/// Working storage: each opening's flow and slope in each lane, at the latest gap pressures.
struct LaneScratch {
  std::vector<double> flow_m3_s;
  std::vector<double> slope_m3_s_Pa;
};

}  // namespace dewgap::airflow_kernel
