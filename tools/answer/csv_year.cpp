#include "tools/answer/csv_year.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <iterator>
#include <stdexcept>

#include "tools/answer/plain_text.hpp"
#include "tools/answer/words.hpp"
#include "tools/answer/year_units.hpp"
#include "tools/answer/year_words.hpp"
#include "tools/job/units.hpp"

namespace dewgap::tools {
namespace {

/// One line being filled.
class CsvLine {
 public:
  explicit CsvLine(std::string first) : line_(std::move(first)) {}
  CsvLine& number(double value, int decimals) {
    if (!std::isfinite(value)) throw std::domain_error("a result is not a finite number");
    fmt::format_to(std::back_inserter(line_), ",{:.{}f}", value, decimals);
    return *this;
  }
  CsvLine& number(std::optional<double> value, int decimals, double factor) {
    if (value) return number(factor * *value, decimals);
    line_ += ',';
    return *this;
  }
  CsvLine& count(std::size_t value) {
    fmt::format_to(std::back_inserter(line_), ",{}", value);
    return *this;
  }
  CsvLine& word(std::string_view text) {
    line_.append(",").append(text);
    return *this;
  }
  std::string finish() {
    line_ += '\n';
    return std::move(line_);
  }

 private:
  std::string line_;
};

void add_gap(CsvLine& line, const GapHourRow& row) {
  const auto& state = row.state;
  line.number(state.gap_C, 2)
      .number(state.face_C[1], 2)
      .number(gap_dew_point_C(row), 2)
      .number(grams.from_base(state.pane_film_kg_m2), 3)
      .number(grams.from_base(state.sheet_film_kg_m2), 3)
      .number(grams.from_base(state.pool_kg_m2), 3)
      .number(grams.from_base(state.frost_kg_m2), 3)
      .number(row.timber_kg_kg, 2, per_cent.per_base)
      .number(litres_an_hour.from_base(state.from_room_m3_s), 2)
      .number(litres_an_hour.from_base(state.from_outdoors_m3_s), 2);
}

std::string month_line(std::string name, const PeriodFigures& period) {
  CsvLine line(std::move(name));
  line.count(period.hours)
      .count(period.sheet_hours)
      .number(period.outdoor_C.value(), 2, 1.0)
      .number(period.room_relative_humidity.value(), 1, per_cent.per_base)
      .number(period.gap_C.value(), 2, 1.0)
      .number(period.pane_face_C.value(), 2, 1.0)
      .number(period.gap_dew_point_C.value(), 2, 1.0)
      .number(period.hours_wet, 1)
      .count(period.misty_mornings)
      .count(period.frost_hours)
      .number(grams.from_base(period.peak_film_kg_m2), 3)
      .number(grams.from_base(period.peak_pool_kg_m2), 3)
      .number(grams.from_base(period.run_off_kg_m2), 3)
      .number(grams.from_base(period.drained_kg_m2), 3)
      .number(period.peak_timber_kg_kg, 2, per_cent.per_base)
      .number(period.from_room_m3_s.value(), 2, litres_an_hour.per_base)
      .number(period.from_outdoors_m3_s.value(), 2, litres_an_hour.per_base)
      .number(kilowatt_hours.from_base(period.heat_J), 3);
  return line.finish();
}

}  // namespace

std::string hour_header() {
  return "time,outdoor_C,room_humidity_pct,gap_C,pane_face_C,gap_dew_point_C,pane_film_g_m2,sheet_film_g_m2,"
         "pool_g_m2,frost_g_m2,timber_pct,air_from_room_l_h,air_from_outdoors_l_h,heat_through_window_W,"
         "sheet,"
         "settled,room_C,wind_m_s,wind_angle_deg,sun_on_window_W_m2\n";
}

std::string hour_line(const GapHourRow& row) {
  constexpr std::size_t hours_of_day = 24;
  constexpr std::size_t gap_cells = 10;
  CsvLine line(
      fmt::format("{:02}-{:02}T{:02}:00", row.month + 1, row.day_of_month, row.hour_of_year % hours_of_day));
  line.number(row.conditions.outdoors.air_temperature_C, 2)
      .number(per_cent.from_base(room_relative_humidity(row)), 1);
  if (row.sheet_hangs)
    add_gap(line, row);
  else
    line.word(std::string(gap_cells - 1, ','));
  const bool settled = row.state.status == SolveStatus::converged;
  return line.number(row.state.heat_W, 2)
      .word(row.sheet_hangs ? "on" : "off")
      .word(settled ? "yes" : "no")
      .number(row.conditions.room_C, 2)
      .number(row.wind_m_s, 2)
      .number(row.wind_angle_deg, 0)
      .number(row.sun_on_window_W_m2, 1)
      .finish();
}

std::string year_comments(const ExaminedYear& year, const GapYearSummary& summary) {
  std::string lines = fmt::format("# One year, {}, {}.\n", name_of(year.option), case_words(year, summary));
  for (const auto sentence : {heat_note, room_note, wind_note}) lines += fmt::format("# {}\n", sentence);
  lines +=
      fmt::format("# {}\n", weather_sentence(summary.weather_source, summary.modelled, year.job.weather));
  if (year.job.weather) lines += fmt::format("# {}\n", weather_file_sentence(*year.job.weather));
  for (const auto& warning : weather_warnings(year.job.weather)) lines += fmt::format("# {}\n", warning);
  return lines;
}

std::string hold_comments(const Assessment& assessment) {
  std::string lines;
  for (const auto& gate : assessment.open_gates)
    lines += fmt::format("# HOLD: {}\n", harmless(gate.question));
  return lines;
}

std::string month_table(const ExaminedYear& year) {
  std::string text = hold_comments(year.job.assessment);
  if (year.summary) text += year_comments(year, *year.summary);
  text +=
      "month,hours_h,sheet_hangs_h,outdoor_C,room_humidity_pct,gap_C,pane_face_C,gap_dew_point_C,hours_wet_h,"
      "misty_mornings,frost_h,peak_film_g_m2,peak_pool_g_m2,run_off_g_m2,drained_g_m2,timber_max_pct,"
      "air_from_room_l_h,air_from_outdoors_l_h,heat_through_window_kWh\n";
  if (!year.summary) return text;
  for (const auto& month : year.figures.months_in_turn())
    text += month_line(fmt::format("{}", month.month + 1), month.figures);
  return text + month_line("year", year.figures.year);
}

}  // namespace dewgap::tools
