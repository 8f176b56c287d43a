#include "tools/weather/weather_file.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <filesystem>

#include "dewgap/air/saturation.hpp"
#include "dewgap/climate/weather_columns.hpp"
#include "dewgap/errors.hpp"
#include "tools/answer/plain_text.hpp"
#include "tools/weather/checksum.hpp"
#include "tools/weather/gaps_kernel.hpp"
#include "tools/weather/plausible_kernel.hpp"
#include "tools/weather/site_facts_kernel.hpp"

namespace dewgap::tools {
namespace {

using namespace weather;

constexpr double most_humid = 1.05;            // as HourlyYear
constexpr double most_vapour_Pa = 10000.0;     // as HourlyYear
constexpr double refused_sun_at_night = 0.05;  // our convention, of the year's sun
constexpr double reported_sun_at_night = 0.005;

double saturation_Pa(double temperature_C) {
  return saturation_pressure_Pa(temperature_C, SaturationFormula::murphy_koop, Phase::water);
}

/// Vapour pressure of an hour by whichever column tells it.
double vapour_Pa(const WeatherColumns& columns, std::size_t slot) {
  if (!columns.vapour_pressure_Pa.empty()) return columns.vapour_pressure_Pa[slot];
  if (!columns.dew_point_C.empty()) return saturation_Pa(columns.dew_point_C[slot]);
  return columns.relative_humidity[slot] * saturation_Pa(columns.air_temperature_C[slot]);
}

const DataColumn& humidity_column(const Header& header) {
  return *std::find_if(header.columns.begin(), header.columns.end(), [](const DataColumn& column) {
    const auto quantity = column.rule->quantity;
    return quantity == Quantity::relative_humidity || quantity == Quantity::dew_point ||
           quantity == Quantity::vapour_pressure;
  });
}

/// Tells hours whose air holds more vapour than it can.
void require_vapour_that_can_be(const WeatherColumns& columns, const Header& header, const YearOrder& order,
                                const CsvRows& table, Problems& problems) {
  const auto& humidity = humidity_column(header);
  for (std::size_t slot = 0; slot < order.row_of_slot.size(); ++slot) {
    const double air_C = columns.air_temperature_C[slot];
    const double most_Pa = std::min(most_vapour_Pa, most_humid * saturation_Pa(air_C) * (1.0 + 1e-12));
    const auto& row = order.row_of_slot[slot];
    if (vapour_Pa(columns, slot) <= most_Pa || !row) continue;
    const auto text = one_line(table.rows[*row].cells[humidity.position].text, 40);
    problems.add_of_kind("vapour", table.rows[*row].mark_of(humidity.position),
                         fmt::format("{}: \"{}\" is more vapour than air of {:.2f} C can hold ({:.0f} Pa; "
                                     "permitted: up to {:.0f} Pa)",
                                     humidity.name(), text, air_C, vapour_Pa(columns, slot), most_Pa));
  }
}

/// Share of the year's sun in hours when the sun is down all the time.
double share_of_sun_at_night(const HourlyYear& year) {
  double at_night = 0.0;
  double all = 0.0;
  for (std::size_t i = 0; i < year.global_W_m2.size(); ++i) {
    const double global = year.global_W_m2[i];
    all += global;
    if (global > 0.0 &&
        sun_of_hour(year.site, static_cast<int>(i / 24) + 1, static_cast<int>(i % 24)).lit_share <= 0.0)
      at_night += global;
  }
  return all > 0.0 ? at_night / all : 0.0;
}

void check_clock(const HourlyYear& year, TextMark mark, WeatherFile& file, Problems& problems) {
  const double share = share_of_sun_at_night(year);
  const auto text =
      fmt::format("{:.1f} % of the sun falls into hours when it is down at {} N, {} E, UTC{:+}",
                  100.0 * share, year.site.latitude_deg, year.site.longitude_deg, year.site.utc_offset_h);
  if (share > refused_sun_at_night)
    problems.add(mark, text + "; longitude (east positive), utc_offset_h or the times cannot be right");
  else if (share > reported_sun_at_night)
    file.notes.push_back(text + ": are longitude, utc_offset_h and the end of the hour right?");
}

void add_notes_of_filling(const FilledColumns& filled, WeatherFile& file) {
  file.repaired_hours = filled.filled_hours;
  file.longest_repaired_gap_h = filled.longest_gap_h;
  if (filled.filled_hours == 0) return;
  file.notes.push_back(
      fmt::format("{} of {} hours lacked a value, at most {} in a run; they were filled in between their "
                  "neighbours, the sun by its share of what reaches the atmosphere.",
                  filled.filled_hours, filled.was_filled.size(), filled.longest_gap_h));
}

void add_notes_of_models(const WeatherColumns& columns, const ModelledColumns& modelled, WeatherFile& file) {
  if (modelled.wind)
    file.notes.push_back(
        fmt::format("Wind is not in the file and is taken as {} m/s in every hour.", default_wind_m_s));
  if (modelled.sun_split)
    file.notes.emplace_back("Beam and diffuse were modelled from the global irradiance, hour by hour.");
  if (columns.global_W_m2.empty())
    file.notes.emplace_back("Global irradiance follows from beam, diffuse and the sun's height.");
  if (modelled.cloud_cover)
    file.notes.emplace_back(
        "Cloud was modelled from each day's sun, and held through the night that follows it.");
}

void add_note_of_unknown(const Header& header, WeatherFile& file) {
  if (header.unknown.empty()) return;
  file.notes.push_back(fmt::format("Not used: {} {}.", header.unknown.size() == 1 ? "column" : "columns",
                                   fmt::join(header.unknown, ", ")));
}

void append(std::vector<std::string>& notes, const std::vector<std::string>& more) {
  notes.insert(notes.end(), more.begin(), more.end());
}

void stop_without_year(const InvalidInput& error, TextMark mark, Problems& problems) {
  problems.add(mark, harmless(error.what()));
  problems.stop_if_any();
}

/// What the steps of reading share.
class Reading {
 public:
  Reading(std::string_view file_name, const WeatherFileOptions& options)
      : file_name_(file_name), options_(options), problems_(file_name) {}

  WeatherFile read(std::string_view text) {
    const auto table = read_rows(text, problems_);
    file_.identity = {std::filesystem::path(file_name_).filename().string(), table.rows.size(),
                      fnv1a_64(text), options_.longest_repair_h};
    const auto header = read_header(table.header, problems_);
    auto site = read_site_facts(table.comments, options_, problems_);
    const auto values = read_values(table, header, problems_);
    const auto stamps = read_stamps(table, header.time, problems_);
    if (stamps.size() < table.rows.size() || stamps.empty()) problems_.stop_if_any();
    const auto order = order_of_year(stamps, header.time, site.utc_offset_h, problems_);
    site.utc_offset_h = order.utc_offset_h;
    require_site(site, problems_);
    const auto of_slots = in_order_of_year(values.columns, order);
    require_small_gaps(of_slots, order, table, options_.longest_repair_h, problems_);
    require_percents(of_slots, problems_);
    problems_.stop_if_any();
    file_.latitude_mark = site.latitude_mark;
    append(file_.notes, site.notes);
    append(file_.notes, order.notes);
    append(file_.notes, values.notes);
    complete(table, header, site, order, of_slots);
    return std::move(file_);
  }

 private:
  void complete(const CsvRows& table, const Header& header, const SiteFacts& site, const YearOrder& order,
                const std::vector<HourlyValues>& of_slots) {
    const SunSite sun_site{*site.latitude_deg, *site.longitude_deg, *site.utc_offset_h};
    auto filled = filled_columns(of_slots, sun_site);
    auto& columns = filled.columns;
    columns.site = sun_site;
    columns.elevation_m = site.elevation_m.value_or(0.0);
    columns.source = site.source.empty() ? "weather file " + harmless(file_name_) : site.source;
    require_vapour_that_can_be(columns, header, order, table, problems_);
    problems_.stop_if_any();
    const TextMark top{table.header.line, 1};
    try {
      file_.year = completed_year(columns);
    } catch (const InvalidInput& error) {
      stop_without_year(error, top, problems_);
    }
    check_clock(file_.year, top, file_, problems_);
    file_.figures = figures_of(file_.year);
    require_possible_year(file_.figures, columns.elevation_m, header, problems_);
    problems_.stop_if_any();
    append(file_.warnings, doubts_about(file_.figures));
    file_.ignored_columns = header.unknown;
    add_notes_of_filling(filled, file_);
    add_notes_of_models(columns, file_.year.modelled, file_);
    add_note_of_unknown(header, file_);
  }

  std::string_view file_name_;
  const WeatherFileOptions& options_;
  Problems problems_;
  WeatherFile file_;
};

}  // namespace

WeatherFile read_weather(std::string_view text, std::string_view file_name,
                         const WeatherFileOptions& options) {
  require_in_range(options.longest_repair_h, {0.0, 24.0}, "longest_repair_h", "h");
  return Reading(file_name, options).read(text);
}

}  // namespace dewgap::tools
