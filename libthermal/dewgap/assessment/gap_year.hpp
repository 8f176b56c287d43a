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

inline constexpr std::size_t plausible_case_count = 100;  ///< at most; of these, those that differ

struct GapYearOptions {
  std::size_t prior_samples =
      4096;                ///< drawn and weighted by the evidence, 64 to 1e6; grown 16 times at most
  std::uint64_t seed = 1;  ///< of the samples
  /// One of the cases that stand at the middles of plausible_case_count equal parts of the weight; a case
  /// that stands for several parts counts once, so that all differ. From 1 to GapYearSummary::case_count, in
  /// the order of the sealed gap's margin in the coldest month's means (coldest face over the gap's potential
  /// dew point, steady), the smallest first: the order of the year's wet hours may be another. None: the
  /// middle case.
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
  HourState state;                     ///< at the hour's end; flows and heat are its means
  std::optional<double> timber_kg_kg;  ///< of the bottom rail; nothing where no timber faces the gap
  bool timber_is_full = false;         ///< at the model's cap of 1.2 kg/kg, beyond which it knows nothing
  double wind_m_s = 0.0;               ///< at the station, as it was used
  double wind_angle_deg = 0.0;      ///< from the window's normal: 0 blows onto it, 180 from behind the house
  double sun_on_window_W_m2 = 0.0;  ///< on its plane, past what stands opposite
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
  std::size_t case_count = 0;  ///< plausible cases that differ, at most plausible_case_count
  double case_weight = 0.0;    ///< share of the weight that the case asked for stands for; 0: the middle case
  bool cases_in_order = true;  ///< false: so few cases fit what was seen that they were not put in order
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
/// from the place's normals. O(hours); memory that of the weather. `before_hours` is called once before the
/// first hour with what is known of the summary then: the case, its values and the weather's source. A
/// plausible case beyond those that differ throws InvalidInput for "plausible_case".
GapYearSummary gap_year(const Survey& survey, VentOption option, const std::optional<HourlyYear>& weather,
                        const GapYearOptions& options,
                        const std::function<void(const GapHourRow&)>& each_hour,
                        const std::function<void(const GapYearSummary&)>& before_hours = {});

}  // namespace dewgap
