// Low-discrepancy samples and weighted statistics. Private to the library; knows no physics.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "dewgap/quantity.hpp"

namespace dewgap::numerics {

/// `count` points of the unit cube in `dimensions` dimensions, row by row: Sobol points (Boost.Random) with a
/// random digital shift drawn from `seed` by SplitMix64; every coordinate lies strictly inside (0, 1).
/// The same arguments give the same points on every machine. Throws InvalidInput for count 0 or over 1e7,
/// dimensions 0 or over 200.
std::vector<double> unit_cube_samples(std::size_t count, std::size_t dimensions, std::uint64_t seed);

/// Standard normal deviate at cumulative probability u in (0, 1); 0, 1 and NaN throw.
double normal_quantile(double u);
/// The deviate at 0.9: ties a spread stated by its 10th and 90th percentile to a standard deviation.
inline constexpr double normal_p90 = 1.2815515655446004;
/// Standard normal cumulative probability.
double normal_probability(double z);

// The weighted statistics throw InvalidInput for NaN or infinite values, unequal lengths, no weights, a
// negative weight, or weights that are all zero. Values of weight zero are left out.

/// Quantile q in [0, 1] of weighted values (weights >= 0, not all zero): the midpoint rule on the cumulative
/// weight, linear between values; the smallest or largest value beyond the outermost midpoints. Equal weights
/// of an odd count return the middle value at q = 0.5.
double weighted_quantile(std::span<const double> values, std::span<const double> weights, double q);
/// The same for many q, in their order, with one sort of the values.
std::vector<double> weighted_quantiles(std::span<const double> values, std::span<const double> weights,
                                       std::span<const double> q);
/// 10th, 50th and 90th percentile.
Spread weighted_spread(std::span<const double> values, std::span<const double> weights);
double weighted_mean(std::span<const double> values, std::span<const double> weights);

/// Weighted Spearman rank correlation (ties share their middle rank), in [-1, 1]; 0 when either side does not
/// vary.
double weighted_rank_correlation(std::span<const double> x, std::span<const double> y,
                                 std::span<const double> weights);

/// Kish's effective sample size: (sum w)^2 / sum w^2.
double effective_sample_size(std::span<const double> weights);

}  // namespace dewgap::numerics
