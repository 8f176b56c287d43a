// What is believed of each unknown for one survey, and samples drawn from it. Internal to assessment/.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "dewgap/assessment/assess.hpp"

namespace dewgap {

/// One value an unknown.
struct UnknownValues {
  std::array<double, unknown_count> value{};
  double operator[](Unknown unknown) const { return value[static_cast<std::size_t>(unknown)]; }
  double& operator[](Unknown unknown) { return value[static_cast<std::size_t>(unknown)]; }
};

/// The prior that holds for the survey, or the one value an expert gave.
struct Belief {
  Prior prior;
  Basis basis = Basis::defaulted;
  std::optional<double> fixed;
};
using Beliefs = std::array<Belief, unknown_count>;

Beliefs beliefs_for(const Survey& survey);

/// Joint samples: Sobol points through each belief. `convention_width` scales the spread of priors that are
/// our convention (1 as stated).
std::vector<UnknownValues> draw_samples(const Beliefs& beliefs, std::size_t count, std::uint64_t seed,
                                        double convention_width);

}  // namespace dewgap
