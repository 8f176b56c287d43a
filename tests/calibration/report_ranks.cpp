#include <algorithm>
#include <cmath>
#include <cstdio>

#include "calibration/report.hpp"

namespace dewgap::calibration {
namespace {

/// Claims of the windows that are settled at every stage.
std::vector<std::vector<Claims>> settled_throughout(const Judged& judged, Weighing weighing) {
  std::vector<std::vector<Claims>> found;
  for (const auto& window : claims_under(judged, weighing)) {
    if (std::all_of(window.begin(), window.end(),
                    [&](const Claims& claims) { return claims.effective >= judged.least_effective; })) {
      found.push_back(window);
    }
  }
  return found;
}

struct MeanOf {
  double mean = 0.0;
  double standard_error = 0.0;
};

template <class Figure>
MeanOf mean_of(const std::vector<std::vector<Claims>>& windows, Figure figure) {
  double sum = 0.0;
  double squares = 0.0;
  for (const auto& window : windows) {
    sum += figure(window);
    squares += figure(window) * figure(window);
  }
  const auto count = static_cast<double>(windows.size());
  const double mean = sum / count;
  return {mean, std::sqrt(std::max(0.0, squares / count - mean * mean) / count)};
}

void print_rank(const std::vector<std::vector<Claims>>& windows, Stage stage) {
  const auto at = static_cast<std::size_t>(stage);
  const auto place = mean_of(windows, [at](const auto& window) { return window[at].rank_of_best; });
  const auto moved =
      mean_of(windows, [at](const auto& window) { return window[at].rank_of_best - window[0].rank_of_best; });
  const auto any = mean_of(windows, [at](const auto& window) { return window[at].place_by_chance; });
  const auto first =
      mean_of(windows, [at](const auto& window) { return window[at].first_is_best ? 100.0 : 0.0; });
  const auto share =
      mean_of(windows, [at](const auto& window) { return 100.0 * window[at].best_share_of_best; });
  const auto more = mean_of(windows, [at](const auto& window) {
    return 100.0 * (window[at].best_share_of_best - window[0].best_share_of_best);
  });
  std::printf("  %-24s %8.3f %+8.3f +-%6.3f %10.3f %12.1f %12.1f %+8.2f +-%5.2f\n",
              std::string(name_of(stage)).c_str(), place.mean, moved.mean, moved.standard_error, any.mean,
              first.mean, share.mean, more.mean, more.standard_error);
}

}  // namespace

void print_ranks(const Judged& judged) {
  std::puts(
      "\nThe truly best options: their place by claimed best share (1 is first), how often the first one is");
  std::puts("truly best, and the best share claimed of them; changes against the prior in the same windows.");
  for (const auto weighing : all_weighings) {
    const auto windows = settled_throughout(judged, weighing);
    std::printf("%s: %zu windows that are settled at every stage\n",
                weighing == Weighing::stated ? "Stated likelihoods" : "Chances", windows.size());
    std::printf("  %-24s %8s %18s %10s %12s %12s %17s\n", "", "place", "change", "any order", "first, %",
                "share, %", "change, points");
    for (const auto stage : all_stages) {
      if (!windows.empty()) {
        print_rank(windows, stage);
      }
    }
  }
}

}  // namespace dewgap::calibration
