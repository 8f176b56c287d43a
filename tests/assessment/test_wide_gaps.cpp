// The answer's range must cover the spread of the published correlations where they disagree: gaps of 20 to
// 150 mm.
#include <gtest/gtest.h>

#include <vector>

#include "dewgap/assessment/priors.hpp"
#include "dewgap/glazing/stack.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap::test {
namespace {

constexpr double room_C = 19.0;

double u_value(double width_m, double height_m, double outdoor_C, GapCorrelation correlation, double factor) {
  Stack stack;
  stack.layer_count = 2;
  stack.height_m = height_m;
  stack.correlation = correlation;
  stack.layers[1] = {.thickness_m = 0.004, .conductivity_W_mK = 0.18};
  stack.gaps[0] = {.width_m = width_m, .convection_factor = factor};
  const OutdoorClimate outdoors{.air_temperature_C = outdoor_C,
                                .sky_temperature_C = outdoor_C,
                                .ground_temperature_C = outdoor_C,
                                .convection_W_m2K = 15.0};
  const auto solution =
      solve_stack(stack, outdoors, {.air_temperature_C = room_C, .radiant_temperature_C = room_C});
  EXPECT_EQ(solution.status, SolveStatus::converged);
  return solution.u_value_W_m2K;
}

/// U over the prior: every correlation with equal weight, each at 19 quantiles of the scatter about it.
std::vector<double> u_over_the_prior(double width_m, double height_m, double outdoor_C) {
  std::vector<double> pool;
  for (const auto correlation :
       {GapCorrelation::wright, GapCorrelation::elsherbiny, GapCorrelation::en_673}) {
    for (int i = 1; i < 20; ++i) {
      const double factor = prior_of(Unknown::gap_convection).at(i / 20.0);
      pool.push_back(u_value(width_m, height_m, outdoor_C, correlation, factor));
    }
  }
  return pool;
}

TEST(WideGaps, TheAnswersRangeCoversTheSpreadOfTheCorrelations) {
  for (const double width_m : {0.020, 0.030, 0.050, 0.080, 0.100, 0.150}) {
    for (const double height_m : {0.5, 1.0, 1.5}) {
      for (const double outdoor_C : {-5.0, 5.0, 10.0}) {
        SCOPED_TRACE(testing::Message()
                     << width_m << " m wide, " << height_m << " m high, " << outdoor_C << " C");
        const auto pool = u_over_the_prior(width_m, height_m, outdoor_C);
        const auto range = numerics::weighted_spread(pool, std::vector<double>(pool.size(), 1.0));
        for (const auto each : {GapCorrelation::wright, GapCorrelation::elsherbiny, GapCorrelation::en_673}) {
          const double u = u_value(width_m, height_m, outdoor_C, each, 1.0);
          EXPECT_GE(u, range.p10);
          EXPECT_LE(u, range.p90);
        }
      }
    }
  }
}

TEST(WideGaps, TheThreeCorrelationsShareThePriorEqually) {
  const auto& prior = prior_of(Unknown::gap_correlation);
  EXPECT_FALSE(prior.is_convention());
  EXPECT_NEAR(prior.at(1.0 / 3.0), 1.0, 1e-9);
  EXPECT_NEAR(prior.at(2.0 / 3.0), 2.0, 1e-9);
}

}  // namespace
}  // namespace dewgap::test
