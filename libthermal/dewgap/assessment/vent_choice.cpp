#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "dewgap/assessment/vent_choice_kernel.hpp"
#include "dewgap/assessment/verdict_kernel.hpp"
#include "dewgap/numerics/resampling.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

/// Holes to outdoors are never a default: they are weighed only where nothing else is good enough.
bool is_weighed(VentOption option, const std::vector<VentOption>& options,
                const std::vector<double>& acceptable_share) {
  if (option != VentOption::weep_to_outdoors) {
    return true;
  }
  for (std::size_t i = 0; i < options.size(); ++i) {
    if (options[i] != VentOption::weep_to_outdoors && acceptable_share[i] >= enough_share) {
      return false;
    }
  }
  return true;
}

/// The first option, simplest first, that does not tie with the choice.
std::size_t simplest_rival(const std::vector<VentOption>& options, const VentChoice& choice) {
  for (std::size_t i = 0; i < options.size(); ++i) {
    const bool is_tied = std::find(choice.tied.begin(), choice.tied.end(), i) != choice.tied.end();
    if (i != choice.place && !is_tied && is_weighed(options[i], options, choice.acceptable_share)) {
      return i;
    }
  }
  return options.size();
}

/// A share is clear of a line when its 90 % interval, of the effective number of trials, leaves the line out.
bool is_clear(double hits, double trials, double line) {
  const auto interval = numerics::share_interval_90(std::min(hits, trials), trials);
  return interval.low > line || interval.high < line;
}

/// Weight of the cases in which just one of two options is acceptable, for each.
struct Discordant {
  double for_choice = 0.0;
  double for_rival = 0.0;
};

Discordant discordant(const std::vector<SampleYear>& years, const std::vector<double>& counts,
                      VentOption choice, VentOption rival) {
  Discordant found;
  for (std::size_t i = 0; i < years.size(); ++i) {
    const bool choice_is = is_acceptable(year_of(years[i], choice));
    const bool rival_is = is_acceptable(year_of(years[i], rival));
    found.for_choice += choice_is && !rival_is ? counts[i] : 0.0;
    found.for_rival += rival_is && !choice_is ? counts[i] : 0.0;
  }
  return found;
}

}  // namespace

bool is_acceptable(const OptionYear& year) {
  return year.band <= YearBand::harmless_mist;
}

const OptionYear& year_of(const SampleYear& sample, VentOption option) {
  return sample.options.at(place_of(option));
}

std::vector<bool> winners(const SampleYear& sample, const std::vector<VentOption>& options) {
  auto best_band = YearBand::damages;
  for (const auto option : options) {
    best_band = std::min(best_band, year_of(sample, option).band);
  }
  double least_heat_kWh = std::numeric_limits<double>::max();
  for (const auto option : options) {
    const auto& year = year_of(sample, option);
    if (year.band == best_band) {
      least_heat_kWh = std::min(least_heat_kWh, static_cast<double>(year.heat_kWh));
    }
  }
  const double tie_kWh = std::max(heat_tie_kWh, heat_tie_share * std::abs(least_heat_kWh));
  std::vector<bool> wins;
  for (const auto option : options) {
    const auto& year = year_of(sample, option);
    wins.push_back(year.band == best_band && static_cast<double>(year.heat_kWh) <= least_heat_kWh + tie_kWh);
  }
  return wins;
}

VentChoice choose(const std::vector<SampleYear>& years, const std::vector<double>& weights,
                  const std::vector<VentOption>& options) {
  VentChoice choice;
  choice.acceptable_share.assign(options.size(), 0.0);
  choice.best_share.assign(options.size(), 0.0);
  const double sum = std::accumulate(weights.begin(), weights.end(), 0.0);
  for (std::size_t i = 0; i < years.size(); ++i) {
    const auto wins = winners(years[i], options);
    for (std::size_t j = 0; j < options.size(); ++j) {
      choice.acceptable_share[j] += is_acceptable(year_of(years[i], options[j])) ? weights[i] / sum : 0.0;
      choice.best_share[j] += wins[j] ? weights[i] / sum : 0.0;
    }
  }
  constexpr double rounding = 1e-12;
  const auto& share = choice.acceptable_share;
  double most = 0.0;
  for (std::size_t j = 0; j < options.size(); ++j) {
    most = is_weighed(options[j], options, share) ? std::max(most, share[j]) : most;
  }
  for (std::size_t j = options.size(); j-- > 0;) {
    if (share[j] >= most - tie_share - rounding && is_weighed(options[j], options, share)) {
      choice.place = j;
      choice.tied.insert(choice.tied.begin(), j);
    }
  }
  choice.tied.erase(choice.tied.begin());  // the choice itself, the simplest
  choice.choice = options[choice.place];
  return choice;
}

std::string unclear_because(const std::vector<SampleYear>& years, const std::vector<double>& counts,
                            const std::vector<VentOption>& options, const VentChoice& choice) {
  const double effective = numerics::effective_sample_size(counts);
  const std::string cases = " for " + whole(effective) + " cases";
  if (!is_clear(choice.share() * effective, effective, enough_share)) {
    return share_of_cases(choice.share()) + " is too near the line of " + whole(100.0 * enough_share) + " %" +
           cases;
  }
  const std::size_t rival = simplest_rival(options, choice);
  if (rival == options.size()) {
    return {};
  }
  const auto apart = discordant(years, counts, choice.choice, options[rival]);
  const double scale = effective / std::accumulate(counts.begin(), counts.end(), 0.0);
  const double trials = scale * (apart.for_choice + apart.for_rival);
  if (trials > 0.0 && is_clear(scale * apart.for_choice, trials, 0.5)) {
    return {};
  }
  return std::string(name_of(options[rival])) + " comes too near" + cases;
}

}  // namespace dewgap
