#include <cmath>
#include <cstring>

#include "hour_correlations.hpp"

namespace dewgap::bench {
namespace {

/// As wide as the lanes; the compiler splits it into what the processor has.
using Lanes = double __attribute__((vector_size(lane_count * sizeof(double))));

struct Openings {
  const airflow_kernel::LaneNetwork& network;
  std::size_t first;
  std::size_t last;
};

struct SideSums {
  SideFlows flows;
  SideSlopes slopes;
};

[[gnu::always_inline]] inline SideSums side_sums(const Openings& side, const SidePressure& pressure) {
  Lanes level;
  std::memcpy(&level, &pressure.level_Pa, sizeof level);
  Lanes net{};
  Lanes slopes{};
  Lanes in{};
  Lanes in_slopes{};
  for (std::size_t i = side.first; i < side.last; ++i) {
    const double a = side.network.laminar_Pa_s_m3[i];
    const double a_squared = side.network.laminar_squared[i];
    const double b4 = side.network.four_quadratic[i];
    const Lanes difference = level + pressure.gradient_Pa_m * side.network.above_reference_m[i];
    // dp = a Q + b Q|Q|: Q = 2 dp / (a + s), dQ/d(dp) = 1 / s, by one division
    Lanes s;
    for (std::size_t k = 0; k < lane_count; ++k) {
      s[k] = std::sqrt(a_squared + b4 * std::abs(difference[k]));
    }
    const Lanes both = 1.0 / (s * (a + s));
    const Lanes flow = (difference + difference) * (s * both);
    const Lanes slope = (a + s) * both;
    const Lanes none{};
    net += flow;
    slopes += slope;
    in += flow > 0.0 ? flow : none;
    in_slopes += flow > 0.0 ? slope : none;
  }
  SideSums sums;
  std::memcpy(&sums.flows.net, &net, sizeof net);
  std::memcpy(&sums.flows.in, &in, sizeof net);
  std::memcpy(&sums.slopes.net, &slopes, sizeof net);
  std::memcpy(&sums.slopes.in, &in_slopes, sizeof net);
  return sums;
}

// Processors with wider vectors use them, as in the library's own network.
#if defined(__GNUC__) && defined(__x86_64__) && defined(__linux__)
[[gnu::target("avx2")]] SideSums wide_side_sums(const Openings& side, const SidePressure& pressure) {
  return side_sums(side, pressure);
}
SideSums sums_of(const Openings& side, const SidePressure& pressure) {
  return __builtin_cpu_supports("avx2") ? wide_side_sums(side, pressure) : side_sums(side, pressure);
}
#else
SideSums sums_of(const Openings& side, const SidePressure& pressure) {
  return side_sums(side, pressure);
}
#endif

}  // namespace

PreparedCorrelations::PreparedCorrelations(const Stack& stack, const GapNetwork& network)
    : table_(&air_kernel::saturation_table()),
      gap_(glazing_kernel::real_equations<2>(stack, {}, {}).parts.gaps[0]),
      height_m_(stack.height_m),
      network_(network) {}

void PreparedCorrelations::set_room(double room_K, double factor) {
  if (room_K != film_.air_temperature_K() || factor != film_factor_) {
    film_ = glazing_kernel::RoomFilm::natural(room_K, height_m_, 90.0, factor);
    film_factor_ = factor;
  }
}

SideFlows PreparedCorrelations::flows(Side side, const SidePressure& pressure) {
  const std::size_t first = side == Side::room ? 0 : network_.room_count;
  const std::size_t last = side == Side::room ? network_.room_count : network_.count();
  const auto sums = sums_of({network_, first, last}, pressure);
  slopes_[static_cast<std::size_t>(side)] = sums.slopes;
  return sums.flows;
}

}  // namespace dewgap::bench
