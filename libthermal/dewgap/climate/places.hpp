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
  double max_C = 0.0;  ///< mean of daily maxima
  double min_C = 0.0;
  std::optional<double> vapour_pressure_Pa;
  std::optional<double> wind_m_s;           ///< at the station, about 10 m up, not at a wall
  std::optional<double> sunshine_h;         ///< a month
  std::optional<double> global_kWh_m2_day;  ///< horizontal
};

struct Place {
  std::string key;             ///< lower case, no blanks: "london"
  std::string name;            ///< for people
  double latitude_deg = 0.0;   ///< north positive
  double longitude_deg = 0.0;  ///< east positive
  double elevation_m = 0.0;
  std::array<MonthlyNormals, 12> months{};
  std::string source;   ///< citation
  std::string status;   ///< what was read, computed, recalled or estimated
  std::string period;   ///< years that the normals cover, or that the source does not state them
  std::string terms;    ///< on which the figures may be passed on
  std::string station;  ///< where they were measured
};

/// The places that the library carries (climate/places.csv), in the order of that file.
std::span<const Place> places();
/// nullptr when unknown. Matching ignores case and takes blank, hyphen and underscore as one;
/// nearest_place_name suggests a spelling.
const Place* find_place(std::string_view key_or_name);
/// The name whose spelling, or whose key's, takes the fewest single-letter edits (Levenshtein 1966). Empty or
/// longer than 200 letters throws.
std::string nearest_place_name(std::string_view key_or_name);

/// Moves a place's temperatures to another height, -430 to 5000 m, at 6.5 K/km (ICAO standard atmosphere),
/// vapour pressure kept unless it would exceed saturation over water at the monthly mean, then at saturation
/// (and reported in status). Sun and wind are kept. Leaves out: valleys that fill with cold air, exposure of
/// hill tops.
Place at_elevation(const Place& place, double elevation_m);

/// The month with the lowest mean, 0..11.
int coldest_month(const Place& place);

/// Great-circle distance, km, on a sphere of 6371.0088 km (IUGG mean radius) by the haversine formula; within
/// 0.6 % of the distance on the ellipsoid (from memory). Latitudes -90 to 90, longitudes -180 to 180.
double distance_km(double latitude_1_deg, double longitude_1_deg, double latitude_2_deg,
                   double longitude_2_deg);

/// The outdoor air of a design case.
///
/// Where the place's data lack vapour pressure it is taken as saturation over water at the month's mean
/// minimum: the dew point of a month lies near its minimum (Allen et al. 1998, FAO Irrigation and Drainage
/// Paper 56, eq. 48, from memory). Measured here on the coldest month of the carried places that have vapour
/// pressure (Toronto's, printed to 100 Pa, left out): -14 to +9 % for fifteen, +47 % for Tokyo, whose winter
/// air is dry. It is marked as modelled. Where wind is lacking it is `default_wind_m_s`, our convention, and
/// marked.
struct DesignCondition {
  double outdoor_temperature_C = 0.0;
  double outdoor_vapour_Pa = 0.0;
  double wind_m_s = 0.0;  ///< the month's mean at the station where known
  bool vapour_was_modelled = false;
  bool wind_was_modelled = false;
};
inline constexpr double default_wind_m_s = 4.0;  ///< our convention: an inland station's winter mean

/// The coldest month's mean temperature and vapour pressure.
DesignCondition coldest_month_mean(const Place& place);
/// A frost night of the coldest month: its mean minimum. Vapour pressure the month's mean, at most saturation
/// over water at that minimum (what a hygrometer calls 100 %).
DesignCondition frost_night(const Place& place);

/// Throws InvalidInput when a place is not one: latitude or longitude off the globe, a monthly mean outside
/// -60 to 45 C or outside its minimum and maximum, a negative or absurd vapour pressure, wind, sunshine or
/// radiation. Every function that takes a Place checks it.
void require_valid(const Place& place);

}  // namespace dewgap
