#include "calibration/reliability.hpp"

#include <algorithm>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>

namespace dewgap::calibration {
namespace {

constexpr double least_variance = 3.0;  // of a bin's or group's claims together

double variance_of(const Claim& claim) {
  return claim.share * (1.0 - claim.share);
}

double surprise_of(const Claim& claim) {
  return (claim.came_true ? 1.0 : 0.0) - claim.share;
}

Bin bin_of(const std::vector<Claim>& claims) {
  Bin bin{.count = claims.size()};
  double variance = 0.0;
  const auto count = static_cast<double>(claims.size());
  for (const auto& claim : claims) {
    bin.claimed += claim.share / count;
    bin.seen += claim.came_true ? 1.0 / count : 0.0;
    variance += variance_of(claim);
  }
  bin.has_deviation = variance >= least_variance;
  if (bin.has_deviation) {
    bin.sampling = std::sqrt(variance) / count;
    bin.deviation = (bin.seen - bin.claimed) / bin.sampling;
  }
  return bin;
}

/// Surprise and variance of neighbouring claims.
struct Group {
  double surprise = 0.0;
  double variance = 0.0;
};

/// Groups end where a bin ends, once their variance is enough; what is left over joins the last.
std::vector<Group> groups_of(const std::array<std::vector<Claim>, 10>& parts) {
  std::vector<Group> groups;
  Group open;
  for (const auto& part : parts) {
    for (const auto& claim : part) {
      open.surprise += surprise_of(claim);
      open.variance += variance_of(claim);
    }
    if (open.variance >= least_variance) {
      groups.push_back(open);
      open = {};
    }
  }
  if (!groups.empty()) {
    groups.back().surprise += open.surprise;
    groups.back().variance += open.variance;
  }
  return groups;
}

void add_chi_square(const std::array<std::vector<Claim>, 10>& parts, Reliability& found) {
  const auto groups = groups_of(parts);
  found.groups = groups.size();
  for (const auto& group : groups) {
    found.chi_square += group.surprise * group.surprise / group.variance;
  }
  if (found.groups > 0) {
    found.probability = boost::math::gamma_q(0.5 * static_cast<double>(found.groups), 0.5 * found.chi_square);
  }
}

}  // namespace

Reliability reliability_of(const std::vector<Claim>& claims) {
  Reliability found{.count = claims.size()};
  if (claims.empty()) {
    return found;
  }
  std::array<std::vector<Claim>, 10> parts;
  double hits = 0.0;
  double variance = 0.0;
  const auto count = static_cast<double>(claims.size());
  for (const auto& claim : claims) {
    parts.at(std::min<std::size_t>(9, static_cast<std::size_t>(10.0 * claim.share))).push_back(claim);
    hits += claim.came_true ? 1.0 : 0.0;
    variance += variance_of(claim);
    found.brier += surprise_of(claim) * surprise_of(claim) / count;
    found.bias += surprise_of(claim) / count;
  }
  found.bias_sampling = std::sqrt(variance) / count;
  found.brier_of_base = hits / count * (1.0 - hits / count);
  for (std::size_t b = 0; b < parts.size(); ++b) {
    found.bins.at(b) = bin_of(parts.at(b));
    found.largest_deviation = std::max(found.largest_deviation, std::abs(found.bins.at(b).deviation));
  }
  add_chi_square(parts, found);
  return found;
}

}  // namespace dewgap::calibration
