// The verdict from the outcomes, and its words. Internal to assessment/.
#pragma once

#include <string>
#include <vector>

#include "dewgap/assessment/mend_first.hpp"
#include "dewgap/assessment/summary_kernel.hpp"

namespace dewgap {

// Our convention: what counts as a tie.
inline constexpr double tie_share = 0.05;  ///< options closer than this share the win; the simplest is taken

/// Airing that a household can carry out, m3/h more: a small fan or trickle vents. Our convention, no source.
inline constexpr double realistic_extra_airflow_m3_h = 60.0;

/// Less room humidity: what it would take and what it would do.
struct HumidityRemedy {
  double excess_scale = 1.0;
  double extra_airflow_m3_h = 0.0;
  double acceptable_share = 0.0;
};

/// Why a window is left alone.
enum class LeaveCause { none, runs_wet, saves_nothing, never_pays };

struct Verdict {
  Headline headline = Headline::leave;
  LeaveCause cause = LeaveCause::none;
  VentOption vent = VentOption::sealed;
  std::string because;
  std::vector<std::string> after;
  std::vector<std::string> remedies;
};

VentOption choose_vent(const std::vector<VentOutcome>& outcomes);

/// Airing that is realistic in a dwelling, tried from small to large until enough cases are acceptable.
std::vector<HumidityRemedy> humidity_remedies(const Setting& setting, const WeightedRuns& runs,
                                              VentOption vent);

/// Looks that nobody has taken and that could bring something to mend first.
std::vector<std::string> looks_before_fitting(const Survey& survey);

Verdict decide(const Setting& setting, const WeightedRuns& runs, const std::vector<VentOutcome>& outcomes,
               const std::optional<MoneySpread>& money);

/// The verdict of a year of hours that has shares to show. `runs` are those of steady_runs_for.
Verdict decide_by_year(const Setting& setting, const WeightedRuns& runs, const VentAdvice& year,
                       const std::optional<MoneySpread>& money);
/// The steady runs with the heat that the year's choice costs over the nearest steady option put to the
/// glass.
WeightedRuns steady_runs_for(const VentAdvice& year, const WeightedRuns& runs);
/// The year's figures of the chosen option.
const OptionAdvice& chosen_option(const VentAdvice& year);
/// Which way the air goes through the year, why that decides the tape, and ties.
std::string vent_reason(const VentAdvice& year);

// Parts of a verdict that both ways of deciding share.
/// LEAVE, when the sheet loses heat or never pays back.
std::optional<Verdict> leave_for_heat_or_money(const Survey& survey, const WeightedRuns& runs,
                                               VentOption vent, const std::optional<MoneySpread>& money);
/// FIT, or FIT AFTER what has to be mended first; no words yet.
Verdict fit_after_mending(const Survey& survey, const WeightedRuns& runs, VentOption vent);
/// " It loses heat in 12 %. It may never pay back.", or nothing.
std::string heat_and_money_clauses(const Survey& survey, const WeightedRuns& runs, VentOption vent,
                                   const std::optional<MoneySpread>& money);

/// Which way the air goes (most cases of the steady check), and why that decides the tape.
std::string vent_reason(const VentOutcome& chosen);
std::string vent_reason(VentOption option, AirWay way);
/// What would change the verdict.
std::string flip_sentence(const Verdict& verdict, const SideBySide& side);

/// "84 %"; "over 99 %" and "under 1 %" at the ends, never a certainty.
std::string percent(double share);
/// "84 % of plausible cases", the same.
std::string share_of_cases(double share);
/// Rounded to a whole number, as text.
std::string whole(double value);
/// Rounded to a tenth, as text, without ".0"; of a number that is not negative.
std::string tenths(double value);

}  // namespace dewgap
