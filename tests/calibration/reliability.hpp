// Are claims of a share right as often as they say?
#pragma once

#include <array>
#include <vector>

#include "calibration/staged.hpp"

namespace dewgap::calibration {

/// Claims within a tenth of shares.
struct Bin {
  std::size_t count = 0;
  double claimed = 0.0;        ///< mean share
  double seen = 0.0;           ///< share that came true
  double sampling = 0.0;       ///< standard error of `seen` were the claims right, binomial
  bool has_deviation = false;  ///< the variance of so few or so certain claims is at least 3 in all
  double deviation = 0.0;      ///< (seen - claimed) / sampling
};

struct Reliability {
  std::array<Bin, 10> bins;
  std::size_t count = 0;
  double chi_square = 0.0;         ///< over bins, those without a deviation joined to a neighbour
  std::size_t groups = 0;          ///< its degrees of freedom
  double probability = 1.0;        ///< of so large a chi-square were the claims right
  double largest_deviation = 0.0;  ///< of the bins, without its sign
  double brier = 0.0;              ///< mean squared distance of claim and truth
  double brier_of_base = 0.0;      ///< the same were the mean of what is seen claimed of all
  double bias = 0.0;               ///< mean of seen less claimed
  double bias_sampling = 0.0;      ///< its standard error were the claims right
};
Reliability reliability_of(const std::vector<Claim>& claims);

}  // namespace dewgap::calibration
