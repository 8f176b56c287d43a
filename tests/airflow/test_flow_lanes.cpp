// The lanes beneath the fast flows: which openings are one, what a settled lane may leave out, width of the
// vectors.
#include <gtest/gtest.h>

#include <cmath>

#include "dewgap/airflow/balance_lanes_kernel.hpp"
#include "dewgap/airflow/flow_kernel.hpp"
#include "random_networks.hpp"

namespace dewgap {
namespace {

using airflow_kernel::LaneBalance;
using airflow_kernel::LaneConditions;
using airflow_kernel::LaneFlows;
using airflow_kernel::LaneNetwork;
using airflow_kernel::LaneScratch;

TEST(FlowLanes, OpeningsOfOneShapeAtOneHeightAreOne) {
  const auto joint = [](double coefficient, double height_m) {
    return PlacedOpening{joint_resistance(coefficient, 2.0 / 3.0, 1.3), height_m};
  };
  const PlacedOpening slot{slot_resistance({}), 0.0};
  const LaneNetwork lanes(
      {{joint(0.3, 0.0), joint(0.01, 0.0), joint(0.3, 0.5), slot, {{}, 0.7}, slot}, {joint(0.3, 0.0)}, 0.5});
  ASSERT_EQ(lanes.count(), 4u);
  EXPECT_EQ(lanes.room_count, 3u);
  const auto both = joint_resistance(0.31, 2.0 / 3.0, 1.3);
  EXPECT_NEAR(lanes.laminar_Pa_s_m3[0] / both.laminar_Pa_s_m3, 1.0, 1e-14);
  EXPECT_NEAR(lanes.four_quadratic[0] / (4.0 * both.quadratic_Pa_s2_m6), 1.0, 1e-14);
  EXPECT_EQ(lanes.room.low_m, -0.5);
  EXPECT_EQ(lanes.room.high_m, 0.0);
}

TEST(FlowLanes, PureLawsMergeAndMixedOnesDoNot) {
  const LaneNetwork laminar({{{{2e3, 0.0}, 0.1}, {{6e3, 0.0}, 0.1}}, {}, 0.0});
  ASSERT_EQ(laminar.count(), 1u);
  EXPECT_DOUBLE_EQ(laminar.laminar_Pa_s_m3[0], 1.5e3);
  const LaneNetwork square_root({{{{0.0, 1e6}, 0.1}, {{0.0, 9e6}, 0.1}}, {}, 0.0});
  ASSERT_EQ(square_root.count(), 1u);
  EXPECT_DOUBLE_EQ(square_root.four_quadratic[0], 4.0 / std::pow(1.0 / 1e3 + 1.0 / 3e3, 2));
  EXPECT_EQ(LaneNetwork({{{{2e3, 1e6}, 0.1}, {{2e3, 1.001e6}, 0.1}}, {}, 0.0}).count(), 2u);
  EXPECT_EQ(LaneNetwork({{{{2e3, 1e6}, 0.1}, {{2e3, 1e6}, 0.2}}, {}, 0.0}).count(), 2u);
  EXPECT_EQ(LaneNetwork({{{{2e3, 0.0}, 0.1}, {{0.0, 1e6}, 0.1}}, {}, 0.0}).count(), 2u);
  EXPECT_EQ(LaneNetwork(GapNetwork{}).count(), 0u);
}

// What a step along the slope leaves out is at most 5.2 b step^2 / s^3, also where the flow turns round.
TEST(FlowLanes, StepAlongTheSlopeLeavesOutNoMoreThanItsBound) {
  double largest_share = 0.0;
  for (const double laminar : {0.0, 1e-3, 0.1, 1.0, 30.0}) {
    const FlowResistance opening{laminar, 1.0};
    for (double step = -4.0; step <= 4.0; step += 0.01) {
      const auto from = airflow_kernel::flow_and_slope(opening, 1.0);
      const auto to = airflow_kernel::flow_and_slope(opening, 1.0 + step);
      const double left_out = std::abs(to.flow_m3_s - (from.flow_m3_s + from.slope_m3_s_Pa * step));
      const double bound =
          airflow_kernel::left_out_by_a_step * 4.0 * std::pow(from.slope_m3_s_Pa, 3) * step * step;
      ASSERT_LE(left_out, bound * (1.0 + 1e-9) + 1e-15) << laminar << " " << step;
      largest_share = std::max(largest_share, bound > 1e-6 ? left_out / bound : 0.0);
    }
  }
  EXPECT_GT(largest_share, 0.95) << "the bound is wider than it need be";
}

template <class V>
[[gnu::always_inline]] inline LaneFlows<8> balanced(const LaneNetwork& network,
                                                    const LaneConditions<8>& conditions) {
  LaneScratch scratch{std::vector<double>(8 * network.count()), std::vector<double>(8 * network.count())};
  return LaneBalance<V, 8>(network, conditions, scratch).solve();
}

LaneConditions<8> conditions_of(const test::RandomState& s) {
  constexpr double g = 9.80665;
  LaneConditions<8> conditions;
  conditions.room_gradient_Pa_m = (s.densities.gap_kg_m3 - s.densities.room_kg_m3) * g;
  conditions.outdoors_gradient_Pa_m = (s.densities.gap_kg_m3 - s.densities.outdoor_kg_m3) * g;
  for (std::size_t k = 0; k < 8; ++k) {
    conditions.half_pressure_Pa[k] = 0.5 * s.pressure_Pa * (static_cast<double>(k) - 3.0);
  }
  return conditions;
}

TEST(FlowLanes, EachLaneBalancesOrSaysSo) {
  std::size_t settled = 0;
  std::size_t lanes = 0;
  test::for_each_random_state([&](const test::RandomState& s) {
    const auto conditions = conditions_of(s);
    const auto flows = balanced<airflow_kernel::PairOfDoubles>(LaneNetwork(s.network), conditions);
    for (std::size_t k = 0; k < 8; ++k, ++lanes) {
      if (flows.settled[k] == 0) {
        continue;
      }
      ++settled;
      const auto exact = flows_at_pressure(s.network, s.densities, 2.0 * conditions.half_pressure_Pa[k]);
      const double gross = test::sum_in(exact) + test::sum_out(exact);
      ASSERT_NEAR(flows.from_room_m3_s[k], exact.from_room_m3_s, 1e-9 * gross);
      ASSERT_NEAR(flows.to_room_m3_s[k], exact.to_room_m3_s, 1e-9 * gross);
      ASSERT_GE(flows.gain[k], -1.0);
      ASSERT_LE(flows.gain[k], 1.0);
    }
  });
  EXPECT_GT(static_cast<double>(settled) / static_cast<double>(lanes), 0.9);
}

#if defined(__GNUC__) && defined(__x86_64__) && defined(__linux__)
[[gnu::target("avx2")]] LaneFlows<8> balanced_wide(const LaneNetwork& network,
                                                   const LaneConditions<8>& conditions) {
  return balanced<airflow_kernel::QuadOfDoubles>(network, conditions);
}

TEST(FlowLanes, WideVectorsGiveTheSameNumbers) {
  if (!__builtin_cpu_supports("avx2")) {
    GTEST_SKIP() << "this processor has no 256-bit vectors";
  }
  test::for_each_random_state([](const test::RandomState& s) {
    const LaneNetwork lanes(s.network);
    const auto narrow = balanced<airflow_kernel::PairOfDoubles>(lanes, conditions_of(s));
    const auto wide = balanced_wide(lanes, conditions_of(s));
    for (std::size_t k = 0; k < 8; ++k) {
      ASSERT_EQ(wide.settled[k] != 0, narrow.settled[k] != 0);
      if (wide.settled[k] != 0) {
        ASSERT_EQ(wide.from_room_m3_s[k], narrow.from_room_m3_s[k]);
        ASSERT_EQ(wide.to_outdoors_m3_s[k], narrow.to_outdoors_m3_s[k]);
        ASSERT_EQ(wide.gap_Pa[k], narrow.gap_Pa[k]);
        ASSERT_EQ(wide.gain[k], narrow.gain[k]);
      }
    }
  });
}
#endif

}  // namespace
}  // namespace dewgap
