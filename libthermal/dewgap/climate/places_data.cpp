// Joining the tables of places and monthly normals, and what makes a place valid.
#include <array>
#include <set>

#include "dewgap/climate/places_kernel.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/numerics/csv_text.hpp"

namespace dewgap {
namespace {

std::size_t month_index(const numerics::CsvTable& table, std::size_t row) {
  const double month = table.number(row, "month");
  require_in_range(month, {1.0, 12.0}, "month", "");
  if (month != static_cast<double>(static_cast<int>(month))) {
    throw InvalidInput("month", "not a whole number");
  }
  return static_cast<std::size_t>(month) - 1;
}

MonthlyNormals read_month(const numerics::CsvTable& table, std::size_t row) {
  return {.mean_C = table.number(row, "mean_C"),
          .max_C = table.number(row, "max_C"),
          .min_C = table.number(row, "min_C"),
          .vapour_pressure_Pa = table.optional_number(row, "vapour_pressure_Pa"),
          .wind_m_s = table.optional_number(row, "wind_m_s"),
          .sunshine_h = table.optional_number(row, "sunshine_h"),
          .global_kWh_m2_day = table.optional_number(row, "global_kWh_m2_day")};
}

Place read_place(const numerics::CsvTable& table, std::size_t row) {
  Place place;
  place.key = table.text(row, "key");
  place.name = table.text(row, "name");
  place.latitude_deg = table.number(row, "latitude_deg");
  place.longitude_deg = table.number(row, "longitude_deg");
  place.elevation_m = table.number(row, "elevation_m");
  place.source = table.text(row, "source");
  place.status = table.text(row, "status");
  place.period = table.text(row, "period");
  place.terms = table.text(row, "terms");
  place.station = table.text(row, "station");
  return place;
}

std::array<MonthlyNormals, 12> read_months(const numerics::CsvTable& normals, std::string_view key) {
  std::array<MonthlyNormals, 12> months{};
  std::set<std::size_t> seen;
  for (std::size_t row = 0; row < normals.row_count(); ++row) {
    if (normals.text(row, "key") != key) {
      continue;
    }
    const auto month = month_index(normals, row);
    if (!seen.insert(month).second) {
      throw InvalidInput(key, "month " + std::to_string(month + 1) + " occurs twice");
    }
    months[month] = read_month(normals, row);
  }
  if (seen.size() != months.size()) {
    throw InvalidInput(key, "has " + std::to_string(seen.size()) + " months instead of 12");
  }
  return months;
}

void require_known_keys(const numerics::CsvTable& normals, const std::set<std::string>& keys) {
  for (std::size_t row = 0; row < normals.row_count(); ++row) {
    if (!keys.contains(normals.text(row, "key"))) {
      throw InvalidInput("key", "'" + normals.text(row, "key") + "' has months but is no place");
    }
  }
}

void require_optional(const std::optional<double>& value, PermittedRange permitted, std::string_view field,
                      std::string_view unit) {
  if (value) {
    require_in_range(*value, permitted, field, unit);
  }
}

void require_valid_month(const MonthlyNormals& month) {
  climate::require_valid_temperatures(month);
  require_optional(month.vapour_pressure_Pa, {0.1, 7000.0}, "vapour_pressure_Pa", "Pa");
  require_optional(month.wind_m_s, {0.0, 40.0}, "wind_m_s", "m/s");
  require_optional(month.sunshine_h, {0.0, 744.0}, "sunshine_h", "h");
  require_optional(month.global_kWh_m2_day, {0.0, 13.0}, "global_kWh_m2_day", "kWh/(m2 day)");
}

}  // namespace

void climate::require_valid_temperatures(const MonthlyNormals& month) {
  require_in_range(month.mean_C, {-60.0, 45.0}, "mean_C", "C");
  require_in_range(month.min_C, {-70.0, month.mean_C}, "min_C", "C");
  require_in_range(month.max_C, {month.mean_C, 60.0}, "max_C", "C");
}

void require_valid(const Place& place) {
  require_in_range(place.latitude_deg, {-90.0, 90.0}, "latitude_deg", "deg");
  require_in_range(place.longitude_deg, {-180.0, 180.0}, "longitude_deg", "deg");
  require_in_range(place.elevation_m, {-430.0, 5000.0}, "elevation_m", "m");
  for (const auto& month : place.months) {
    require_valid_month(month);
  }
}

std::vector<Place> climate::parse_places(std::string_view places_csv, std::string_view monthly_normals_csv) {
  const numerics::CsvTable table(places_csv, "places.csv");
  const numerics::CsvTable normals(monthly_normals_csv, "monthly_normals.csv");
  std::vector<Place> places;
  std::set<std::string> keys;
  for (std::size_t row = 0; row < table.row_count(); ++row) {
    auto place = read_place(table, row);
    if (!keys.insert(place.key).second) {
      throw InvalidInput(place.key, "occurs twice");
    }
    place.months = read_months(normals, place.key);
    require_valid(place);
    places.push_back(std::move(place));
  }
  require_known_keys(normals, keys);
  return places;
}

}  // namespace dewgap
