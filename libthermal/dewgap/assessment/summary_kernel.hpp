// From weighted sample figures to spreads and shares. Internal to assessment/.
#pragma once

#include <functional>
#include <vector>

#include "dewgap/assessment/evidence_kernel.hpp"
#include "dewgap/assessment/sample_run_kernel.hpp"

namespace dewgap {

inline constexpr double enough_share = 0.70;  ///< plausible cases that must be acceptable: our convention

/// Samples, what each gave, and how much each counts.
struct WeightedRuns {
  std::vector<UnknownValues> samples;
  std::vector<SampleFigures> figures;
  std::vector<double> weights;  ///< sum 1
  double frost_night_hours = 12.0;
  std::size_t left_out = 0;  ///< samples that did not converge
};

Spread spread_over(const WeightedRuns& runs, const std::function<double(const SampleFigures&)>& figure);
double share_over(const WeightedRuns& runs, const std::function<bool(const SampleFigures&)>& holds);

std::vector<VentOutcome> vent_outcomes(const WeightedRuns& runs);
SideBySide side_by_side(const Setting& setting, const WeightedRuns& runs, VentOption chosen);
std::vector<Influence> influences_of(const Beliefs& beliefs, const std::vector<EvidenceTerm>& evidence,
                                     const WeightedRuns& runs, VentOption chosen);
MoneySpread money_spread(const WeightedRuns& runs, VentOption chosen, const Survey& survey);
/// The same of heat saved in each case, with what each counts.
MoneySpread money_over(const std::vector<double>& heat_saved_kWh, const std::vector<double>& weights,
                       const MoneyTerms& terms);

/// Share of plausible cases in which the sheet loses heat with an option.
double losing_share(const WeightedRuns& runs, VentOption option, const Survey& survey);

/// Of the options that the steady conditions compare, the one most like an option: breaks at the bottom for
/// longer ones, sealed for all that are sealed to the room.
VentOption nearest_steady(VentOption option);
/// Of the nearest one among vent_options.
std::size_t index_of(VentOption option);
/// Heat that a sample saves with an option, kWh a year, at most the bill when one was given.
double heat_saved_kWh(const SampleFigures& figures, VentOption option, const Survey& survey);

}  // namespace dewgap
