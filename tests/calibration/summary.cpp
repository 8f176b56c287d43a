#include "calibration/summary.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/numerics/sampling.hpp"

namespace dewgap::calibration {
namespace {

std::vector<Claims> settled_claims(const Judged& judged, Weighing weighing, Stage stage) {
  std::vector<Claims> found;
  for (const auto& window : claims_under(judged, weighing)) {
    const auto& claims = window.at(static_cast<std::size_t>(stage));
    if (claims.effective >= judged.least_effective) {
      found.push_back(claims);
    }
  }
  return found;
}

void add_reliability(const std::vector<Claims>& settled, StageSummary& summary) {
  std::vector<Claim> chosen;
  std::array<std::vector<Claim>, every_vent_option.size()> by_option;
  double squares = 0.0;
  double count = 0.0;
  for (const auto& claims : settled) {
    chosen.push_back(claims.chosen);
    for (std::size_t j = 0; j < by_option.size(); ++j) {
      if (const auto& claim = claims.acceptable.at(j)) {
        by_option.at(j).push_back(*claim);
        squares += std::pow((claim->came_true ? 1.0 : 0.0) - claim->share, 2);
        count += 1.0;
      }
    }
  }
  summary.chosen = reliability_of(chosen);
  std::transform(by_option.begin(), by_option.end(), summary.options.begin(), reliability_of);
  summary.brier = count > 0.0 ? squares / count : 0.0;
}

bool is_within(const Reliability& found) {
  return found.probability >= least_probability && found.largest_deviation <= most_deviation;
}

}  // namespace

const std::vector<std::vector<Claims>>& claims_under(const Judged& judged, Weighing weighing) {
  return judged.claims.at(static_cast<std::size_t>(weighing));
}

double StageSummary::largest_deviation() const {
  double largest = chosen.largest_deviation;
  for (const auto& option : options) {
    largest = std::max(largest, option.largest_deviation);
  }
  return largest;
}

bool StageSummary::holds() const {
  return is_within(chosen) && std::all_of(options.begin(), options.end(), is_within);
}

StageSummary summary_of(const Judged& judged, Weighing weighing, Stage stage) {
  const auto settled = settled_claims(judged, weighing, stage);
  StageSummary summary{.windows = claims_under(judged, weighing).size(), .settled = settled.size()};
  if (settled.empty()) {
    return summary;
  }
  std::vector<double> effective;
  for (const auto& claims : settled) {
    effective.push_back(claims.effective);
  }
  summary.median_effective =
      numerics::weighted_quantile(effective, std::vector<double>(effective.size(), 1.0), 0.5);
  add_reliability(settled, summary);
  return summary;
}

}  // namespace dewgap::calibration
