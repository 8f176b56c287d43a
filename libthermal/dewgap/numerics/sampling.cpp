#include "dewgap/numerics/sampling.hpp"

#include <algorithm>
#include <array>
#include <boost/math/special_functions/erf.hpp>
#include <boost/random/sobol.hpp>
#include <cmath>
#include <limits>
#include <numbers>
#include <numeric>

#include "dewgap/errors.hpp"
#include "dewgap/numerics/split_mix.hpp"

namespace dewgap::numerics {
namespace {

// Midpoint of the cell of width 2^-52 that the word's leading 52 bits name: exact, and strictly inside (0,
// 1).
double inside_unit_interval(std::uint64_t word) {
  return (static_cast<double>(word >> 12) + 0.5) * 0x1p-52;
}

double require_weights(std::span<const double> weights) {
  if (weights.empty()) {
    throw InvalidInput("weights", "there are none");
  }
  double total = 0.0;
  for (const double weight : weights) {
    require_in_range(weight, {0.0, std::numeric_limits<double>::max()}, "weight", "");
    total += weight;
  }
  require_in_range(total, {std::numeric_limits<double>::min(), std::numeric_limits<double>::max()},
                   "sum of the weights", "");
  return total;
}

// The weights over their sum. Likelihoods may be tiny; their squares and cubes must not underflow.
std::vector<double> shares_of(std::span<const double> weights) {
  const double total = require_weights(weights);
  std::vector<double> shares(weights.begin(), weights.end());
  for (double& share : shares) {
    share /= total;
  }
  return shares;
}

void require_values(std::span<const double> values, std::span<const double> weights) {
  if (values.size() != weights.size()) {
    throw InvalidInput("values", "there are " + std::to_string(values.size()) + " for " +
                                     std::to_string(weights.size()) + " weights");
  }
  for (const double value : values) {
    require_in_range(value, {std::numeric_limits<double>::lowest(), std::numeric_limits<double>::max()},
                     "value", "");
  }
}

// Indices of the values that carry weight, in rising order of value.
std::vector<std::size_t> rising_order(std::span<const double> values, std::span<const double> weights) {
  std::vector<std::size_t> order;
  order.reserve(values.size());
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (weights[i] > 0.0) {
      order.push_back(i);
    }
  }
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return values[a] < values[b]; });
  return order;
}

struct OrderedSample {
  std::vector<double> values;     // rising
  std::vector<double> midpoints;  // cumulative weight up to the middle of each value's own weight
  double total = 0.0;             // of the weights, added in the order of the values
};

OrderedSample ordered_sample(std::span<const double> values, std::span<const double> weights) {
  require_weights(weights);
  require_values(values, weights);
  OrderedSample sample;
  for (const std::size_t i : rising_order(values, weights)) {
    sample.values.push_back(values[i]);
    sample.midpoints.push_back(sample.total + 0.5 * weights[i]);
    sample.total += weights[i];
  }
  return sample;
}

double quantile_of(const OrderedSample& sample, double q) {
  const double wanted = q * sample.total;
  const auto above = std::upper_bound(sample.midpoints.begin(), sample.midpoints.end(), wanted);
  if (above == sample.midpoints.begin()) {
    return sample.values.front();
  }
  if (above == sample.midpoints.end()) {
    return sample.values.back();
  }
  const auto k = static_cast<std::size_t>(above - sample.midpoints.begin());
  const double share = (wanted - sample.midpoints[k - 1]) / (sample.midpoints[k] - sample.midpoints[k - 1]);
  return std::lerp(sample.values[k - 1], sample.values[k], share);
}

// Weighted mid-ranks: the weight of all smaller values and half that of all equal ones. Zero-weight entries
// get 0.
std::vector<double> weighted_ranks(std::span<const double> values, std::span<const double> weights) {
  const auto order = rising_order(values, weights);
  std::vector<double> ranks(values.size(), 0.0);
  double below = 0.0;
  for (std::size_t first = 0; first < order.size();) {
    std::size_t last = first;
    double tied = 0.0;
    for (; last < order.size() && values[order[last]] == values[order[first]]; ++last) {
      tied += weights[order[last]];
    }
    for (std::size_t i = first; i < last; ++i) {
      ranks[order[i]] = below + 0.5 * tied;
    }
    below += tied;
    first = last;
  }
  return ranks;
}

bool varies(std::span<const double> values, std::span<const double> weights) {
  const auto order = rising_order(values, weights);
  return values[order.front()] < values[order.back()];
}

double mean_of(std::span<const double> values, std::span<const double> weights) {
  return std::inner_product(values.begin(), values.end(), weights.begin(), 0.0) /
         std::accumulate(weights.begin(), weights.end(), 0.0);
}

double weighted_correlation(std::span<const double> x, std::span<const double> y,
                            std::span<const double> weights) {
  const double x_mean = mean_of(x, weights);
  const double y_mean = mean_of(y, weights);
  double xx = 0.0;
  double yy = 0.0;
  double xy = 0.0;
  for (std::size_t i = 0; i < weights.size(); ++i) {
    const double dx = x[i] - x_mean;
    const double dy = y[i] - y_mean;
    xx += weights[i] * dx * dx;
    yy += weights[i] * dy * dy;
    xy += weights[i] * dx * dy;
  }
  // Cauchy-Schwarz bounds the quotient by 1; rounding may pass it by a unit of the last place.
  return std::clamp(xy / (std::sqrt(xx) * std::sqrt(yy)), -1.0, 1.0);
}

}  // namespace

std::vector<double> unit_cube_samples(std::size_t count, std::size_t dimensions, std::uint64_t seed) {
  require_in_range(static_cast<double>(count), {1.0, 1e7}, "sample count", "");
  require_in_range(static_cast<double>(dimensions), {1.0, 200.0}, "sample dimensions", "");

  SplitMix64 random(seed);
  std::vector<std::uint64_t> shift(dimensions);
  std::generate(shift.begin(), shift.end(), [&] { return random.next(); });

  // The engine leaves out the sequence's first point, the origin; with it the first 2^m points are a net.
  boost::random::sobol engine(dimensions);
  std::vector<double> samples(count * dimensions);
  for (std::size_t d = 0; d < dimensions; ++d) {
    samples[d] = inside_unit_interval(shift[d]);
  }
  for (std::size_t i = dimensions; i < samples.size(); ++i) {
    samples[i] = inside_unit_interval(engine() ^ shift[i % dimensions]);
  }
  return samples;
}

double normal_quantile(double u) {
  require_in_range(u, {std::numeric_limits<double>::min(), std::nextafter(1.0, 0.0)},
                   "cumulative probability", "");
  return -std::numbers::sqrt2 * boost::math::erfc_inv(2.0 * u);
}

double normal_probability(double z) {
  require_in_range(z, {std::numeric_limits<double>::lowest(), std::numeric_limits<double>::max()},
                   "normal deviate", "");
  return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}

double weighted_quantile(std::span<const double> values, std::span<const double> weights, double q) {
  require_in_range(q, {0.0, 1.0}, "quantile", "");
  return quantile_of(ordered_sample(values, weights), q);
}

std::vector<double> weighted_quantiles(std::span<const double> values, std::span<const double> weights,
                                       std::span<const double> q) {
  const OrderedSample sample = ordered_sample(values, weights);
  std::vector<double> quantiles;
  quantiles.reserve(q.size());
  for (const double share : q) {
    require_in_range(share, {0.0, 1.0}, "quantile", "");
    quantiles.push_back(quantile_of(sample, share));
  }
  return quantiles;
}

Spread weighted_spread(std::span<const double> values, std::span<const double> weights) {
  const OrderedSample sample = ordered_sample(values, weights);
  return {quantile_of(sample, 0.1), quantile_of(sample, 0.5), quantile_of(sample, 0.9)};
}

double weighted_mean(std::span<const double> values, std::span<const double> weights) {
  require_weights(weights);
  require_values(values, weights);
  return mean_of(values, weights);
}

double weighted_rank_correlation(std::span<const double> x, std::span<const double> y,
                                 std::span<const double> weights) {
  require_values(x, weights);
  require_values(y, weights);
  const auto shares = shares_of(weights);
  if (!varies(x, shares) || !varies(y, shares)) {
    return 0.0;
  }
  return weighted_correlation(weighted_ranks(x, shares), weighted_ranks(y, shares), shares);
}

double effective_sample_size(std::span<const double> weights) {
  const auto shares = shares_of(weights);
  return 1.0 / std::inner_product(shares.begin(), shares.end(), shares.begin(), 0.0);
}

}  // namespace dewgap::numerics
