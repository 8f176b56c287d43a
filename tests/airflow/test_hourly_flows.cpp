// The fast flows of an hour against flows_within_hour, over random networks and sequences of hours.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "dewgap/airflow/gauss_hermite_kernel.hpp"
#include "dewgap/airflow/hourly_flows_kernel.hpp"
#include "dewgap/errors.hpp"
#include "random_networks.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

using airflow_kernel::HourlyFlows;
using airflow_kernel::MeanFlows;
using test::Draw;
using test::for_each_random_state;
using test::RandomState;

constexpr double equal_share = 1e-9;  // of what flows through all openings
constexpr int hours_in_sequence = 5;

struct Hour {
  AirDensities densities;
  PressureWithinHour pressure;
};

double gross_of(const MeanFlows& flows) {
  return flows.from_room_m3_s + flows.to_room_m3_s + flows.from_outdoors_m3_s + flows.to_outdoors_m3_s;
}

/// Weather that moves on from the random state: pressure and densities by steps, every fifth hour without
/// gusts.
Hour next_hour(Draw& draw, const Hour& before, double pressure_scale_Pa) {
  Hour hour = before;
  hour.pressure.mean_Pa =
      std::clamp(before.pressure.mean_Pa + draw.between(-0.5, 0.5) * pressure_scale_Pa, -1000.0, 1000.0);
  const bool still = draw.integer(0, 4) == 0;
  hour.pressure.standard_deviation_Pa = still ? 0.0 : draw.between(0.0, 0.8) * pressure_scale_Pa;
  hour.densities.gap_kg_m3 += draw.between(-0.005, 0.005);
  hour.densities.outdoor_kg_m3 += draw.between(-0.01, 0.01);
  return hour;
}

/// Calls check(hour) for a sequence of hours that starts from the state.
template <class Check>
void for_each_hour(const RandomState& s, Check&& check) {
  Draw draw(static_cast<std::uint64_t>(1e6 * (2.0 + s.densities.gap_kg_m3)));
  const double scale_Pa = std::abs(s.pressure_Pa) + 1e-3;
  Hour hour{s.densities, {s.pressure_Pa, 0.5 * scale_Pa}};
  for (int i = 0; i < hours_in_sequence; ++i) {
    check(hour);
    hour = next_hour(draw, hour, scale_Pa);
  }
}

void expect_equal(const MeanFlows& fast, const GapFlows& exact, double tolerance_m3_s) {
  ASSERT_EQ(fast.status, SolveStatus::converged);
  ASSERT_EQ(exact.status, SolveStatus::converged);
  ASSERT_NEAR(fast.from_room_m3_s, exact.from_room_m3_s, tolerance_m3_s);
  ASSERT_NEAR(fast.from_outdoors_m3_s, exact.from_outdoors_m3_s, tolerance_m3_s);
  ASSERT_NEAR(fast.to_room_m3_s, exact.to_room_m3_s, tolerance_m3_s);
  ASSERT_NEAR(fast.to_outdoors_m3_s, exact.to_outdoors_m3_s, tolerance_m3_s);
  ASSERT_NEAR(fast.net_outwards_m3_s, exact.net_outwards_m3_s, tolerance_m3_s);
}

/// Points whose net flow is plainly inwards, and those about which rounding may decide.
struct ShareInwards {
  double plain = 0.0;
  double doubtful = 0.0;
};

ShareInwards share_inwards(const GapNetwork& network, const Hour& hour) {
  ShareInwards share;
  const bool gusts = hour.pressure.standard_deviation_Pa > 0.0;
  for (const auto& point : airflow_kernel::normal_points(gusts ? 7 : 1)) {
    const double pressure_Pa = hour.pressure.mean_Pa + point.deviate * hour.pressure.standard_deviation_Pa;
    const auto flows = flows_at_pressure(network, hour.densities, pressure_Pa);
    const double doubt = equal_share * (test::sum_in(flows) + test::sum_out(flows));
    share.plain += flows.net_outwards_m3_s < -doubt ? point.weight : 0.0;
    share.doubtful += std::abs(flows.net_outwards_m3_s) <= doubt ? point.weight : 0.0;
  }
  return share;
}

TEST(HourlyFlows, AreThoseOfFlowsWithinHour) {
  std::size_t apart = 0;
  std::size_t hours = 0;
  double worst = 0.0;
  for_each_random_state([&](const RandomState& s) {
    HourlyFlows flows(s.network);
    for_each_hour(s, [&](const Hour& hour) {
      const auto fast = flows.at(hour.densities, hour.pressure);
      const auto exact = flows_within_hour(s.network, hour.densities, hour.pressure);
      expect_equal(fast, exact, equal_share * gross_of(fast));
      const auto share = share_inwards(s.network, hour);
      ASSERT_GE(fast.share_of_hour_inwards, share.plain - 1e-14);
      ASSERT_LE(fast.share_of_hour_inwards, share.plain + share.doubtful + 1e-14);
      worst = std::max(worst, std::abs(fast.from_room_m3_s - exact.from_room_m3_s) / gross_of(fast));
      ++hours;
    });
    apart += flows.points_solved_apart();
  });
  RecordProperty("worst_difference", std::to_string(worst * 1e12) + "e-12");
  RecordProperty("points_solved_apart", std::to_string(apart));
  EXPECT_GE(hours, 10000u);
  EXPECT_GT(apart, 0u) << "the safeguarded solver was never called on";
  const std::size_t points = 7 * hours;
  EXPECT_LT(apart, points / 50) << "the fast way settles too seldom";
}

TEST(HourlyFlows, WithFewerPointsToo) {
  for (const int points : {1, 3, 5}) {
    for_each_random_state([&](const RandomState& s) {
      HourlyFlows flows(s.network, points);
      const auto fast = flows.at(s.densities, {s.pressure_Pa, 1.0});
      const auto exact = flows_within_hour(s.network, s.densities, {s.pressure_Pa, 1.0}, points);
      expect_equal(fast, exact, equal_share * gross_of(fast));
    });
  }
}

TEST(HourlyFlows, WhatEntersLeaves) {
  for_each_random_state([](const RandomState& s) {
    HourlyFlows flows(s.network);
    for_each_hour(s, [&](const Hour& hour) {
      const auto f = flows.at(hour.densities, hour.pressure);
      ASSERT_NEAR(f.from_room_m3_s + f.from_outdoors_m3_s, f.to_room_m3_s + f.to_outdoors_m3_s,
                  1e-10 * gross_of(f));
      ASSERT_GE(std::min({f.from_room_m3_s, f.to_room_m3_s, f.from_outdoors_m3_s, f.to_outdoors_m3_s}), 0.0);
      ASSERT_GT(gross_of(f), 0.0);
    });
  });
}

TEST(HourlyFlows, MirroredNetworksMirrorTheirFlows) {
  for_each_random_state([](const RandomState& s) {
    HourlyFlows flows(s.network);
    HourlyFlows mirrored({s.network.to_outdoors, s.network.to_room, s.network.reference_height_m});
    for_each_hour(s, [&](const Hour& hour) {
      const auto f = flows.at(hour.densities, hour.pressure);
      const auto& air = hour.densities;
      const auto image = mirrored.at({air.room_kg_m3, air.gap_kg_m3, air.outdoor_kg_m3},
                                     {-hour.pressure.mean_Pa, hour.pressure.standard_deviation_Pa});
      const double tolerance = equal_share * gross_of(f);
      ASSERT_NEAR(image.from_room_m3_s, f.from_outdoors_m3_s, tolerance);
      ASSERT_NEAR(image.to_outdoors_m3_s, f.to_room_m3_s, tolerance);
      ASSERT_NEAR(image.net_outwards_m3_s, -f.net_outwards_m3_s, tolerance);
    });
  });
}

TEST(HourlyFlows, OneSideShutExchangesWithTheOtherOnly) {
  for_each_random_state([](const RandomState& s) {
    const GapNetwork room_only{s.network.to_room, {{{}, 0.2}}, s.network.reference_height_m};
    const GapNetwork outdoors_only{{}, s.network.to_outdoors, s.network.reference_height_m};
    HourlyFlows room(room_only);
    HourlyFlows outdoors(outdoors_only);
    for_each_hour(s, [&](const Hour& hour) {
      const auto r = room.at(hour.densities, hour.pressure);
      const auto o = outdoors.at(hour.densities, hour.pressure);
      expect_equal(r, flows_within_hour(room_only, hour.densities, hour.pressure), equal_share * gross_of(r));
      expect_equal(o, flows_within_hour(outdoors_only, hour.densities, hour.pressure),
                   equal_share * gross_of(o));
      ASSERT_EQ(r.from_outdoors_m3_s + r.to_outdoors_m3_s + r.net_outwards_m3_s + r.share_of_hour_inwards,
                0.0);
      ASSERT_EQ(o.from_room_m3_s + o.to_room_m3_s + o.net_outwards_m3_s + o.share_of_hour_inwards, 0.0);
    });
  });
}

TEST(HourlyFlows, BothSidesShutPassNothing) {
  HourlyFlows flows({{{{}, 0.1}}, {{{}, 0.2}}, 0.5});
  const auto f = flows.at({}, {3.0, 2.0});
  EXPECT_EQ(f.status, SolveStatus::converged);
  EXPECT_EQ(gross_of(f), 0.0);
  EXPECT_EQ(f.net_outwards_m3_s, 0.0);
  EXPECT_EQ(f.share_of_hour_inwards, 0.0);
}

TEST(HourlyFlows, DependOnTheHourAlone) {
  for_each_random_state([](const RandomState& s) {
    HourlyFlows warm(s.network);
    for_each_hour(s, [&](const Hour& hour) {
      const auto after_others = warm.at(hour.densities, hour.pressure);
      const auto alone = HourlyFlows(s.network).at(hour.densities, hour.pressure);
      ASSERT_NEAR(after_others.from_room_m3_s, alone.from_room_m3_s, equal_share * gross_of(alone));
      ASSERT_NEAR(after_others.to_outdoors_m3_s, alone.to_outdoors_m3_s, equal_share * gross_of(alone));
    });
  });
}

TEST(HourlyFlows, GustsThatFadeTendToTheStillHour) {
  const GapNetwork network{{{{1e3, 1e6}, 0.1}}, {{{2e3, 3e6}, 0.8}}, 0.5};
  HourlyFlows flows(network);
  const double still = flows.at({}, {0.7, 0.0}).from_room_m3_s;
  EXPECT_NEAR(flows.at({}, {0.7, 1e-9}).from_room_m3_s / still, 1.0, 1e-9);
  EXPECT_NEAR(flows_at_pressure(network, {}, 0.7).from_room_m3_s / still, 1.0, 1e-9);
}

TEST(HourlyFlows, RefuseWhatIsOutsideTheirRange) {
  EXPECT_THROW(HourlyFlows({{{{-1.0, 0.0}, 0.1}}, {}, 0.5}), InvalidInput);
  EXPECT_THROW(HourlyFlows({{}, {{{1.0, 0.0}, test::not_a_number}}, 0.5}), InvalidInput);
  for (const int points : {0, 2, 4, 6, 8, 9, -1}) {
    EXPECT_THROW(HourlyFlows({}, points), InvalidInput) << points;
  }
  HourlyFlows flows({{{{1e3, 1e6}, 0.1}}, {}, 0.5});
  EXPECT_THROW(flows.at({test::not_a_number, 1.2, 1.2}, {0.0, 1.0}), InvalidInput);
  EXPECT_THROW(flows.at({1.2, 1.2, 3.0}, {0.0, 1.0}), InvalidInput);
  EXPECT_THROW(flows.at({}, {test::not_a_number, 1.0}), InvalidInput);
  EXPECT_THROW(flows.at({}, {0.0, -1.0}), InvalidInput);
  EXPECT_THROW(flows.at({}, {2000.0, 1.0}), InvalidInput);
}

}  // namespace
}  // namespace dewgap
