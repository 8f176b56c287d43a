#include "tools/weather/weather_figures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "dewgap/air/saturation.hpp"

namespace dewgap::tools {
namespace {

constexpr std::size_t leap_year_h = 8784;
constexpr std::size_t february = 1;

double mean_of(const double* first, std::size_t count) {
  return std::accumulate(first, first + count, 0.0) / static_cast<double>(count);
}

double mean_of(const std::vector<double>& values) {
  return mean_of(values.data(), values.size());
}

double standard_deviation_of(const std::vector<double>& values) {
  const double mean = mean_of(values);
  double squares = 0.0;
  for (const double value : values) squares += (value - mean) * (value - mean);
  return std::sqrt(squares / static_cast<double>(values.size()));
}

std::array<double, 12> monthly_means_of(const std::vector<double>& hours) {
  std::array<double, 12> means{};
  std::size_t first = 0;
  for (std::size_t month = 0; month < means.size(); ++month) {
    auto days = static_cast<std::size_t>(days_of_month.at(month));
    if (month == february && hours.size() == leap_year_h) ++days;
    means[month] = mean_of(hours.data() + first, 24 * days);
    first += 24 * days;
  }
  return means;
}

std::vector<double> relative_humidity_of(const HourlyYear& year) {
  std::vector<double> humidity(year.vapour_pressure_Pa.size());
  for (std::size_t i = 0; i < humidity.size(); ++i)
    humidity[i] =
        year.vapour_pressure_Pa[i] /
        saturation_pressure_Pa(year.air_temperature_C[i], SaturationFormula::murphy_koop, Phase::water);
  return humidity;
}

}  // namespace

double WeatherFigures::coldest_month_C() const {
  return *std::min_element(month_C.begin(), month_C.end());
}

double WeatherFigures::warmest_month_C() const {
  return *std::max_element(month_C.begin(), month_C.end());
}

WeatherFigures figures_of(const HourlyYear& year) {
  require_valid(year);
  constexpr double kilo = 1000.0;
  const auto humidity = relative_humidity_of(year);
  return {.latitude_deg = year.site.latitude_deg,
          .longitude_deg = year.site.longitude_deg,
          .mean_C = mean_of(year.air_temperature_C),
          .temperature_sd_K = standard_deviation_of(year.air_temperature_C),
          .month_C = monthly_means_of(year.air_temperature_C),
          .relative_humidity = mean_of(humidity),
          .relative_humidity_sd = standard_deviation_of(humidity),
          .wind_m_s = mean_of(year.wind_m_s),
          .sun_kWh_m2 = std::accumulate(year.global_W_m2.begin(), year.global_W_m2.end(), 0.0) / kilo};
}

std::string coordinates_text(double latitude_deg, double longitude_deg) {
  return fmt::format("{:.1f} {}, {:.1f} {}", std::abs(latitude_deg), latitude_deg < 0.0 ? "S" : "N",
                     std::abs(longitude_deg), longitude_deg < 0.0 ? "W" : "E");
}

}  // namespace dewgap::tools
