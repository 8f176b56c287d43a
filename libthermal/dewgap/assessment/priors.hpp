// The uncertain inputs and what is believed of them before anyone has looked: read from
// assessment/priors.csv.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace dewgap {

/// One sampled input each. The file priors.csv has a row for each, and for variants by window or room where
/// noted.
enum class Unknown : std::size_t {
  joint_leakage,         ///< m3/(h m) at 1 Pa of the old window's joints
  putty_leakage,         ///< m3/(h m) at 1 Pa of putty lines and fixed joints
  seal_leakage,          ///< m3/(h m) at 1 Pa of the tape as fitted
  vapour_excess,         ///< Pa over outdoors at 0 C
  room_temperature,      ///< C
  neutral_level_offset,  ///< m, neutral level above the window's mid-height where building facts leave it
                         ///< open
  wind_ratio,            ///< factor on the shelter's wind ratio
  wind_pressure,         ///< mean pressure coefficient of the facade over winter winds, windward positive
  gust_intensity,
  extract_depression,  ///< Pa, by fans, averaged over the damp hours
  background_airflow,  ///< m3/h through the rest of the connected rooms: sealing raises humidity against it
  sheet_emissivity,
  glass_emissivity,
  outdoor_convection,  ///< factor
  room_film,           ///< factor
  gap_correlation,     ///< which published correlation: 0-1 Wright, 1-2 ElSherbiny, 2-3 EN 673
  gap_convection,      ///< factor on Nu - 1: scatter about the correlation
  cloud_cover,         ///< winter mean and frost night
  edge_factor,         ///< (T_edge - T_out)/(T_centre - T_out) of the cold pane
  frame_u_factor,
  base_temperature,        ///< C
  heated_share,            ///< of the day and winter that the room is at its temperature
  draught_needed,          ///< share of stopped draught that ventilation still needs
  sun_used,                ///< share of lost sun that was useful
  sun_transmitted,         ///< factor on solar transmittance of the sheet and dirt
  tape_vapour_resistance,  ///< mu
  climate_offset,          ///< K, place against station
  // A year of hours alone asks for these.
  film_retention,      ///< g/m2 of water that stays on a face
  run_off_time,        ///< h, in which what is more than that runs down
  gusts_per_s,         ///< 1/s, that flex the sheet
  timber_depth,        ///< m of wood that follows the damp of the gap
  timber_coat,         ///< m of still air, as paint resists vapour
  soak_time,           ///< h, in which a pool soaks into the wood below it
  glass_sun_absorbed,  ///< factor on the glass's solar absorptance
  sheet_sun_absorbed,  ///< factor on the sheet's
  count
};
inline constexpr std::size_t unknown_count = static_cast<std::size_t>(Unknown::count);
/// Those before it are all that the steady check asks for.
inline constexpr std::size_t steady_unknown_count = static_cast<std::size_t>(Unknown::film_retention);

enum class PriorShape { normal, lognormal, uniform };

struct Prior {
  Unknown unknown{};
  std::string variant;  ///< empty: all windows; else the archetype it belongs to
  PriorShape shape = PriorShape::normal;
  double p10 = 0.0;
  double p50 = 0.0;  ///< normal and lognormal: the middle; uniform: between the two
  double p90 = 0.0;
  double lowest = 0.0;  ///< physical bounds; samples are folded back inside
  double highest = 0.0;
  std::string unit;
  std::string source;     ///< citation, or 'our convention'
  std::string label;      ///< for people: "draughts through the old joints"
  std::string settle_by;  ///< the one-minute look that narrows it
  bool is_convention() const { return source.starts_with("our convention"); }

  /// Value at cumulative probability u in (0, 1); `width` scales the prior's spread about its middle.
  double at(double u, double width = 1.0) const;
};

/// All rows of priors.csv, read once.
const std::vector<Prior>& all_priors();
/// The row for an unknown and archetype variant; falls back to the row without variant.
const Prior& prior_of(Unknown unknown, std::string_view variant = {});

std::string_view key_of(Unknown unknown);

}  // namespace dewgap
