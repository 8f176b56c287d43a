// Weather files made for tests: a year of hours as text, to be edited row by row.
#pragma once

#include <fmt/format.h>

#include <chrono>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "dewgap/climate/solar_position.hpp"
#include "tools/failure.hpp"
#include "tools/weather/weather_file.hpp"

namespace dewgap::test {

struct MadeWeather {
  std::vector<std::string> comments;
  std::vector<std::string> names;
  std::vector<std::vector<std::string>> rows;

  std::string text() const {
    std::string all;
    for (const auto& comment : comments) all += "# " + comment + "\n";
    all += line_of(names);
    for (const auto& row : rows) all += line_of(row);
    return all;
  }
  std::size_t position(const std::string& name) const {
    for (std::size_t i = 0; i < names.size(); ++i)
      if (names[i] == name) return i;
    throw std::logic_error("no column " + name);
  }
  std::string& cell(std::size_t row, const std::string& name) { return rows.at(row).at(position(name)); }
  void drop(std::size_t first, std::size_t count) {
    const auto begin = rows.begin() + static_cast<std::ptrdiff_t>(first);
    rows.erase(begin, begin + static_cast<std::ptrdiff_t>(count));
  }
  /// Line of a row in the text, from 1.
  int line(std::size_t row) const { return static_cast<int>(comments.size() + 2 + row); }

 private:
  static std::string line_of(const std::vector<std::string>& cells) {
    std::string line;
    for (std::size_t i = 0; i < cells.size(); ++i) line += (i > 0 ? "," : "") + cells[i];
    return line + "\n";
  }
};

inline double made_temperature_C(std::size_t slot) {
  const auto hour = static_cast<double>(slot);
  return 10.0 - 8.0 * std::cos(2.0 * std::numbers::pi * hour / 8760.0) -
         4.0 * std::cos(2.0 * std::numbers::pi * (hour - 3.0) / 24.0);
}

inline std::string iso_text(std::chrono::local_days day, std::size_t hour) {
  const std::chrono::year_month_day date(day + std::chrono::days(hour / 24));
  return fmt::format("{:04}-{:02}-{:02}T{:02}:00", static_cast<int>(date.year()),
                     static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()), hour % 24);
}

/// Hours from midnight of a day on: temperature (half a year on in the south), humidity, wind, and a sun of
/// clearness 0.5.
inline MadeWeather made_weather(std::chrono::year_month_day first = std::chrono::year(2023) /
                                                                    std::chrono::January / 1,
                                std::size_t hours = 8760, const SunSite& site = {51.0, 10.0, 1.0}) {
  MadeWeather made;
  made.comments = {fmt::format("latitude_deg: {}", site.latitude_deg),
                   fmt::format("longitude_deg: {}", site.longitude_deg),
                   fmt::format("utc_offset_h: {}", site.utc_offset_h), "elevation_m: 120",
                   "source: made for a test"};
  made.names = {"time_start", "air_temperature_C", "relative_humidity_percent", "wind_m_s", "global_W_m2"};
  const std::chrono::local_days day(first);
  const std::chrono::year like(hours == 8784 ? 2000 : 2001);
  const std::chrono::local_days day_of_like(like / first.month() / first.day());
  const std::chrono::local_days new_year(like / std::chrono::January / 1);
  for (std::size_t i = 0; i < hours; ++i) {
    const auto slot = (24 * static_cast<std::size_t>((day_of_like - new_year).count()) + i) % hours;
    const auto sun = sun_of_hour(site, static_cast<int>(slot / 24) + 1, static_cast<int>(slot % 24));
    const auto season_slot = site.latitude_deg < 0.0 ? (slot + hours / 2) % hours : slot;
    made.rows.push_back({iso_text(day, i), fmt::format("{:.3f}", made_temperature_C(season_slot)), "80",
                         "3.5", fmt::format("{:.2f}", 0.5 * sun.extraterrestrial_W_m2)});
  }
  return made;
}

inline tools::WeatherFile read_made(const MadeWeather& made, const tools::WeatherFileOptions& options = {}) {
  return tools::read_weather(made.text(), "made.csv", options);
}

/// What a refused text is told; empty when it is read.
inline std::string refusal(const std::string& text, const std::string& name = "made.csv",
                           const tools::WeatherFileOptions& options = {}) {
  try {
    tools::read_weather(text, name, options);
  } catch (const tools::Failure& failure) {
    return failure.code() == tools::ExitCode::bad_input ? failure.what() : "another exit code";
  }
  return {};
}

}  // namespace dewgap::test
