// A number that is not known exactly, and how it came to be known.
#pragma once

#include <string_view>

namespace dewgap {

/// Where a value comes from; carried through to every output.
enum class Basis { measured, described, archetype, defaulted };

/// A value with its evidence-weighted 10th and 90th percentiles, in the unit that the member's name states.
struct Spread {
  double p10 = 0.0;
  double p50 = 0.0;
  double p90 = 0.0;
};

}  // namespace dewgap
