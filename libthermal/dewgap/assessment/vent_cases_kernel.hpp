// Plausible cases for the year of hours: drawn, weighted, sorted, picked and run. Internal to assessment/.
#pragma once

#include <vector>

#include "dewgap/assessment/evidence_kernel.hpp"
#include "dewgap/assessment/vent_advice.hpp"
#include "dewgap/assessment/year_run_kernel.hpp"

namespace dewgap {

inline constexpr double least_effective_cases = 50.0;  ///< below it no shares are shown: our convention

/// Cases with what each counts; those without weight are left out. Wettest first: by the margin of the sealed
/// gap in the coldest month's means. The evidence's log-likelihoods are in the same order.
struct VentCases {
  Beliefs beliefs;
  std::vector<UnknownValues> samples;
  std::vector<EvidenceTerm> evidence;
  std::vector<double> weights;  ///< sum 1
  double effective = 0.0;       ///< of the whole draw
  std::size_t drawn = 0;
};
/// Draws until the effective number is at least `least_effective_cases`, at most 16 times the prior samples
/// asked for. Cases are sorted only when there are enough.
VentCases draw_cases(const Setting& setting, const std::vector<WinterReading>& readings,
                     const VentAdviceOptions& options);

/// Each unknown at its weighted median.
UnknownValues middle_case(const VentCases& cases);

/// Vapour excess of the room with an option over that with the old window as it is, heating season's means:
/// sealing stops draught that also carried moisture away.
double excess_factor_of(const Setting& setting, const UnknownValues& sample, VentOption option);

/// Cases that were run through the year; each counts as often as it was picked.
struct VentRuns {
  std::vector<std::size_t> cases;  ///< index into VentCases
  std::vector<SampleYear> years;
  std::vector<double> counts;
  std::size_t picks_left_out = 0;  ///< picks of cases that did not settle
  std::size_t picks() const;
};

/// Percentiles, least and greatest of cases that count differently.
CaseSpread case_spread(const std::vector<double>& values, const std::vector<double>& counts);

/// Window-hours spent, told to whoever watches.
class HourBudget {
 public:
  HourBudget(std::size_t most, const Progress& progress) : most_(most), progress_(&progress) {}
  void spend(std::size_t hours);
  std::size_t spent() const { return spent_; }
  std::size_t left() const { return spent_ < most_ ? most_ - spent_ : 0; }
  std::size_t most() const { return most_; }

 private:
  std::size_t most_ = 0;
  std::size_t spent_ = 0;
  const Progress* progress_ = nullptr;
};

/// Fewer cases than that are no answer.
inline constexpr std::size_t least_picks = 8;
/// The smallest bound on window-hours with which run_cases makes so many picks.
std::size_t least_window_hours(const YearSetting& year);

/// Options that can be offered for a survey, simplest first.
std::vector<VentOption> offered_options(const Survey& survey);

/// Picks cases and runs them, batch by batch, until the choice is settled, the options' number of samples is
/// reached, or four fifths of the bound are spent.
VentRuns run_cases(const YearSetting& year, const VentCases& cases, const VentAdviceOptions& options,
                   HourBudget& budget);

}  // namespace dewgap
