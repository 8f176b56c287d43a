// What else could be done about the window, on the same physics and the same samples as the answer.
//
// Each rival is run through every sample that assess draws from the same options, so that differences are
// paired: 'saves more in 84 % of plausible cases' can be said. Heat against the old window as it is. Damp is
// read off the two steady conditions; where the answer ran a year of hours its figures are beside.
//
// Our conventions, no source: draught-stripping brings joints to a leakage drawn for each case from the prior
// of weather-stripped ones, never above what they are; curtains and shutters are shut for half of the day's
// heating (as assess has it), cover the frame too, stop no draught, and are shut when damp is asked; a
// curtain hangs 0.10 m from the glass; a shutter is 15 mm of softwood 0.06 m from it, that the room's air
// passes half as freely as a curtain.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "dewgap/assessment/assess.hpp"

namespace dewgap {

enum class RivalKind {
  do_nothing,
  repair_and_strip,
  lined_curtains,
  shutters,
  sheet,
  sheet_off_in_summer,
  sheet_and_strip
};
std::string_view name_of(RivalKind kind);

/// The user's own costs, 0 to 1e9; a rival without one has a yearly saving but no payback. The sheet's is in
/// the survey's money. The sheet with draught-stripping costs both.
struct RivalCosts {
  std::optional<double> repair_and_strip;
  std::optional<double> lined_curtains;
  std::optional<double> shutters;
};

/// Against the sheet, case by case. What two shares leave of the whole are ties.
struct AgainstSheet {
  Spread sheet_saves_more_kWh;          ///< sheet less rival
  double sheet_saves_more_share = 0.0;  ///< plausible cases
  double rival_saves_more_share = 0.0;
  double sheet_warmer_share = 0.0;  ///< of the face towards the room on a frost night
  double rival_warmer_share = 0.0;
  double sheet_drier_share = 0.0;  ///< larger margin at the coldest face on a frost night
  double rival_drier_share = 0.0;
};

struct Rival {
  RivalKind kind = RivalKind::do_nothing;
  std::string name;          ///< for people
  std::string sentence;      ///< one plain sentence: what it does
  std::string condition;     ///< what its figures assume; empty when nothing
  Spread heat_saved_kWh;     ///< a year; capped by the bill when given; all 0 for doing nothing
  Spread frost_room_face_C;  ///< face towards the room: pane, sheet or curtain
  Spread frost_pane_C;       ///< old glass, face away from outdoors
  Spread draught_m3_h;       ///< through the window in winter's mean, counted once
  /// Coldest face, its edge included, less the dew point of the air beside it (the gap's: potential).
  Spread month_margin_K;
  Spread frost_margin_K;
  double dry_month_share = 0.0;  ///< plausible cases whose coldest face stays dry
  double dry_frost_share = 0.0;
  std::string damp;  ///< one plain sentence
  std::optional<MoneySpread> money;
  std::optional<double> cost;  ///< the user's own, in the user's currency; none given: none is taken
  /// Cost over heat saved a year, currency per kWh a year; none without a cost, or when the 10th percentile
  /// of the saving is no saving.
  std::optional<Spread> cost_per_yearly_kWh;
  // Of the answer's year of hours, where it has them.
  std::optional<CaseSpread> misty_mornings;
  std::optional<double> acceptable_share;
  std::optional<AgainstSheet> against_sheet;  ///< none for the sheet itself
};

/// In the order of RivalKind; only those that this window can have (no stripping of a fixed light or of
/// joints that are painted shut or stripped already; no curtains where they are drawn already; the sheet off
/// in summer or with stripping not beside a sheet that is that). Empty while a safety question is open. The
/// sheet is vented as the steady conditions choose. Throws as assess does.
std::vector<Rival> rivals(const Survey& survey, const AssessOptions& options, const RivalCosts& costs = {});

/// The same beside an answer that was made with the same options: the sheet is vented as there, and its heat
/// and year are that answer's.
std::vector<Rival> rivals(const Survey& survey, const AssessOptions& options, const Assessment& answer,
                          const RivalCosts& costs = {});

}  // namespace dewgap
