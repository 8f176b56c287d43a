// Places and their monthly normals, carried as data with source.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace dewgap {

inline constexpr int months_per_year = 12;
/// Days of each month of a common year.
inline constexpr std::array<int, 12> days_of_month{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};

struct MonthlyNormals {
  double mean_C = 0.0;
  double max_C = 0.0;   ///< mean of daily maxima
  double min_C = 0.0;
  std::optional<double> vapour_pressure_Pa;
  std::optional<double> wind_m_s;                 ///< at the station, about 10 m up, not at a wall
  std::optional<double> sunshine_h;               ///< a month
  std::optional<double> global_kWh_m2_day;        ///< horizontal
};

struct Place {
  std::string key;       ///< lower case, no blanks: "london"
  std::string name;      ///< for people
  double latitude_deg = 0.0;   ///< north positive
  double longitude_deg = 0.0;  ///< east positive
  double elevation_m = 0.0;
  std::array<MonthlyNormals, 12> months{};
  std::string source;    ///< citation and period
  std::string status;    ///< what was seen, computed, or estimated
};

std::span<const Place> places();
/// nullptr when unknown. Matching ignores case; nearest_place_name suggests a spelling.
const Place* find_place(std::string_view key_or_name);
std::string nearest_place_name(std::string_view key_or_name);

/// Moves a place's temperatures to another height at 6.5 K/km (ICAO standard atmosphere), vapour pressure kept
/// unless it would exceed saturation at the monthly mean, then at saturation (and reported in status).
Place at_elevation(const Place& place, double elevation_m);

/// The month with the lowest mean, 0..11.
int coldest_month(const Place& place);

/// Great-circle distance, km.
double distance_km(double latitude_1_deg, double longitude_1_deg, double latitude_2_deg, double longitude_2_deg);

/// A frost night of the coldest month: its mean minimum. Vapour pressure the month's mean, at most saturation over
/// water at that minimum.
struct DesignCondition {
  double outdoor_temperature_C = 0.0;
  double outdoor_vapour_Pa = 0.0;
  double wind_m_s = 0.0;        ///< the month's mean where known, else a stated default
  bool vapour_was_modelled = false;
  bool wind_was_modelled = false;
};
DesignCondition coldest_month_mean(const Place& place);
DesignCondition frost_night(const Place& place);

}  // namespace dewgap
