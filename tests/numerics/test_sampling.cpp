#include "dewgap/numerics/sampling.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <numeric>
#include <vector>

#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap::numerics {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

// The leading 52 bits that a coordinate stands for.
std::uint64_t leading_bits(double coordinate) {
  return static_cast<std::uint64_t>(std::floor(coordinate * 0x1p52));
}

TEST(UnitCubeSamples, ShiftIsTheFirstWordsOfSplitMix64) {
  // Test vector of the generator's authors' code for seed 1234567, from memory.
  const auto samples = unit_cube_samples(1, 3, 1234567);
  EXPECT_EQ(leading_bits(samples.at(0)), 6457827717110365317u >> 12);
  EXPECT_EQ(leading_bits(samples.at(1)), 3203168211198807973u >> 12);
  EXPECT_EQ(leading_bits(samples.at(2)), 9817491932198370423u >> 12);
}

TEST(UnitCubeSamples, UnshiftedPointsAreTheSobolSequence) {
  // First points in two dimensions, Joe and Kuo's direction numbers, as Boost.Random documents them.
  const std::vector<std::array<double, 2>> sequence{{0.0, 0.0},   {0.5, 0.5},     {0.75, 0.25},
                                                    {0.25, 0.75}, {0.375, 0.375}, {0.875, 0.875}};
  const auto samples = unit_cube_samples(sequence.size(), 2, 99);
  for (std::size_t i = 0; i < sequence.size(); ++i) {
    for (std::size_t d = 0; d < 2; ++d) {
      const auto unshifted = leading_bits(samples[2 * i + d]) ^ leading_bits(samples[d]);
      EXPECT_EQ(static_cast<double>(unshifted) * 0x1p-52, sequence[i][d]) << i << " " << d;
    }
  }
}

TEST(UnitCubeSamples, EveryDimensionIsEvenlyFilledAndInside) {
  constexpr std::size_t count = 256;
  constexpr std::size_t dimensions = 200;
  for (const std::uint64_t seed : {0u, 1u, 4000000000u}) {
    const auto samples = unit_cube_samples(count, dimensions, seed);
    ASSERT_EQ(samples.size(), count * dimensions);
    for (std::size_t d = 0; d < dimensions; ++d) {
      std::vector<int> hits(count, 0);
      for (std::size_t i = 0; i < count; ++i) {
        const double u = samples[i * dimensions + d];
        ASSERT_GT(u, 0.0);
        ASSERT_LT(u, 1.0);
        ++hits[static_cast<std::size_t>(u * count)];
      }
      // A net: one point in each of the 256 slices.
      EXPECT_EQ(hits, std::vector<int>(count, 1)) << "dimension " << d;
    }
  }
}

TEST(UnitCubeSamples, SameArgumentsSamePointsOtherSeedOtherPoints) {
  EXPECT_EQ(unit_cube_samples(50, 7, 3), unit_cube_samples(50, 7, 3));
  EXPECT_NE(unit_cube_samples(50, 7, 3), unit_cube_samples(50, 7, 4));
  // More points continue fewer.
  const auto few = unit_cube_samples(10, 7, 3);
  auto many = unit_cube_samples(50, 7, 3);
  many.resize(few.size());
  EXPECT_EQ(few, many);
}

TEST(UnitCubeSamples, IntegrateAProductBetterThanRandomPoints) {
  constexpr std::size_t count = 4096;
  constexpr std::size_t dimensions = 5;
  const auto samples = unit_cube_samples(count, dimensions, 11);
  double sum = 0.0;
  for (std::size_t i = 0; i < count; ++i) {
    double product = 1.0;
    for (std::size_t d = 0; d < dimensions; ++d) {
      product *= 2.0 * samples[i * dimensions + d];
    }
    sum += product;
  }
  // Variance (4/3)^5 - 1: random points err by 0.028 (one sigma), the net by less than a tenth of that.
  EXPECT_NEAR(sum / count, 1.0, 0.0028);
}

TEST(UnitCubeSamples, BadInput) {
  EXPECT_THROW(unit_cube_samples(0, 1, 1), InvalidInput);
  EXPECT_THROW(unit_cube_samples(10'000'001, 1, 1), InvalidInput);
  EXPECT_THROW(unit_cube_samples(1, 0, 1), InvalidInput);
  EXPECT_THROW(unit_cube_samples(1, 201, 1), InvalidInput);
}

TEST(NormalQuantile, Table) {
  test::check_reference("statistics/normal_quantile.csv",
                        [](const auto& row) { return normal_quantile(row.number("probability")); });
}

TEST(NormalQuantile, UndoesProbability) {
  for (double z = -8.0; z <= 5.0; z += 0.125) {
    // Above zero 1 - u loses digits: the error is that of u over the density there.
    const double density = std::exp(-0.5 * z * z) / std::sqrt(2.0 * std::acos(-1.0));
    EXPECT_NEAR(normal_quantile(normal_probability(z)), z, 1e-13 + (z > 0.0 ? 2.3e-16 / density : 0.0)) << z;
  }
  EXPECT_TRUE(std::isfinite(normal_quantile(0x1p-53)));
  EXPECT_TRUE(std::isfinite(normal_quantile(1.0 - 0x1p-53)));
}

TEST(NormalQuantile, BadInput) {
  for (const double u : {0.0, 1.0, -0.1, 1.1, test::not_a_number, infinity}) {
    EXPECT_THROW(normal_quantile(u), InvalidInput) << u;
  }
  EXPECT_THROW(normal_probability(test::not_a_number), InvalidInput);
  EXPECT_THROW(normal_probability(infinity), InvalidInput);
}

TEST(WeightedQuantile, EqualWeightsGiveTheMiddleValue) {
  const std::vector<double> values{5.0, 1.0, 9.0};
  const std::vector<double> weights{2.0, 2.0, 2.0};
  EXPECT_EQ(weighted_quantile(values, weights, 0.5), 5.0);
  EXPECT_EQ(weighted_quantile(values, weights, 0.0), 1.0);
  EXPECT_EQ(weighted_quantile(values, weights, 1.0), 9.0);
  // Midpoints at 1/6, 1/2, 5/6: a third lies half-way between the first two.
  EXPECT_NEAR(weighted_quantile(values, weights, 1.0 / 3.0), 3.0, 1e-12);
}

TEST(WeightedQuantile, ByHand) {
  const std::vector<double> values{10.0, 20.0, 30.0};
  const std::vector<double> weights{1.0, 2.0, 1.0};
  // Midpoints 0.5, 2, 3.5 of 4.
  EXPECT_EQ(weighted_quantile(values, weights, 0.5), 20.0);
  EXPECT_NEAR(weighted_quantile(values, weights, 0.3125), 15.0, 1e-12);
  EXPECT_EQ(weighted_quantile(values, weights, 0.1), 10.0);
}

TEST(WeightedQuantile, ValuesOfNoWeightDoNotCount) {
  const std::vector<double> values{1e9, 1.0, 2.0, 3.0, -1e9};
  const std::vector<double> weights{0.0, 1.0, 1.0, 1.0, 0.0};
  EXPECT_EQ(weighted_quantile(values, weights, 0.0), 1.0);
  EXPECT_EQ(weighted_quantile(values, weights, 0.5), 2.0);
  EXPECT_EQ(weighted_quantile(values, weights, 1.0), 3.0);
  EXPECT_EQ(weighted_quantile(std::vector{4.0}, std::vector{1e-200}, 0.9), 4.0);
}

TEST(WeightedSpread, OfEvenSamplesIsTheirPercentiles) {
  std::vector<double> values(1001);
  std::iota(values.begin(), values.end(), 0.0);
  const std::vector<double> weights(values.size(), 0.25);
  const auto spread = weighted_spread(values, weights);
  EXPECT_NEAR(spread.p10, 1001 * 0.1 - 0.5, 1e-9);
  EXPECT_NEAR(spread.p50, 500.0, 1e-9);
  EXPECT_NEAR(spread.p90, 1001 * 0.9 - 0.5, 1e-9);
}

TEST(WeightedMean, ByHand) {
  EXPECT_DOUBLE_EQ(weighted_mean(std::vector{1.0, 4.0}, std::vector{2.0, 1.0}), 2.0);
}

TEST(RankCorrelation, MonotoneIsOneWhateverTheShape) {
  const std::vector<double> x{1.0, 2.0, 3.0, 4.0, 5.0};
  const std::vector<double> rising{0.1, 0.2, 5.0, 1e3, 1e9};
  const std::vector<double> falling{9.0, 8.0, 1.0, 0.0, -7.0};
  for (const double scale : {1.0, 1e-150}) {
    const std::vector<double> weights{scale, 3.0 * scale, 2.0 * scale, scale, 5.0 * scale};
    EXPECT_NEAR(weighted_rank_correlation(x, rising, weights), 1.0, 1e-12);
    EXPECT_NEAR(weighted_rank_correlation(x, falling, weights), -1.0, 1e-12);
  }
}

TEST(RankCorrelation, ByHand) {
  // Unweighted Spearman: 1 - 6 sum d^2 / (n (n^2 - 1)), d = 0, 1, -1, 0.
  const std::vector<double> x{1.0, 2.0, 3.0, 4.0};
  const std::vector<double> y{10.0, 30.0, 20.0, 40.0};
  const std::vector<double> ones(4, 1.0);
  EXPECT_NEAR(weighted_rank_correlation(x, y, ones), 1.0 - 6.0 * 2.0 / (4.0 * 15.0), 1e-12);
  EXPECT_NEAR(weighted_rank_correlation(y, x, ones), 0.8, 1e-12);
  // Tied x: mid-ranks 1.5, 1.5, 3; y ranks 1, 2, 3: covariance 1.5, variances 1.5 and 2.
  EXPECT_NEAR(
      weighted_rank_correlation(std::vector{1.0, 1.0, 2.0}, std::vector{1.0, 2.0, 3.0}, std::vector(3, 1.0)),
      1.5 / std::sqrt(1.5 * 2.0), 1e-12);
}

TEST(RankCorrelation, WeightTwoIsTheValueTwice) {
  const std::vector<double> x{1.0, 2.0, 3.0, 4.0};
  const std::vector<double> y{2.0, 1.0, 5.0, 3.0};
  const std::vector<double> x_twice{1.0, 2.0, 2.0, 3.0, 4.0};
  const std::vector<double> y_twice{2.0, 1.0, 1.0, 5.0, 3.0};
  EXPECT_NEAR(weighted_rank_correlation(x, y, std::vector{1.0, 2.0, 1.0, 1.0}),
              weighted_rank_correlation(x_twice, y_twice, std::vector(5, 1.0)), 1e-12);
}

TEST(RankCorrelation, ZeroWhenASideDoesNotVary) {
  const std::vector<double> x{1.0, 2.0, 3.0};
  const std::vector<double> flat{0.3, 0.3, 0.3};
  EXPECT_EQ(weighted_rank_correlation(x, flat, std::vector(3, 0.1)), 0.0);
  EXPECT_EQ(weighted_rank_correlation(flat, x, std::vector(3, 0.1)), 0.0);
  EXPECT_EQ(weighted_rank_correlation(x, x, std::vector{1.0, 0.0, 0.0}), 0.0);
}

TEST(EffectiveSampleSize, EqualWeightsCountAllOneWeightCountsOne) {
  EXPECT_NEAR(effective_sample_size(std::vector(10, 0.3)), 10.0, 1e-12);
  EXPECT_NEAR(effective_sample_size(std::vector{0.0, 1e-200, 0.0}), 1.0, 1e-12);
  EXPECT_NEAR(effective_sample_size(std::vector{1.0, 3.0}), 1.6, 1e-12);
}

TEST(WeightedStatistics, BadInput) {
  const std::vector<double> two{1.0, 2.0};
  const std::vector<double> none;
  const std::vector<std::vector<double>> bad_weights{{1.0, -1.0},     {0.0, 0.0}, {1.0, test::not_a_number},
                                                     {1.0, infinity}, {},         {1.0}};
  for (const auto& weights : bad_weights) {
    EXPECT_THROW(weighted_quantile(two, weights, 0.5), InvalidInput);
    EXPECT_THROW(weighted_spread(two, weights), InvalidInput);
    EXPECT_THROW(weighted_mean(two, weights), InvalidInput);
    EXPECT_THROW(weighted_rank_correlation(two, two, weights), InvalidInput);
    if (weights.size() != 1) {
      EXPECT_THROW(effective_sample_size(weights), InvalidInput);
    }
  }
  for (const auto& values :
       std::vector<std::vector<double>>{{1.0, test::not_a_number}, {infinity, 1.0}, {1.0, 2.0, 3.0}}) {
    EXPECT_THROW(weighted_quantile(values, two, 0.5), InvalidInput);
    EXPECT_THROW(weighted_spread(values, two), InvalidInput);
    EXPECT_THROW(weighted_mean(values, two), InvalidInput);
    EXPECT_THROW(weighted_rank_correlation(values, two, two), InvalidInput);
    EXPECT_THROW(weighted_rank_correlation(two, values, two), InvalidInput);
  }
  for (const double q : {-0.01, 1.01, test::not_a_number}) {
    EXPECT_THROW(weighted_quantile(two, two, q), InvalidInput);
  }
}

}  // namespace
}  // namespace dewgap::numerics
