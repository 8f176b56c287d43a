#include "dewgap/numerics/resampling.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numeric>

#include "dewgap/errors.hpp"

namespace dewgap::numerics {
namespace {

const std::vector<double> uneven{0.0, 3.0, 0.5, 0.0, 2.5, 1.0, 0.25, 2.75, 0.0};

double sum_of(const std::vector<double>& weights) {
  return std::accumulate(weights.begin(), weights.end(), 0.0);
}

TEST(Resampling, VanDerCorputHasItsKnownFirstPoints) {
  constexpr std::array<double, 8> known{0.0, 0.5, 0.25, 0.75, 0.125, 0.625, 0.375, 0.875};
  for (std::size_t k = 0; k < known.size(); ++k) {
    EXPECT_EQ(shifted_van_der_corput(k, 0.0), known[k]);
  }
  EXPECT_DOUBLE_EQ(shifted_van_der_corput(3, 0.5), 0.25);
  EXPECT_THROW(shifted_van_der_corput(0, 1.0), InvalidInput);
}

TEST(Resampling, EachPickHasTheChanceOfItsWeight) {
  constexpr std::size_t seeds = 20000;
  // The first, and a later one: over the seeds each is as likely as its weight.
  for (const std::size_t pick : {std::size_t{0}, std::size_t{5}}) {
    std::vector<double> hits(uneven.size(), 0.0);
    for (std::size_t seed = 0; seed < seeds; ++seed) {
      hits[resampled(uneven, pick + 1, seed)[pick]] += 1.0;
    }
    for (std::size_t i = 0; i < uneven.size(); ++i) {
      const double chance = uneven[i] / sum_of(uneven);
      const double sd = std::sqrt(chance * (1.0 - chance) / static_cast<double>(seeds));
      EXPECT_NEAR(hits[i] / static_cast<double>(seeds), chance, 4.5 * sd) << "entry " << i;
    }
  }
}

TEST(Resampling, AnyPrefixStandsForAll) {
  for (const std::uint64_t seed : {1u, 2u, 3u, 99u}) {
    const auto picks = resampled(uneven, 256, seed);
    std::vector<std::size_t> times(uneven.size(), 0);
    for (std::size_t n = 1; n <= picks.size(); ++n) {
      ++times[picks[n - 1]];
      const double bound = 1.0 + std::log2(static_cast<double>(n));
      double below = 0.0;
      std::size_t picked = 0;
      for (std::size_t i = 0; i < uneven.size(); ++i) {
        below += uneven[i] / sum_of(uneven);
        picked += times[i];
        EXPECT_LE(std::abs(static_cast<double>(picked) - below * static_cast<double>(n)), bound + 1e-9)
            << "first " << n << ", up to entry " << i << ", seed " << seed;
      }
    }
  }
}

TEST(Resampling, EntriesWithoutWeightAreNeverPicked) {
  for (const std::size_t pick : resampled(uneven, 4096, 7)) {
    EXPECT_GT(uneven[pick], 0.0);
  }
  const std::vector<double> one{0.0, 1e-300, 0.0};
  for (const std::size_t pick : resampled(one, 64, 7)) {
    EXPECT_EQ(pick, 1u);
  }
}

TEST(Resampling, SameSeedSamePicksAndAPrefixIsAPrefix) {
  const auto many = resampled(uneven, 128, 11);
  const auto few = resampled(uneven, 16, 11);
  EXPECT_TRUE(std::equal(few.begin(), few.end(), many.begin()));
  EXPECT_NE(many, resampled(uneven, 128, 12));
}

TEST(Resampling, JeffreysIntervalHasItsPublishedForm) {
  // Beta(1/2, 1/2) is the arcsine law: the 95th percentile of nothing hit in no more than one trial is that
  // of Beta(1/2, 3/2), whose distribution is 2/pi (asin(sqrt x) + sqrt(x (1 - x))).
  const auto none = share_interval_90(0, 1);
  EXPECT_EQ(none.low, 0.0);
  const double x = none.high;
  EXPECT_NEAR(2.0 / std::acos(-1.0) * (std::asin(std::sqrt(x)) + std::sqrt(x * (1.0 - x))), 0.95, 1e-9);
  const auto all = share_interval_90(16, 16);
  EXPECT_EQ(all.high, 1.0);
  EXPECT_GT(all.low, 0.85);
  EXPECT_LT(all.low, 0.92);
  const auto half = share_interval_90(8, 16);
  EXPECT_NEAR(half.low + half.high, 1.0, 1e-12);
  EXPECT_THROW(share_interval_90(2, 1), InvalidInput);
  EXPECT_THROW(share_interval_90(0, 0), InvalidInput);
}

TEST(Resampling, BadWeightsThrow) {
  EXPECT_THROW(resampled(std::vector<double>{}, 1, 1), InvalidInput);
  EXPECT_THROW(resampled(std::vector<double>{0.0, 0.0}, 1, 1), InvalidInput);
  EXPECT_THROW(resampled(std::vector<double>{1.0, -1.0}, 1, 1), InvalidInput);
  EXPECT_THROW(resampled(std::vector<double>{1.0, std::numeric_limits<double>::quiet_NaN()}, 1, 1),
               InvalidInput);
}

}  // namespace
}  // namespace dewgap::numerics
