// Sums over windows whose errors are partly the same. Internal to assessment/.
#pragma once

#include <cstdint>
#include <vector>

#include "dewgap/assessment/house.hpp"

namespace dewgap {

/// A window that counts, with the survey it was assessed from.
struct CountedWindow {
  const HouseWindow* window = nullptr;
  const Survey* survey = nullptr;

  const Assessment::Figures& figures() const { return *window->assessment.figures; }
};

using FigureOf = SampledFigure SavingSamples::*;

enum class Errors { shared_ones_pull_together, none_shared };

/// Plausible cases of the house, all alike in weight: a list for each window, a value for each case.
using HouseCases = std::vector<std::vector<double>>;
HouseCases house_cases(const std::vector<CountedWindow>& windows, FigureOf figure, Errors errors,
                       std::uint64_t seed);

/// Each case's sum over the windows at these places of the list.
std::vector<double> sums_over(const HouseCases& cases, const std::vector<std::size_t>& places);

/// 10th, 50th and 90th percentile of a window's own cases.
Spread own_spread(const CountedWindow& window, FigureOf figure);

HouseTotals totals_over(const std::vector<CountedWindow>& windows, std::uint64_t seed);

}  // namespace dewgap
