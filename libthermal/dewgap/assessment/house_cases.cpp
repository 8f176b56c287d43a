#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numbers>
#include <numeric>

#include "dewgap/assessment/house_totals_kernel.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

constexpr std::size_t case_count = 4096;

/// Pull of each unknown on a window's figure, as loadings of a standard normal deviate: sum of squares 1, or
/// all 0 where nothing pulls beyond chance.
std::array<double, unknown_count> loadings_of(const SavingSamples& samples, FigureOf figure) {
  // Of n cases chance alone gives a squared rank correlation of 1/(n - 1) on average (Kendall and Gibbons,
  // from memory).
  const double cases = numerics::effective_sample_size(samples.weights);
  const double by_chance = 1.0 / std::max(1.0, cases - 1.0);
  std::array<double, unknown_count> loadings{};
  double squares = 0.0;
  for (std::size_t k = 0; k < unknown_count; ++k) {
    const double r = (samples.*figure).rank_correlation[k];
    const double freed = std::copysign(std::sqrt(std::max(0.0, r * r - by_chance)), r);
    // Pearson 1907: correlation of normal deviates whose ranks correlate so.
    loadings[k] = 2.0 * std::sin(std::numbers::pi * freed / 6.0);
    squares += loadings[k] * loadings[k];
  }
  for (double& loading : loadings) {
    loading = squares > 0.0 ? loading / std::sqrt(squares) : 0.0;
  }
  return loadings;
}

/// Number of the first window with a room described alike.
std::size_t room_of(const std::vector<CountedWindow>& windows, std::size_t v) {
  for (std::size_t w = 0; w < v; ++w) {
    if (windows[w].survey->room == windows[v].survey->room) {
      return w;
    }
  }
  return v;
}

/// Quarter of the compass that a window looks to; one more where nobody said.
std::size_t facade_of(const Survey& survey) {
  const auto& facing = survey.window.facing_compass_deg;
  return facing ? static_cast<std::size_t>(std::lround(*facing / 90.0)) % 4 : 4;
}

/// Which windows an unknown is the same for: windows with the same number.
std::size_t group_of(const std::vector<CountedWindow>& windows, std::size_t v, Sharing sharing) {
  switch (sharing) {
    case Sharing::room:
      return room_of(windows, v);
    case Sharing::facade:
      return facade_of(*windows[v].survey);
    case Sharing::house:
    case Sharing::window:
      return 0;
  }
  return 0;
}

/// A window's deviate as a sum: loading times the common deviate of that column, and the rest its own.
struct Deviate {
  std::map<std::size_t, double> common;
  double own = 1.0;
};

struct Deviates {
  std::vector<Deviate> windows;
  std::size_t common_columns = 0;
};

Deviates deviates_of(const std::vector<CountedWindow>& windows, FigureOf figure) {
  Deviates all;
  std::map<std::pair<std::size_t, std::size_t>, std::size_t> columns;  // of unknown and group
  for (std::size_t v = 0; v < windows.size(); ++v) {
    const auto loadings = loadings_of(windows[v].figures().saving_samples, figure);
    Deviate deviate;
    double common_squares = 0.0;
    for (std::size_t k = 0; k < unknown_count; ++k) {
      const Sharing sharing = sharing_of(static_cast<Unknown>(k));
      if (sharing == Sharing::window || loadings[k] == 0.0) {
        continue;
      }
      const auto [at, is_new] = columns.emplace(std::pair(k, group_of(windows, v, sharing)), columns.size());
      deviate.common[at->second] = loadings[k];
      common_squares += loadings[k] * loadings[k];
    }
    deviate.own = std::sqrt(std::max(0.0, 1.0 - common_squares));
    all.windows.push_back(std::move(deviate));
  }
  all.common_columns = columns.size();
  return all;
}

Deviates unshared(std::size_t window_count) {
  return {.windows = std::vector<Deviate>(window_count), .common_columns = 0};
}

/// Cumulative probability of each case by the rank of its deviate: the margin is then met exactly.
std::vector<double> probabilities_of(const std::vector<double>& deviates) {
  std::vector<std::size_t> order(deviates.size());
  std::iota(order.begin(), order.end(), 0U);
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return deviates[a] < deviates[b]; });
  std::vector<double> probabilities(deviates.size());
  for (std::size_t rank = 0; rank < order.size(); ++rank) {
    probabilities[order[rank]] = (static_cast<double>(rank) + 0.5) / static_cast<double>(order.size());
  }
  return probabilities;
}

}  // namespace

// Iman and Conover 1982 (from memory): margins tied by ranks of correlated normal deviates.
HouseCases house_cases(const std::vector<CountedWindow>& windows, FigureOf figure, Errors errors,
                       std::uint64_t seed) {
  const auto deviates =
      errors == Errors::none_shared ? unshared(windows.size()) : deviates_of(windows, figure);
  const std::size_t columns = deviates.common_columns + windows.size();
  auto points = numerics::unit_cube_samples(case_count, columns, seed);
  std::transform(points.begin(), points.end(), points.begin(), numerics::normal_quantile);
  HouseCases cases;
  for (std::size_t v = 0; v < windows.size(); ++v) {
    std::vector<double> z(case_count);
    for (std::size_t i = 0; i < case_count; ++i) {
      const double* point = points.data() + i * columns;
      z[i] = deviates.windows[v].own * point[deviates.common_columns + v];
      for (const auto& [column, loading] : deviates.windows[v].common) {
        z[i] += loading * point[column];
      }
    }
    const auto& samples = windows[v].figures().saving_samples;
    cases.push_back(
        numerics::weighted_quantiles((samples.*figure).values, samples.weights, probabilities_of(z)));
  }
  return cases;
}

std::vector<double> sums_over(const HouseCases& cases, const std::vector<std::size_t>& places) {
  std::vector<double> sums(case_count, 0.0);
  for (const std::size_t v : places) {
    std::transform(sums.begin(), sums.end(), cases[v].begin(), sums.begin(), std::plus<>());
  }
  return sums;
}

Spread own_spread(const CountedWindow& window, FigureOf figure) {
  const auto& samples = window.figures().saving_samples;
  return numerics::weighted_spread((samples.*figure).values, samples.weights);
}

}  // namespace dewgap
