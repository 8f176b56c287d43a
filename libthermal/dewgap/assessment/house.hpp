// Several windows of one house: totals whose errors do not average out, what to do first, and how much of the
// house's air the sheets would stop.
//
// Each window is assessed by itself, as if the others stayed as they are. What is not known falls in two:
// unknowns of house, climate and method are the same for all windows (or for those of one room or one side of
// the house), those of a window are its own. A total over windows v takes each window's own weighted cases as
// margins, tied by a Gaussian copula after Iman and Conover (1982, from memory):
//   rho_vw = sum over shared unknowns k of a_kv a_kw,   a_kv = 2 sin(pi r_kv / 6) (Pearson),
// with r_kv the signed rank correlation of window v's figure with unknown k, freed of what chance alone gives
// so many cases, and all of a window's a together scaled to sum of squares 1: what ranks do not explain is
// taken as shared in the same proportion as the rest. Beside it stand the two ends between which it lies.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "dewgap/assessment/assess.hpp"
#include "dewgap/climate/hourly_year.hpp"

namespace dewgap {

struct HouseOptions {
  AssessOptions assess;               ///< of each window; its seed is also that of the totals
  std::optional<HourlyYear> weather;  ///< nullopt: synthesised from the place's normals
  /// The user's own: how much of the air that comes through the old windows the house can do without, m3/h,
  /// 0 to 10000.
  std::optional<double> ventilation_limit_m3_h;
  void validate() const;
};

struct HouseWindow {
  std::size_t number = 0;  ///< its place among the surveys, from 1
  std::string name;
  Assessment assessment;
  bool counted = false;  ///< in the totals: FIT or FIT AFTER
};

/// A sum over windows.
struct HouseTotal {
  Spread likely;        ///< what is shared pulls together, what is a window's own does not
  Spread all_together;  ///< all errors pull the same way: sum of the windows' percentiles
  Spread none_shared;   ///< every error is a window's own
};

/// Over the windows that count.
struct HouseTotals {
  HouseTotal heat_saved_kWh;  ///< a year, at most the bill when one was given
  std::optional<HouseTotal> money_saved_per_year;
  std::optional<HouseTotal> carbon_kg_per_year;
  HouseTotal draught_cut_m3_h;         ///< winter mean of air that no longer comes in: what the house loses
  HouseTotal ventilation_needed_m3_h;  ///< of that, what must come in some other way
  std::optional<double> bill_kWh;      ///< that capped the saving
  double capped_share = 0.0;           ///< plausible cases of the house in which it did
};

/// Misty mornings a year, from a window's year of hours. Of fewer cases than least_cases_for_percentiles tell
/// the least and greatest.
struct MistyMornings {
  CaseSpread now;
  CaseSpread with_sheet;
  CaseSpread spared;  ///< percentile by percentile, since what makes it misty now does so with a sheet too
  std::size_t cases = 0;  ///< different ones that were run
};

/// A window in an order of doing.
struct OrderStep {
  std::size_t number = 0;                       ///< of the window
  std::size_t place = 0;                        ///< from 1; tied windows share a place
  Spread saving;                                ///< order for the money alone: what it goes by
  std::optional<MistyMornings> misty_mornings;  ///< order for the damp alone; it goes by those spared
  bool peoples_room = false;    ///< somebody sleeps, sits or cooks there, or its use is not known
  Spread air_lost_so_far_m3_h;  ///< this window and those before it: draught cut
};

enum class OrderBasis {
  money_saved_per_cost,       ///< a year, of the cost given
  heat_saved_per_sheet_area,  ///< kWh a year and m2 of sheet; of the opening where no sheet was set out
  misty_mornings_spared,      ///< a year, of the gap's or old pane's, by percentile; people's rooms first
};
std::string_view name_of(OrderBasis basis);

/// Tied: ranges overlap by more than this share of the shorter one (our convention). Ranges are from the 10th
/// to the 90th percentile; of few cases from the least to the greatest.
inline constexpr double tie_overlap_share = 0.5;

struct HouseOrder {
  OrderBasis basis{};
  std::string basis_because;     ///< where it is not by cost: for which windows none was given; else empty
  std::vector<OrderStep> steps;  ///< of windows that count
  std::string left_out_because;  ///< which of them it leaves out and why, a sentence; empty: none
  /// Window at which air lost so far passes the user's limit in the middle case, and in the 90th percentile.
  std::optional<std::size_t> passes_limit_at;
  std::optional<std::size_t> may_pass_limit_at;
};

struct HouseAnswer {
  std::vector<HouseWindow> windows;   ///< HOLD first, then FIT and FIT AFTER, then LEAVE; else as given
  std::optional<HouseTotals> totals;  ///< absent when no window counts
  HouseOrder for_money;
  HouseOrder for_damp;
  std::optional<double> ventilation_limit_m3_h;
  std::vector<std::string> warnings;  ///< plain sentences; never empty for two windows or more
  std::uint64_t seed = 0;
};

/// Windows of one house: 1 to 60. Place, building facts but floor and outlook, and the prices of the money
/// terms must be the same for all, else InvalidInput. building.bill_kWh caps the total, not each window.
/// Throws as assess_in_weather. The same arguments give the same answer.
HouseAnswer assess_house(const std::vector<Survey>& windows, const HouseOptions& options = {},
                         const Progress& progress = {});

/// Whose an unknown is, for totals.
enum class Sharing {
  house,   ///< the same for all windows: house, climate, or a formula's error
  room,    ///< for windows of rooms that were described alike
  facade,  ///< for windows that look the same way
  window,  ///< each window's own
};
Sharing sharing_of(Unknown unknown);

}  // namespace dewgap
