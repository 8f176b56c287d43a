#include <algorithm>
#include <cmath>
#include <numeric>

#include "dewgap/assessment/vent_remedies_kernel.hpp"

namespace dewgap {
namespace {

// A gap found wet: our convention.
constexpr double wet_pool_g_m2 = 100.0;
constexpr double wet_timber_kg_kg = 0.24;
constexpr std::size_t most_cases_dried = 16;
constexpr double undried_up_to_share = 0.1;  // over a tenth that never dries: no range is honest

/// Where in the year's columns the first of January lies, the first of July south of the equator.
std::size_t midwinter_hour(const YearSetting& year) {
  constexpr std::size_t first_of_july = std::size_t{181} * 24;
  const std::size_t wanted = year.setting->place.latitude_deg >= 0.0 ? 0 : first_of_july;
  const auto found = std::find(year.hour_of_year.begin(), year.hour_of_year.end(), wanted);
  return found == year.hour_of_year.end()
             ? 0
             : static_cast<std::size_t>(std::distance(year.hour_of_year.begin(), found));
}

/// Days of each option of one case; hours are spent as they are run.
std::vector<std::optional<double>> days_of_case(const YearSetting& year, const UnknownValues& sample,
                                                const std::vector<VentOption>& options, HourBudget& budget) {
  std::vector<std::optional<double>> days;
  for (const auto option : options) {
    days.push_back(
        days_until_dry(year, sample, option, wet_pool_g_m2, wet_timber_kg_kg, midwinter_hour(year)));
    const double hours = days.back() ? 24.0 * *days.back() : static_cast<double>(year.outdoor_C.size());
    budget.spend(static_cast<std::size_t>(std::llround(hours)));
  }
  return days;
}

struct Dried {
  std::vector<double> days;
  std::vector<double> counts;
  double undried = 0.0;

  Drying drying() const {
    const double sum = std::accumulate(counts.begin(), counts.end(), undried);
    if (sum == 0.0) {
      return {};
    }
    Drying drying{.days = {}, .cases = 0, .not_in_a_year_share = undried / sum};
    if (undried <= undried_up_to_share * sum) {
      drying.days = case_spread(days, counts);
      drying.cases = days.size();
    }
    return drying;
  }
};

}  // namespace

std::vector<Drying> drying_of(const YearSetting& year, const VentCases& cases, const VentRuns& runs,
                              const std::vector<VentOption>& options, HourBudget& budget) {
  const std::size_t most_of_a_case = options.size() * year.outdoor_C.size();
  std::vector<Dried> dried(options.size());
  for (std::size_t i = 0; i < std::min(most_cases_dried, runs.cases.size()); ++i) {
    if (budget.left() < most_of_a_case) {
      break;
    }
    const auto days = days_of_case(year, cases.samples[runs.cases[i]], options, budget);
    for (std::size_t j = 0; j < options.size(); ++j) {
      if (days[j]) {
        dried[j].days.push_back(*days[j]);
        dried[j].counts.push_back(runs.counts[i]);
      } else {
        dried[j].undried += runs.counts[i];
      }
    }
  }
  std::vector<Drying> drying;
  std::transform(dried.begin(), dried.end(), std::back_inserter(drying),
                 [](const Dried& option) { return option.drying(); });
  return drying;
}

}  // namespace dewgap
