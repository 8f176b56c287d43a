#include "dewgap/climate/places.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "dewgap/air/saturation.hpp"
#include "dewgap/climate/places_kernel.hpp"
#include "dewgap/errors.hpp"
#include "embedded/room_climate.hpp"

namespace dewgap {
namespace {

constexpr double lapse_K_m = 0.0065;                // ICAO standard atmosphere, ISO 2533
constexpr double mean_earth_radius_km = 6371.0088;  // IUGG mean radius R1, from memory

const std::vector<Place>& carried_places() {
  static const auto carried = climate::parse_places(embedded::places_csv, embedded::monthly_normals_csv);
  return carried;
}

char folded(char letter) {
  if (letter >= 'A' && letter <= 'Z') {
    return static_cast<char>(letter - 'A' + 'a');
  }
  return letter == ' ' || letter == '-' ? '_' : letter;
}

std::string folded(std::string_view text) {
  std::string result(text);
  std::transform(result.begin(), result.end(), result.begin(), [](char letter) { return folded(letter); });
  return result;
}

std::string whole_metres(double height_m) {
  return std::to_string(static_cast<long>(std::lround(height_m)));
}

}  // namespace

namespace climate {

// Levenshtein 1966, two rows of the dynamic programme at a time.
std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t substituted = diagonal + (a[i - 1] == b[j - 1] ? 0u : 1u);
      diagonal = row[j];
      row[j] = std::min({row[j] + 1, row[j - 1] + 1, substituted});
    }
  }
  return row.back();
}

}  // namespace climate

std::span<const Place> places() {
  return carried_places();
}

const Place* find_place(std::string_view key_or_name) {
  const auto wanted = folded(key_or_name);
  for (const auto& place : carried_places()) {
    if (wanted == folded(place.key) || wanted == folded(place.name)) {
      return &place;
    }
  }
  return nullptr;
}

std::string nearest_place_name(std::string_view key_or_name) {
  require_in_range(static_cast<double>(key_or_name.size()), {1.0, 200.0}, "place", "letters");
  const auto wanted = folded(key_or_name);
  std::size_t fewest = std::numeric_limits<std::size_t>::max();
  std::string nearest;
  for (const auto& place : carried_places()) {
    const auto edits = std::min(climate::edit_distance(wanted, folded(place.key)),
                                climate::edit_distance(wanted, folded(place.name)));
    if (edits < fewest) {
      fewest = edits;
      nearest = place.name;
    }
  }
  return nearest;
}

Place at_elevation(const Place& place, double elevation_m) {
  require_valid(place);
  require_in_range(elevation_m, {-430.0, 5000.0}, "elevation_m", "m");
  Place moved = place;
  const double shift_K = -lapse_K_m * (elevation_m - place.elevation_m);
  int limited = 0;
  for (auto& month : moved.months) {
    month.mean_C += shift_K;
    month.max_C += shift_K;
    month.min_C += shift_K;
    const double saturation_Pa =
        saturation_pressure_Pa(month.mean_C, SaturationFormula::murphy_koop, Phase::water);
    if (month.vapour_pressure_Pa && *month.vapour_pressure_Pa > saturation_Pa) {
      month.vapour_pressure_Pa = saturation_Pa;
      ++limited;
    }
  }
  moved.elevation_m = elevation_m;
  moved.status += "; temperatures moved from " + whole_metres(place.elevation_m) + " m to " +
                  whole_metres(elevation_m) + " m at 6.5 K/km";
  if (limited > 0) {
    moved.status += "; vapour pressure of " + std::to_string(limited) + " months limited to saturation";
  }
  return moved;
}

int coldest_month(const Place& place) {
  require_valid(place);
  const auto coldest = std::min_element(place.months.begin(), place.months.end(),
                                        [](const auto& a, const auto& b) { return a.mean_C < b.mean_C; });
  return static_cast<int>(coldest - place.months.begin());
}

double distance_km(double latitude_1_deg, double longitude_1_deg, double latitude_2_deg,
                   double longitude_2_deg) {
  require_in_range(latitude_1_deg, {-90.0, 90.0}, "latitude_1_deg", "deg");
  require_in_range(latitude_2_deg, {-90.0, 90.0}, "latitude_2_deg", "deg");
  require_in_range(longitude_1_deg, {-180.0, 180.0}, "longitude_1_deg", "deg");
  require_in_range(longitude_2_deg, {-180.0, 180.0}, "longitude_2_deg", "deg");
  const double latitude_1 = climate::radians(latitude_1_deg);
  const double latitude_2 = climate::radians(latitude_2_deg);
  // Haversine: hav(d) = hav(latitude difference) + cos cos hav(longitude difference).
  const double sin_latitude = std::sin(0.5 * (latitude_2 - latitude_1));
  const double sin_longitude = std::sin(0.5 * climate::radians(longitude_2_deg - longitude_1_deg));
  const double haversine = sin_latitude * sin_latitude +
                           std::cos(latitude_1) * std::cos(latitude_2) * sin_longitude * sin_longitude;
  // At antipodes rounding may carry the haversine past 1.
  return 2.0 * mean_earth_radius_km * std::asin(std::sqrt(std::min(1.0, haversine)));
}

}  // namespace dewgap
