#include "dewgap/numerics/resampling.hpp"

#include <algorithm>
#include <boost/math/distributions/beta.hpp>
#include <cmath>
#include <limits>

#include "dewgap/errors.hpp"
#include "dewgap/numerics/split_mix.hpp"

namespace dewgap::numerics {
namespace {

std::vector<double> cumulative(std::span<const double> weights) {
  if (weights.empty()) {
    throw InvalidInput("weights", "there are none");
  }
  std::vector<double> sums;
  sums.reserve(weights.size());
  double sum = 0.0;
  for (const double weight : weights) {
    require_in_range(weight, {0.0, std::numeric_limits<double>::max()}, "weight", "");
    sums.push_back(sum += weight);
  }
  require_in_range(sum, {std::numeric_limits<double>::min(), std::numeric_limits<double>::max()},
                   "sum of the weights", "");
  return sums;
}

/// Bits in reverse behind the binary point: van der Corput's sequence in base 2.
double radical_inverse(std::size_t index) {
  double value = 0.0;
  for (double place = 0.5; index > 0; index >>= 1, place *= 0.5) {
    value += (index & 1u) != 0 ? place : 0.0;
  }
  return value;
}

}  // namespace

double shifted_van_der_corput(std::size_t index, double shift) {
  require_in_range(shift, {0.0, std::nextafter(1.0, 0.0)}, "shift", "");
  const double moved = radical_inverse(index) + shift;
  return moved < 1.0 ? moved : moved - 1.0;
}

std::vector<std::size_t> resampled(std::span<const double> weights, std::size_t count, std::uint64_t seed) {
  require_in_range(static_cast<double>(count), {0.0, 1e7}, "count of picks", "");
  const auto sums = cumulative(weights);
  const double shift = SplitMix64(seed).inside_unit_interval();
  std::vector<std::size_t> picks;
  picks.reserve(count);
  for (std::size_t k = 0; k < count; ++k) {
    const double position = shifted_van_der_corput(k, shift) * sums.back();
    // First entry whose part ends beyond the position: never one without weight. Rounding may put the
    // position on the very end: then it is the last entry with weight.
    const auto beyond = std::upper_bound(sums.begin(), sums.end(), position);
    const auto entry =
        beyond != sums.end() ? beyond : std::lower_bound(sums.begin(), sums.end(), sums.back());
    picks.push_back(static_cast<std::size_t>(entry - sums.begin()));
  }
  return picks;
}

ShareInterval share_interval_90(double hits, double trials) {
  require_in_range(trials, {1e-6, 1e12}, "trials", "");
  require_in_range(hits, {0.0, trials}, "hits", "");
  const double misses = trials - hits;
  const boost::math::beta_distribution<> jeffreys(hits + 0.5, misses + 0.5);
  return {.low = hits == 0.0 ? 0.0 : boost::math::quantile(jeffreys, 0.05),
          .high = misses == 0.0 ? 1.0 : boost::math::quantile(jeffreys, 0.95)};
}

}  // namespace dewgap::numerics
