#include "tools/answer/text_year.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "tools/answer/figures_text.hpp"
#include "tools/answer/sheet_of_lines.hpp"
#include "tools/answer/text_answer.hpp"
#include "tools/answer/words.hpp"
#include "tools/answer/year_units.hpp"
#include "tools/answer/year_words.hpp"

namespace dewgap::tools {
namespace {

constexpr std::array<std::string_view, 12> month_names{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                       "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};

/// Cells of one row, right-aligned.
using Cells = std::array<std::string, 10>;
constexpr std::array<std::size_t, 10> cell_columns{6, 5, 6, 6, 5, 6, 6, 6, 7, 5};

std::string table_row(std::string_view name, const Cells& cells) {
  std::string line = padded(name, 4);
  for (std::size_t i = 0; i < cells.size(); ++i) line += fmt::format("{:>{}}", cells[i], cell_columns[i]);
  return line;
}

std::string cell(std::optional<double> value, int decimals, double factor = 1.0) {
  return value ? figure(factor * *value, decimals) : "-";
}

Cells cells_of(const PeriodFigures& period) {
  return {cell(period.outdoor_C.value(), 1),
          cell(period.room_relative_humidity.value(), 0, per_cent.per_base),
          cell(period.pane_face_C.value(), 1),
          cell(period.gap_dew_point_C.value(), 1),
          figure(period.hours_wet, 0),
          figure(static_cast<double>(period.misty_mornings), 0),
          figure(grams.from_base(period.peak_film_kg_m2), 0),
          figure(grams.from_base(period.peak_pool_kg_m2), 0),
          cell(period.peak_timber_kg_kg, 1, per_cent.per_base) + (period.timber_was_full ? "*" : ""),
          figure(kilowatt_hours.from_base(period.heat_J), 0)};
}

void table(SheetOfLines& page, const YearFigures& figures) {
  page.line(table_row("", {"out", "room", "pane", "gap", "wet", "misty", "film", "pool", "timber", "heat"}));
  page.line(table_row("", {"C", "%", "C", "dew C", "h", "days", "g/m2", "g/m2", "%", "kWh"}));
  for (const auto& month : figures.months_in_turn())
    page.line(table_row(month_names[month.month], cells_of(month.figures)));
  page.line(table_row("Year", cells_of(figures.year)));
}

}  // namespace

std::string text_year(const ExaminedYear& year) {
  if (!year.summary) return text_answer(year.job);
  SheetOfLines page;
  if (!year.job.survey.name.empty()) page.line(year.job.survey.name);
  page.paragraph(fmt::format("One year, {}, {}.", name_of(year.option), case_words(year, *year.summary)), "",
                 "  ");
  for (const auto& warning : weather_warnings(year.job.weather)) page.paragraph(warning, "", "  ");
  page.blank();
  table(page, year.figures);
  page.blank();
  page.paragraph(
      "Means of out, room, pane (old glass, towards the gap) and gap; sums of wet (over 1 g/m2), misty (wet "
      "at 8 o'clock) and heat; the most of film, pool and timber.",
      "", "  ");
  page.paragraph(heat_note, "", "  ");
  page.paragraph(room_note, "", "  ");
  if (year.figures.year.timber_was_full)
    page.paragraph("* timber as full of water as the model lets it be (120 %): wet, no measure of how wet.",
                   "", "  ");
  page.paragraph(weather_sentence(year.summary->weather_source, year.summary->modelled, year.job.weather), "",
                 "  ");
  if (year.job.weather) page.paragraph(weather_file_sentence(*year.job.weather), "", "  ");
  if (year.summary->unsettled_hours > 0)
    page.line(fmt::format("Hours without a settled balance: {}.", year.summary->unsettled_hours));
  page.paragraph(
      "One case is no forecast: dewgap vent weighs all that are plausible. By hour: without --monthly.", "",
      "  ");
  return page.text();
}

}  // namespace dewgap::tools
