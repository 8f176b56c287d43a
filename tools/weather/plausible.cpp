#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "tools/weather/plausible_kernel.hpp"

namespace dewgap::tools::weather {
namespace {

// All our convention, from memory: wider than the records of inhabited and uninhabited places.
constexpr PermittedRange mean_of_year_C{-60.0, 36.0};
constexpr double warmest_cold_month_C = 33.0;
constexpr double least_spread_K = 0.5;
constexpr double tropic_deg = 23.44;
constexpr double lapse_K_m = 0.0065;  // ICAO standard atmosphere
constexpr double driest_mean = 0.10;
constexpr double largest_share_in_percent = 0.015;
constexpr double least_humidity_spread = 0.01;
constexpr PermittedRange usual_wind_m_s{0.3, 12.0};
constexpr PermittedRange usual_sun_kWh_m2{500.0, 2800.0};

/// The least that a warmest month has at sea level.
double least_warmest_month_C(double latitude_deg) {
  if (std::abs(latitude_deg) <= 40.0) return 10.0;
  if (std::abs(latitude_deg) <= 60.0) return 0.0;
  return latitude_deg > 0.0 ? -5.0 : -15.0;
}

const DataColumn& column_of(const Header& header, Quantity quantity) {
  return *std::find_if(header.columns.begin(), header.columns.end(),
                       [&](const DataColumn& column) { return column.rule->quantity == quantity; });
}

double mean_of_months(const WeatherFigures& figures, std::array<std::size_t, 3> months) {
  double sum = 0.0;
  for (const auto month : months) sum += figures.month_C.at(month);
  return sum / static_cast<double>(months.size());
}

class YearCheck {
 public:
  YearCheck(const WeatherFigures& figures, const Header& header, Problems& problems)
      : figures_(figures), temperature_(column_of(header, Quantity::air_temperature)), problems_(problems) {}

  void check_temperature(double elevation_m) {
    const double mean_C = figures_.mean_C;
    const double least_C = least_warmest_month_C(figures_.latitude_deg) - lapse_K_m * elevation_m;
    if (mean_C < mean_of_year_C.min || mean_C > mean_of_year_C.max)
      tell(fmt::format("the year's mean would be {:.1f} C (expected: {} to {} C)", mean_C, mean_of_year_C.min,
                       mean_of_year_C.max));
    else if (figures_.coldest_month_C() > warmest_cold_month_C)
      tell(fmt::format("the coldest month's mean would be {:.1f} C (expected: at most {} C)",
                       figures_.coldest_month_C(), warmest_cold_month_C));
    else if (figures_.warmest_month_C() < least_C)
      tell(fmt::format(
          "the warmest month's mean would be {:.1f} C (expected at latitude {} and {} m: at least {:.1f} C)",
          figures_.warmest_month_C(), figures_.latitude_deg, elevation_m, least_C));
  }

  void check_spread() {
    if (figures_.temperature_sd_K < least_spread_K)
      problems_.add(
          temperature_.mark,
          fmt::format("{}: the temperature hardly changes: {:.1f} C with a standard deviation of "
                      "{:.2f} K over the year (expected: at least {} K)",
                      temperature_.name(), figures_.mean_C, figures_.temperature_sd_K, least_spread_K));
  }

  void check_seasons() {
    const double june_C = mean_of_months(figures_, {5, 6, 7});
    const double december_C = mean_of_months(figures_, {11, 0, 1});
    const bool north = figures_.latitude_deg > 0.0;
    if (std::abs(figures_.latitude_deg) < tropic_deg || figures_.temperature_sd_K < least_spread_K ||
        north == (june_C > december_C))
      return;
    problems_.add(temperature_.mark,
                  fmt::format("{}: June to August have {:.1f} C, December to February {:.1f} C (expected at "
                              "latitude {}: a {} June to August); latitude_deg (north positive) or the times "
                              "cannot be right",
                              temperature_.name(), june_C, december_C, figures_.latitude_deg,
                              north ? "warmer" : "colder"));
  }

  void check_humidity(const Header& header) {
    if (figures_.relative_humidity >= driest_mean) return;
    const auto& column = *std::find_if(header.columns.begin(), header.columns.end(), [](const auto& one) {
      const auto quantity = one.rule->quantity;
      return quantity == Quantity::relative_humidity || quantity == Quantity::dew_point ||
             quantity == Quantity::vapour_pressure;
    });
    problems_.add(column.mark,
                  fmt::format("{}: relative humidity would be {:.1f} % on average (expected: at "
                              "least {:.0f} %); is the column's unit right?",
                              column.name(), 100.0 * figures_.relative_humidity, 100.0 * driest_mean));
  }

 private:
  void tell(const std::string& what) {
    problems_.add(temperature_.mark,
                  fmt::format("{}: {}; is the column's unit right?", temperature_.name(), what));
  }

  const WeatherFigures& figures_;
  const DataColumn& temperature_;
  Problems& problems_;
};

}  // namespace

void require_percents(const std::vector<HourlyValues>& of_slots, Problems& problems) {
  for (const auto& hourly : of_slots) {
    if (hourly.column.unit->suffix != "percent") continue;
    double largest = 0.0;
    for (const auto& value : hourly.values) largest = std::max(largest, value.value_or(0.0));
    if (largest > largest_share_in_percent) continue;
    if (hourly.column.rule->quantity == Quantity::cloud_cover && largest <= 0.0) continue;
    problems.add(hourly.column.mark,
                 fmt::format("{}: the largest value of the year is {:.4g} % (expected: up to about 100 %); "
                             "shares of 0 to 1 are named {}_share",
                             hourly.column.name(), 100.0 * largest, hourly.column.rule->name));
  }
}

void require_possible_year(const WeatherFigures& figures, double elevation_m, const Header& header,
                           Problems& problems) {
  YearCheck check(figures, header, problems);
  check.check_temperature(elevation_m);
  check.check_spread();
  check.check_seasons();
  check.check_humidity(header);
}

std::vector<std::string> doubts_about(const WeatherFigures& figures) {
  std::vector<std::string> doubts;
  if (figures.relative_humidity_sd < least_humidity_spread)
    doubts.push_back(fmt::format("The weather file's humidity hardly changes: {:.0f} % in every hour.",
                                 100.0 * figures.relative_humidity));
  if (figures.wind_m_s < usual_wind_m_s.min || figures.wind_m_s > usual_wind_m_s.max)
    doubts.push_back(fmt::format("The weather file's mean wind is {:.1f} m/s; usual is {} to {} m/s.",
                                 figures.wind_m_s, usual_wind_m_s.min, usual_wind_m_s.max));
  if (figures.sun_kWh_m2 < usual_sun_kWh_m2.min || figures.sun_kWh_m2 > usual_sun_kWh_m2.max)
    doubts.push_back(fmt::format("The weather file's sun is {:.0f} kWh/m2 a year; usual is {} to {}.",
                                 figures.sun_kWh_m2, usual_sun_kWh_m2.min, usual_sun_kWh_m2.max));
  return doubts;
}

}  // namespace dewgap::tools::weather
