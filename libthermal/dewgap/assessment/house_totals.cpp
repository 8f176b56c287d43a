#include <algorithm>
#include <numeric>

#include "dewgap/assessment/house_totals_kernel.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

Spread spread_of_alike(const std::vector<double>& values) {
  return numerics::weighted_spread(values, std::vector<double>(values.size(), 1.0));
}

std::vector<std::size_t> every_place(std::size_t count) {
  std::vector<std::size_t> places(count);
  std::iota(places.begin(), places.end(), 0U);
  return places;
}

Spread with_each(const Spread& spread, const std::function<double(double)>& change) {
  return {change(spread.p10), change(spread.p50), change(spread.p90)};
}

HouseTotal with_each(const HouseTotal& total, const std::function<double(double)>& change) {
  return {.likely = with_each(total.likely, change),
          .all_together = with_each(total.all_together, change),
          .none_shared = with_each(total.none_shared, change)};
}

/// Of one window there is nothing to add: its own spread.
HouseTotal total_of(const std::vector<CountedWindow>& windows, FigureOf figure, std::uint64_t seed) {
  Spread together;
  for (const auto& window : windows) {
    const auto own = own_spread(window, figure);
    together = {together.p10 + own.p10, together.p50 + own.p50, together.p90 + own.p90};
  }
  if (windows.size() == 1) {
    return {.likely = together, .all_together = together, .none_shared = together};
  }
  const auto spread = [&](Errors errors) {
    return spread_of_alike(
        sums_over(house_cases(windows, figure, errors, seed), every_place(windows.size())));
  };
  return {.likely = spread(Errors::shared_ones_pull_together),
          .all_together = together,
          .none_shared = spread(Errors::none_shared)};
}

/// Share of the house's plausible cases that would save more than the bill.
double share_above(const std::vector<CountedWindow>& windows, double bill_kWh, std::uint64_t seed) {
  std::vector<double> sums;
  std::vector<double> weights;
  if (windows.size() == 1) {
    const auto& samples = windows.front().figures().saving_samples;
    sums = samples.heat_saved_kWh.values;
    weights = samples.weights;
  } else {
    const auto cases =
        house_cases(windows, &SavingSamples::heat_saved_kWh, Errors::shared_ones_pull_together, seed);
    sums = sums_over(cases, every_place(windows.size()));
    weights.assign(sums.size(), 1.0 / static_cast<double>(sums.size()));
  }
  double share = 0.0;
  for (std::size_t i = 0; i < sums.size(); ++i) {
    share += sums[i] > bill_kWh ? weights[i] : 0.0;
  }
  return share;
}

/// Money is in proportion to heat, so percentiles stay percentiles.
void add_money(const MoneyTerms& terms, HouseTotals& totals) {
  totals.money_saved_per_year = with_each(totals.heat_saved_kWh, [&](double heat_kWh) {
    return money_from_heat(heat_kWh, terms).saved_per_year;
  });
  if (terms.carbon_kg_per_kWh) {
    totals.carbon_kg_per_year = with_each(totals.heat_saved_kWh, [&](double heat_kWh) {
      return *money_from_heat(heat_kWh, terms).carbon_kg_per_year;
    });
  }
}

}  // namespace

HouseTotals totals_over(const std::vector<CountedWindow>& windows, std::uint64_t seed) {
  HouseTotals totals;
  totals.heat_saved_kWh = total_of(windows, &SavingSamples::heat_saved_kWh, seed);
  totals.draught_cut_m3_h = total_of(windows, &SavingSamples::draught_cut_m3_h, seed);
  totals.ventilation_needed_m3_h = total_of(windows, &SavingSamples::ventilation_needed_m3_h, seed);
  const auto& survey = *windows.front().survey;
  totals.bill_kWh = survey.building.bill_kWh;
  if (totals.bill_kWh) {
    const double bill_kWh = *totals.bill_kWh;
    totals.capped_share = share_above(windows, bill_kWh, seed);
    totals.heat_saved_kWh =
        with_each(totals.heat_saved_kWh, [bill_kWh](double kWh) { return std::min(kWh, bill_kWh); });
  }
  if (survey.money) {
    add_money(*survey.money, totals);
  }
  return totals;
}

}  // namespace dewgap
