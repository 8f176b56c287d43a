#include "dewgap/dwelling/pressure.hpp"

#include <cmath>
#include <map>
#include <string_view>

#include "dewgap/air/constants.hpp"
#include "dewgap/air/humid_air.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/numerics/csv_text.hpp"
#include "embedded/room_dwelling.hpp"

namespace dewgap {
namespace {

std::string_view key_of(Shelter shelter) {
  switch (shelter) {
    case Shelter::open:
      return "open";
    case Shelter::fields:
      return "fields";
    case Shelter::suburb:
      return "suburb";
    case Shelter::facing_wall:
      return "facing_wall";
  }
  throw InvalidInput("shelter", "unknown shelter");
}

std::map<std::string, PressureCoefficients, std::less<>> read_coefficients() {
  const numerics::CsvTable table(embedded::pressure_coefficients_csv, "pressure_coefficients.csv");
  std::map<std::string, PressureCoefficients, std::less<>> rows;
  for (std::size_t row = 0; row < table.row_count(); ++row) {
    rows[table.text(row, "shelter")] = {.windward = table.number(row, "windward"),
                                        .leeward = table.number(row, "leeward"),
                                        .side = table.number(row, "side"),
                                        .wind_ratio = table.number(row, "wind_ratio")};
  }
  return rows;
}

void require_valid(const DwellingPressureInput& input) {
  require_in_range(input.room_temperature_C, {-30.0, 50.0}, "room_temperature_C", "C");
  require_in_range(input.outdoor_temperature_C, {-60.0, 50.0}, "outdoor_temperature_C", "C");
  require_in_range(input.window_height_m, {-20.0, 300.0}, "window_height_m", "m");
  require_in_range(input.neutral_level_m, {-20.0, 300.0}, "neutral_level_m", "m");
  require_in_range(input.station_wind_m_s, {0.0, 40.0}, "station_wind_m_s", "m/s");
  require_in_range(input.wind_ratio, {0.0, 1.5}, "wind_ratio", "");
  require_in_range(input.pressure_coefficient, {-1.5, 1.2}, "pressure_coefficient", "");
  require_in_range(input.internal_coefficient, {-1.5, 1.2}, "internal_coefficient", "");
  require_in_range(input.gust_intensity, {0.0, 1.0}, "gust_intensity", "");
  require_in_range(input.direction_coefficient_sd, {0.0, 1.0}, "direction_coefficient_sd", "");
  require_in_range(input.extract_Pa, {0.0, 100.0}, "extract_Pa", "Pa");
}

/// Mean and standard deviation of rho/2 C v'^2 within the hour.
struct WindPressure {
  double mean_Pa;
  double standard_deviation_Pa;
};

WindPressure wind_pressure(const DwellingPressureInput& input, double density_kg_m3) {
  const double speed_m_s = input.station_wind_m_s * input.wind_ratio;
  const double dynamic_Pa = 0.5 * density_kg_m3 * speed_m_s * speed_m_s;
  const double coefficient = input.pressure_coefficient - input.internal_coefficient;
  const double gust2 = input.gust_intensity * input.gust_intensity;
  // Moments of the square of a normal speed, over v^2 and v^4.
  const double mean_square = 1.0 + gust2;
  const double variance_of_square = 4.0 * gust2 + 2.0 * gust2 * gust2;
  // Variance of a product of independent factors.
  const double spread = input.direction_coefficient_sd;
  const double variance = spread * spread * (variance_of_square + mean_square * mean_square) +
                          coefficient * coefficient * variance_of_square;
  return {dynamic_Pa * coefficient * mean_square, dynamic_Pa * std::sqrt(variance)};
}

}  // namespace

PressureCoefficients pressure_coefficients(Shelter shelter) {
  static const auto rows = read_coefficients();
  const auto found = rows.find(key_of(shelter));
  if (found == rows.end()) {
    throw InvalidInput("shelter", "pressure_coefficients.csv has no such row");
  }
  return found->second;
}

DwellingPressure dwelling_pressure(const DwellingPressureInput& input) {
  require_valid(input);
  const double outdoor_kg_m3 = humid_air_density_kg_m3(input.outdoor_temperature_C, 0.0);
  const double room_kg_m3 = humid_air_density_kg_m3(input.room_temperature_C, 0.0);
  const auto wind = wind_pressure(input, outdoor_kg_m3);
  DwellingPressure result;
  // Hydrostatic columns of different density, equal at the neutral level.
  result.stack_Pa = (outdoor_kg_m3 - room_kg_m3) * constants::standard_gravity_m_s2 *
                    (input.window_height_m - input.neutral_level_m);
  // Pressure on the facade pushes inwards, hence the sign.
  result.wind_Pa = -wind.mean_Pa;
  result.extract_Pa = -input.extract_Pa;
  result.within_hour.mean_Pa = result.stack_Pa + result.wind_Pa + result.extract_Pa;
  result.within_hour.standard_deviation_Pa = wind.standard_deviation_Pa;
  return result;
}

}  // namespace dewgap
