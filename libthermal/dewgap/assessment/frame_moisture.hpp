// Moisture of the timber beside the glass at the bottom rail through a year, without and with the sheet, as a
// paired difference.
//
// Without the sheet the wood faces the room's air and is as cold as the pane's edge; water that runs down the
// pane does not soak into it (people wipe it), which judges the sheet the more strictly. With the sheet it
// faces the gap and takes up what pools there. The outermost millimetres only (Unknown::timber_depth); rain
// is left out. Both start alike, in the month in which sheets go up. Safety gates are not asked: assess does.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>

#include "dewgap/assessment/survey.hpp"
#include "dewgap/assessment/vent_advice.hpp"
#include "dewgap/climate/hourly_year.hpp"
#include "dewgap/moisture/timber.hpp"

namespace dewgap {

struct FrameMoistureOptions {
  VentOption option = VentOption::sealed;
  std::size_t samples = 16;  ///< picked by weight beside the middle case, 0 (no ranges) to 4096
  std::uint64_t seed = 1;
  void validate() const;
};

/// One case's year. Moisture kg water per kg dry wood.
struct TimberYear {
  std::array<double, 12> month_mean_kg_kg{};  ///< January first
  double start_kg_kg = 0.0;
  double peak_kg_kg = 0.0;
  double hours_above_caution = 0.0;  ///< above timber_caution_kg_kg
  double longest_run_h = 0.0;        ///< of them on end
};

struct FrameMoisture {
  VentOption option = VentOption::sealed;
  double threshold_kg_kg = timber_caution_kg_kg;  ///< 20 %: above it wood can decay
  // The middle case: each unknown at its weighted median.
  TimberYear without;
  TimberYear with;
  std::array<double, 12> month_difference_kg_kg{};  ///< with less without
  double peak_difference_kg_kg = 0.0;
  double hours_above_difference = 0.0;
  /// Over plausible cases, paired; none when no samples were asked for. Of fewer cases than
  /// least_cases_for_percentiles tell the least and greatest.
  struct Range {
    CaseSpread peak_without_kg_kg;
    CaseSpread peak_with_kg_kg;
    CaseSpread peak_difference_kg_kg;
    CaseSpread wettest_month_difference_kg_kg;  ///< largest monthly mean with, less largest without
    CaseSpread hours_above_without;
    CaseSpread hours_above_with;
    CaseSpread hours_above_difference;
    double wetter_share = 0.0;  ///< cases in which more hours lie above the threshold with the sheet
  };
  std::optional<Range> range;
  std::string sentence;       ///< for people
  std::size_t samples = 0;    ///< picks that settled, those of one case each counted
  std::size_t cases_run = 0;  ///< different ones among them
  std::size_t samples_left_out = 0;
  std::uint64_t seed = 0;
  std::string weather_source;
};

/// None for a frame that is not timber. Weather: an hourly year, or (default) one synthesised from the
/// place's normals. Throws InvalidInput for an invalid survey, year or option; CalculationFailed when the
/// middle case does not settle. O(hours x (2 + 2 samples)).
std::optional<FrameMoisture> frame_moisture(const Survey& survey, const FrameMoistureOptions& options = {},
                                            const std::optional<HourlyYear>& weather = std::nullopt);

}  // namespace dewgap
