#include "dewgap/assessment/summary_kernel.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

constexpr double payback_shown_up_to_share =
    0.1;  // over a tenth that never pays back: no payback range is honest

using Figure = std::optional<double> (*)(const MoneyResult&);

/// Spread over the samples for which the figure exists; absent when it exists for none.
std::optional<Spread> spread_where_present(const std::vector<MoneyResult>& results,
                                           const std::vector<double>& weights, Figure figure) {
  std::vector<double> values;
  std::vector<double> present_weights;
  for (std::size_t i = 0; i < results.size(); ++i) {
    if (const auto value = figure(results[i])) {
      values.push_back(*value);
      present_weights.push_back(weights[i]);
    }
  }
  return values.empty() ? std::nullopt : std::optional(numerics::weighted_spread(values, present_weights));
}

}  // namespace

MoneySpread money_over(const std::vector<double>& heat_saved_kWh, const std::vector<double>& weights,
                       const MoneyTerms& terms) {
  std::vector<MoneyResult> results;
  double never = 0.0;
  for (std::size_t i = 0; i < heat_saved_kWh.size(); ++i) {
    results.push_back(money_from_heat(heat_saved_kWh[i], terms));
    never += results.back().never_pays_back ? weights[i] : 0.0;
  }
  MoneySpread money;
  money.never_pays_back_share = never;
  money.saved_per_year = *spread_where_present(
      results, weights, [](const MoneyResult& m) { return std::optional(m.saved_per_year); });
  money.carbon_kg_per_year =
      spread_where_present(results, weights, [](const MoneyResult& m) { return m.carbon_kg_per_year; });
  money.net_present_value =
      spread_where_present(results, weights, [](const MoneyResult& m) { return m.net_present_value; });
  if (never <= payback_shown_up_to_share) {
    money.payback_years =
        spread_where_present(results, weights, [](const MoneyResult& m) { return m.payback_years; });
  }
  return money;
}

MoneySpread money_spread(const WeightedRuns& runs, VentOption chosen, const Survey& survey) {
  std::vector<double> heat_kWh;
  for (const auto& figures : runs.figures) {
    heat_kWh.push_back(heat_saved_kWh(figures, chosen, survey));
  }
  return money_over(heat_kWh, runs.weights, *survey.money);
}

}  // namespace dewgap
