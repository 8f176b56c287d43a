// Scalar root finding. Private to the library.
#pragma once

#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>

#include "dewgap/validity.hpp"

namespace dewgap::numerics {

struct RootOptions {
  double absolute_tolerance = 1e-12;  ///< on the width of the bracket
  int max_iterations = 100;
};

struct RootResult {
  double root = 0.0;
  int iterations = 0;
  SolveStatus status = SolveStatus::no_bracket;
};

/// Root of a continuous f in [low, high], where f(low) and f(high) have opposite signs (zero counts as
/// either). Algorithm 748 of Alefeld, Potra and Shi (ACM TOMS 21, 1995), as in Boost.Math.
template <class Function>
RootResult find_root(Function&& f, double low, double high, RootOptions options = {}) {
  const double f_low = f(low);
  const double f_high = f(high);
  if (f_low == 0.0) {
    return {low, 0, SolveStatus::converged};
  }
  if (f_high == 0.0) {
    return {high, 0, SolveStatus::converged};
  }
  if (!(f_low * f_high < 0.0)) {
    return {};
  }
  auto iterations = static_cast<std::uintmax_t>(options.max_iterations);
  const auto narrow = [&](double a, double b) { return std::abs(b - a) <= options.absolute_tolerance; };
  const auto bracket = boost::math::tools::toms748_solve(f, low, high, f_low, f_high, narrow, iterations);
  const bool converged = narrow(bracket.first, bracket.second) || f(bracket.first) == 0.0;
  return {0.5 * (bracket.first + bracket.second), static_cast<int>(iterations),
          converged ? SolveStatus::converged : SolveStatus::iteration_limit};
}

}  // namespace dewgap::numerics
