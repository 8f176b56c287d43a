#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "dewgap/airflow/gap_network.hpp"
#include "dewgap/airflow/gauss_hermite_kernel.hpp"

namespace dewgap {
namespace {

constexpr AirDensities equal{1.2, 1.2, 1.2};

double moment(int points, int power) {
  double sum = 0.0;
  for (const auto& point : airflow_kernel::normal_points(points)) {
    sum += point.weight * std::pow(point.deviate, power);
  }
  return sum;
}

// (k - 1)!! for even k, 0 for odd: the moments of the standard normal distribution.
double normal_moment(int power) {
  double product = power % 2 == 0 ? 1.0 : 0.0;
  for (int i = power - 1; i > 1; i -= 2) {
    product *= i;
  }
  return product;
}

TEST(FlowsWithinHour, QuadratureIsExactUpToItsDegree) {
  for (const int points : {1, 3, 5, 7, 9}) {
    for (int power = 0; power <= 2 * points - 1; ++power) {
      const double scale = std::max(1.0, normal_moment(power));
      EXPECT_NEAR(moment(points, power) / scale, normal_moment(power) / scale, power % 2 == 0 ? 2e-15 : 1e-9)
          << points << " points, power " << power;
    }
    EXPECT_GT(std::abs(moment(points, 2 * points) / normal_moment(2 * points) - 1.0), 1e-4) << points;
  }
}

TEST(FlowsWithinHour, NoGustsIsTheFlowAtTheMean) {
  const GapNetwork network{{{{1e3, 1e6}, 0.1}}, {{{2e3, 3e6}, 0.8}}, 0.5};
  const auto hour = flows_within_hour(network, {}, {0.7, 0.0});
  const auto one = flows_within_hour(network, {}, {0.7, 2.0}, 1);
  const auto at = flows_at_pressure(network, {}, 0.7);
  for (const auto& flows : {hour, one}) {
    EXPECT_EQ(flows.from_room_m3_s, at.from_room_m3_s);
    EXPECT_EQ(flows.to_outdoors_m3_s, at.to_outdoors_m3_s);
    EXPECT_EQ(flows.net_outwards_m3_s, at.net_outwards_m3_s);
    EXPECT_EQ(flows.gap_pressure_Pa, at.gap_pressure_Pa);
  }
}

TEST(FlowsWithinHour, LaminarNetworksKeepTheirMeanNetFlow) {
  const GapNetwork network{{{{1e3, 0.0}, 0.5}}, {{{3e3, 0.0}, 0.5}}, 0.5};
  for (const int points : {1, 3, 5, 7, 9}) {
    const auto flows = flows_within_hour(network, equal, {0.2, 1.5}, points);
    EXPECT_NEAR(flows.net_outwards_m3_s, 0.2 / 4e3, 1e-17) << points;
    EXPECT_NEAR(flows.gap_pressure_Pa, 0.15, 1e-15);
  }
}

TEST(FlowsWithinHour, GustsRoundAMeanOfNothingBlowBothWays) {
  const GapNetwork network{{{{1e3, 1e6}, 0.5}}, {{{1e3, 1e6}, 0.5}}, 0.5};
  for (const int points : {3, 5, 7, 9}) {
    const auto flows = flows_within_hour(network, equal, {0.0, 1.0}, points);
    const double middle = airflow_kernel::normal_points(points)[static_cast<std::size_t>(points / 2)].weight;
    EXPECT_NEAR(flows.share_of_hour_inwards, 0.5 * (1.0 - middle), 1e-15);
    EXPECT_NEAR(flows.net_outwards_m3_s, 0.0, 1e-12 * flows.from_room_m3_s);
    EXPECT_NEAR(flows.from_room_m3_s, flows.from_outdoors_m3_s, 1e-12 * flows.from_room_m3_s);
    EXPECT_GT(flows.from_room_m3_s, 0.0);
  }
}

// Mean inflow from one side over a standard normal pressure, over its exact value: the point in the middle
// carries a large weight and passes nothing.
double inflow_ratio(const FlowResistance& hole, double exact, int points) {
  const GapNetwork network{{{hole, 0.5}}, {{hole, 0.5}}, 0.5};
  return flows_within_hour(network, equal, {0.0, 1.0}, points).from_room_m3_s / exact;
}

TEST(FlowsWithinHour, InflowWithoutAMeanIsLowAsStated) {
  // E|p| = sqrt(2/pi) and E sqrt|p| = 2^(1/4) Gamma(3/4) / sqrt(pi), half of it inflow; both holes in series.
  const double laminar = 0.5 * std::sqrt(2.0 / std::numbers::pi) / 2.0;
  const double square_root =
      0.5 * std::pow(2.0, 0.25) * std::tgamma(0.75) / std::sqrt(std::numbers::pi) / std::sqrt(2.0);
  EXPECT_NEAR(inflow_ratio({1.0, 0.0}, laminar, 7), 1.0 - 0.12, 0.005);
  EXPECT_NEAR(inflow_ratio({1.0, 0.0}, laminar, 9), 1.0 - 0.09, 0.005);
  EXPECT_NEAR(inflow_ratio({0.0, 1.0}, square_root, 7), 1.0 - 0.25, 0.005);
  EXPECT_NEAR(inflow_ratio({0.0, 1.0}, square_root, 9), 1.0 - 0.21, 0.005);
}

// Mean of p or sqrt(p) over the positive part of a normal pressure, by the midpoint rule.
double positive_mean(double mean, double exponent) {
  constexpr double step = 1e-3;
  double sum = 0.0;
  for (double p = 0.5 * step; p < mean + 9.0; p += step) {
    sum += std::pow(p, exponent) * std::exp(-0.5 * (p - mean) * (p - mean)) * step;
  }
  return sum / std::sqrt(2.0 * std::numbers::pi);
}

TEST(FlowsWithinHour, InflowOnTheLeadingSideIsMetAsStated) {
  for (double mean = 0.25; mean < 4.0; mean += 0.125) {
    for (const int points : {7, 9}) {
      const auto inflow = [&](const FlowResistance& hole) {
        const GapNetwork network{{{hole, 0.5}}, {{hole, 0.5}}, 0.5};
        return flows_within_hour(network, equal, {mean, 1.0}, points).from_room_m3_s;
      };
      EXPECT_NEAR(inflow({1.0, 0.0}) / (positive_mean(mean, 1.0) / 2.0), 1.0, 0.08) << mean << " " << points;
      EXPECT_NEAR(inflow({0.0, 1.0}) / (positive_mean(mean, 0.5) / std::sqrt(2.0)), 1.0, 0.08)
          << mean << " " << points;
    }
  }
}

TEST(FlowsWithinHour, AStrongMeanIsOneWay) {
  const GapNetwork network{{{{1e3, 1e6}, 0.5}}, {{{1e3, 1e6}, 0.5}}, 0.5};
  const auto inwards = flows_within_hour(network, equal, {-10.0, 1.0});
  EXPECT_NEAR(inwards.share_of_hour_inwards, 1.0, 1e-15);
  EXPECT_EQ(inwards.from_room_m3_s, 0.0);
  EXPECT_LT(inwards.net_outwards_m3_s, 0.0);
}

}  // namespace
}  // namespace dewgap
