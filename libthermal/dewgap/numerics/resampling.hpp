// Which of many weighted cases to work out when only a few can be: the same chance for the same weight.
// Private to the library; knows no physics.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace dewgap::numerics {

/// Point `index` (from 0) of van der Corput's sequence in base 2, moved by `shift` and wrapped: in [0, 1).
/// Any first n points are spread evenly: the share of them below t misses t by at most (1 + log2 n) / n
/// (twice its known bound for intervals from 0, since the wrap cuts an interval in two). `shift` in [0, 1).
double shifted_van_der_corput(std::size_t index, double shift);

/// `count` entries picked from weighted ones, in the order in which to work them out; an entry may be picked
/// more than once, and each pick counts the same. Pick k is the entry in whose part of the cumulative weight
/// the k-th point of a van der Corput sequence falls, shifted by a random number drawn from `seed`. So
///   - over the seeds each pick is entry i with the chance that its weight has: shares and means are
///   unbiased;
///   - any first n picks stand for all: n times a run of neighbours' weight is met within 1 + log2 n picks.
/// The second is of use when neighbours are alike: sort the entries by what matters most. Entries of a
/// low-discrepancy sequence must not stay in its own order, since their places and values are linked.
/// O(entries + count log entries). Throws InvalidInput for no weights, a negative one or NaN, all zero, and
/// for count over 1e7.
std::vector<std::size_t> resampled(std::span<const double> weights, std::size_t count, std::uint64_t seed);

/// 90 % interval of a share of which `hits` of `trials` were seen: Jeffreys' (Beta(hits + 1/2, misses + 1/2),
/// 5th and 95th percentile; 0 and 1 where nothing or all was hit). Brown, Cai and DasGupta 2001 (from
/// memory). Numbers need not be whole: weighted trials count by their effective number. Throws InvalidInput
/// for hits outside 0 to trials, and for trials outside 1e-6 to 1e12.
struct ShareInterval {
  double low = 0.0;
  double high = 1.0;
};
ShareInterval share_interval_90(double hits, double trials);

}  // namespace dewgap::numerics
