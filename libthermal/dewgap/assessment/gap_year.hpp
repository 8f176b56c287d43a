// One plausible case through a year of hours under one vent option, every hour handed out: for tables and
// pictures.
//
// The middle case has each unknown at its median, weighted by all that was observed. It is no case that was
// drawn, and its year is not the median year: what several unknowns do together is in vent_advice alone. The
// year starts when the sheet is fitted in autumn, dry (1 September north of the equator, 1 March south of
// it).
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "dewgap/assessment/vent_advice.hpp"
#include "dewgap/climate/hourly_year.hpp"
#include "dewgap/gap/hours.hpp"

namespace dewgap {

inline constexpr std::size_t plausible_case_count = 100;

struct GapYearOptions {
  std::size_t prior_samples =
      4096;                ///< drawn and weighted by the evidence, 64 to 1e6; grown 16 times at most
  std::uint64_t seed = 1;  ///< of the samples
  /// 1 to plausible_case_count: one of so many cases that each stand for as much of the weight, wettest first
  /// (as vent_advice sorts them). None: the middle case.
  std::optional<std::size_t> plausible_case;
  std::vector<WinterReading> readings;     ///< that weight the samples too
  VentOption fitted = VentOption::sealed;  ///< what hung there when they were taken
  void validate() const;
};

struct GapHourRow {
  std::size_t hour_of_year = 0;  ///< from 1 January by the year's clock
  std::size_t month = 0;         ///< 0 to 11
  std::size_t day_of_month = 1;
  bool sheet_hangs = true;  ///< false: taken off for the summer; the state is then the old window's
  HourConditions conditions;
  HourState state;  ///< at the hour's end; flows and heat are its means
  /// Part of the hour with over 1 g/m2 of water or frost on a face of the gap, 0 to 1; to the hour's end, or
  /// until it has dried, the film's mass goes straight.
  double wet_share = 0.0;
  bool misty_at_8 = false;  ///< such a film when the hour ends at 8 o'clock
};

/// What was taken for one unknown, in its own unit.
struct CaseValue {
  Unknown unknown{};
  std::string label;
  double value = 0.0;
  std::string unit;
};

struct GapYearSummary {
  VentOption option = VentOption::sealed;
  std::vector<CaseValue> values;
  std::size_t hours = 0;
  std::size_t unsettled_hours = 0;  ///< whose balance did not close; they keep the state before
  double glass_m2 = 0.0;            ///< behind the sheet
  // The cold half year, October to March north of the equator, April to September south of it, while the
  // sheet hangs.
  double cold_from_room_m3_s = 0.0;  ///< mean air into the gap
  double cold_from_outdoors_m3_s = 0.0;
  double inwards_share =
      0.0;  ///< hours with a net flow to the room of at least half of what enters: our convention
  double outwards_share = 0.0;  ///< the same to outdoors; the rest of the hours has no clear way
  double utc_offset_h = 0.0;    ///< of the year's clock
  std::string weather_source;
  ModelledColumns modelled;
  std::size_t prior_samples = 0;
  double effective_samples = 0.0;
  std::uint64_t seed = 0;
};

/// Throws InvalidInput for an invalid survey or year and for an option that cannot be offered for this
/// window. Safety gates are not asked: assess does. Weather: an hourly year, or (default) one synthesised
/// from the place's normals. O(hours); memory that of the weather.
GapYearSummary gap_year(const Survey& survey, VentOption option, const std::optional<HourlyYear>& weather,
                        const GapYearOptions& options,
                        const std::function<void(const GapHourRow&)>& each_hour);

}  // namespace dewgap
