#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>
#include <span>
#include <utility>

#include "dewgap/assessment/vent_cases_kernel.hpp"
#include "dewgap/assessment/vent_choice_kernel.hpp"
#include "dewgap/numerics/parallel.hpp"
#include "dewgap/numerics/resampling.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

constexpr std::size_t first_batch = 16;
constexpr std::size_t next_batch = 8;
constexpr double share_for_cases = 0.8;  // of the bound; the rest is for remedies and drying
constexpr std::size_t most_picks = 4'000'000;

std::uint64_t seed_of_picks(std::uint64_t seed) {
  return seed ^ 0x7069636b73ull;  // another stream than that of the draw
}

/// Runs picked cases; a case picked again only counts once more.
class CaseRunner {
 public:
  CaseRunner(const YearSetting& year, const VentCases& cases, HourBudget& budget, std::size_t most)
      : year_(&year), cases_(&cases), budget_(&budget), place_of_(cases.samples.size(), not_run) {
    runs_.years.reserve(most);
  }

  bool is_new(std::size_t pick) const { return place_of_[pick] == not_run; }

  /// Runs on all cores those of the picks that are new, while the hours last. add() then finds them done.
  void prepare(std::span<const std::size_t> picks, std::size_t hours) {
    std::vector<std::size_t> ahead;
    for (const std::size_t pick : picks) {
      const std::size_t cost = (ahead.size() + 1) * window_hours_a_sample(*year_);
      if (is_new(pick) && std::find(ahead.begin(), ahead.end(), pick) == ahead.end() &&
          budget_->spent() + cost <= hours) {
        ahead.push_back(pick);
      }
    }
    std::vector<SampleYear> years(ahead.size());
    numerics::for_each_index(
        ahead.size(), [&](std::size_t i) { years[i] = run_sample_year(*year_, cases_->samples[ahead[i]]); });
    ready_.clear();
    for (std::size_t i = 0; i < ahead.size(); ++i) {
      ready_.emplace(ahead[i], years[i]);
    }
  }

  void add(std::size_t pick) {
    if (!is_new(pick)) {
      count(place_of_[pick]);
      return;
    }
    const auto ready = ready_.find(pick);
    const auto result =
        ready != ready_.end() ? ready->second : run_sample_year(*year_, cases_->samples[pick]);
    budget_->spend(window_hours_a_sample(*year_));
    const bool settled = result.status == SolveStatus::converged;
    const std::size_t place = settled ? runs_.cases.size() : left_out;
    place_of_[pick] = place;
    if (settled) {
      runs_.cases.push_back(pick);
      runs_.years.push_back(result);
      runs_.counts.push_back(0.0);
    }
    count(place);
  }

  const VentRuns& runs() const { return runs_; }
  VentRuns take() && { return std::move(runs_); }

 private:
  static constexpr std::size_t left_out = static_cast<std::size_t>(-1);
  static constexpr std::size_t not_run = static_cast<std::size_t>(-2);

  void count(std::size_t place) {
    if (place == left_out) {
      ++runs_.picks_left_out;
    } else {
      runs_.counts[place] += 1.0;
    }
  }

  const YearSetting* year_;
  const VentCases* cases_;
  HourBudget* budget_;
  VentRuns runs_;
  std::map<std::size_t, SampleYear> ready_;  // of the batch at hand
  std::vector<std::size_t> place_of_;        // of each case among the runs
};

bool is_settled(const VentRuns& runs, const std::vector<VentOption>& options) {
  return !runs.years.empty() &&
         unclear_because(runs.years, runs.counts, options, choose(runs.years, runs.counts, options)).empty();
}

/// Whether a batch ends after so many picks, and how many the next one has.
bool ends_batch(std::size_t picks) {
  return picks >= first_batch && (picks - first_batch) % next_batch == 0;
}
std::size_t batch_from(std::size_t picks) {
  return picks == 0 ? first_batch : next_batch;
}

}  // namespace

CaseSpread case_spread(const std::vector<double>& values, const std::vector<double>& counts) {
  const auto spread = numerics::weighted_spread(values, counts);
  const auto [least, greatest] = std::minmax_element(values.begin(), values.end());
  return {.p10 = spread.p10, .p50 = spread.p50, .p90 = spread.p90, .least = *least, .greatest = *greatest};
}

std::size_t least_window_hours(const YearSetting& year) {
  const auto cases = static_cast<double>(least_picks * window_hours_a_sample(year));
  return static_cast<std::size_t>(std::ceil(cases / share_for_cases));
}

std::size_t VentRuns::picks() const {
  return static_cast<std::size_t>(std::llround(std::accumulate(counts.begin(), counts.end(), 0.0)));
}

void HourBudget::spend(std::size_t hours) {
  spent_ += hours;
  if (*progress_) {
    (*progress_)(spent_, std::max(spent_, most_));
  }
}

std::vector<VentOption> offered_options(const Survey& survey) {
  std::vector<VentOption> offered;
  std::copy_if(every_vent_option.begin(), every_vent_option.end(), std::back_inserter(offered),
               [&](VentOption option) { return is_offered(option, survey); });
  return offered;
}

VentRuns run_cases(const YearSetting& year, const VentCases& cases, const VentAdviceOptions& options,
                   HourBudget& budget) {
  const auto offered = offered_options(*year.setting->survey);
  const bool as_many_as_settle = options.samples == 0;
  const auto hours = static_cast<std::size_t>(share_for_cases * static_cast<double>(budget.most()));
  // Picks of one case again cost nothing, so more picks than the hours pay for may be made, but not without
  // end.
  const std::size_t affordable = hours / std::max<std::size_t>(1, window_hours_a_sample(year));
  const std::size_t most = std::min(most_picks, as_many_as_settle ? 4 * affordable : options.samples);
  const auto picks = numerics::resampled(cases.weights, most, seed_of_picks(options.seed));
  CaseRunner runner(year, cases, budget,
                    std::min(as_many_as_settle ? affordable : most, cases.samples.size()));
  for (std::size_t k = 0; k < picks.size(); ++k) {
    if (k == 0 || ends_batch(k)) {
      runner.prepare(std::span(picks).subspan(k, std::min(batch_from(k), picks.size() - k)),
                     as_many_as_settle ? hours : std::numeric_limits<std::size_t>::max());
    }
    if (as_many_as_settle && runner.is_new(picks[k]) &&
        budget.spent() + window_hours_a_sample(year) > hours) {
      break;
    }
    runner.add(picks[k]);
    if (as_many_as_settle && ends_batch(k + 1) && is_settled(runner.runs(), offered)) {
      break;
    }
  }
  return std::move(runner).take();
}

}  // namespace dewgap
