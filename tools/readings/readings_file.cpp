#include "tools/readings/readings_file.hpp"

#include <fmt/format.h>

#include <array>
#include <map>
#include <optional>

#include "dewgap/errors.hpp"
#include "tools/answer/plain_text.hpp"
#include "tools/answer/words.hpp"
#include "tools/failure.hpp"
#include "tools/job/spelling.hpp"
#include "tools/job/units.hpp"
#include "tools/weather/csv_rows_kernel.hpp"

namespace dewgap::tools {
namespace {

using weather::CsvRows;
using weather::Problems;
using weather::Row;

enum Column : std::size_t { date, outdoor, room, humidity, mist, column_count };
constexpr std::array<std::string_view, column_count> column_names{"date", "outdoor_C", "room_C",
                                                                  "room_humidity_percent", "mist"};
constexpr std::array mists{WinterReading::Mist::none, WinterReading::Mist::edges,
                           WinterReading::Mist::lower_third, WinterReading::Mist::all_over,
                           WinterReading::Mist::runs};
constexpr std::size_t most_date_columns = 40;

/// Which cell of a row holds which column.
using Places = std::array<std::optional<std::size_t>, column_count>;

std::vector<std::string> known_names() {
  return {column_names.begin(), column_names.end()};
}

void place_column(const Row& header, std::size_t cell, Places& places, Problems& problems) {
  const auto name = in_small_letters(std::string(header.cells[cell].text));
  for (std::size_t column = 0; column < column_count; ++column) {
    if (name != in_small_letters(std::string(column_names[column]))) continue;
    if (places[column])
      problems.add(header.mark_of(cell), fmt::format("column {} is there twice", column_names[column]));
    places[column] = cell;
    return;
  }
  const auto nearest = nearest_word(name, known_names());
  problems.add(header.mark_of(cell),
               fmt::format("unknown column \"{}\"{}", one_line(header.cells[cell].text, 40),
                           nearest.empty() ? "" : "; nearest known: " + nearest));
}

Places places_of(const Row& header, Problems& problems) {
  Places places;
  for (std::size_t cell = 0; cell < header.cells.size(); ++cell) place_column(header, cell, places, problems);
  for (const auto column : {date, outdoor, mist})
    if (!places[column])
      problems.add({header.line, 1}, fmt::format("column {} is missing", column_names[column]));
  return places;
}

bool is_blank(std::string_view text) {
  return text.empty() || text == "-" || text == "not known";
}

/// One row being read: its cells by column, and what is wrong with them.
class ReadingRow {
 public:
  ReadingRow(const Row& row, const Places& places, Problems& problems)
      : row_(row), places_(places), problems_(problems) {}

  std::string date_text() const {
    const auto given = text_of(date);
    if (given.empty()) complain(date, "is empty; write the day");
    return one_line(given, most_date_columns);
  }

  double needed_number(Column column, PermittedRange permitted, std::string_view unit) const {
    if (is_blank(text_of(column))) {
      complain(column, "is empty, and needed");
      return 0.0;
    }
    return number(column, permitted, unit).value_or(0.0);
  }

  std::optional<double> number(Column column, PermittedRange permitted, std::string_view unit) const {
    const auto given = text_of(column);
    if (is_blank(given)) return std::nullopt;
    const auto value = weather::number_of(given);
    if (value && *value >= permitted.min && *value <= permitted.max) return value;
    complain(column,
             fmt::format("\"{}\" is {} (permitted: {} to {} {})", one_line(given, 40),
                         value ? "out of range" : "not a number", permitted.min, permitted.max, unit));
    return std::nullopt;
  }

  WinterReading::Mist mist_word() const {
    const auto given = text_of(mist);
    std::vector<std::string_view> words;
    for (const auto one : mists) {
      if (given == key_of(one)) return one;
      words.push_back(key_of(one));
    }
    const auto nearest = nearest_permitted(given, words);
    complain(mist, fmt::format("\"{}\" is no answer; one of none, edges, lower_third, all_over, runs{}",
                               one_line(given, 40), nearest.empty() ? "" : "; nearest: " + nearest));
    return WinterReading::Mist::none;
  }

 private:
  std::string_view text_of(Column column) const {
    const auto place = places_[column];
    return place ? row_.cells[*place].text : std::string_view();
  }
  void complain(Column column, const std::string& what) const {
    const auto place = places_[column];
    if (place) problems_.add(row_.mark_of(*place), fmt::format("{}: {}", column_names[column], what));
  }

  const Row& row_;
  const Places& places_;
  Problems& problems_;
};

WinterReading reading_of(const ReadingRow& row) {
  WinterReading reading;
  reading.date = row.date_text();
  reading.outdoor_C = row.needed_number(outdoor, {-40.0, 30.0}, "C");
  reading.room_C = row.number(room, {0.0, 40.0}, "C");
  const auto percent = row.number(humidity, {5.0, 100.0}, "per cent");
  if (percent) reading.room_relative_humidity = per_cent.to_base(*percent);
  reading.mist = row.mist_word();
  return reading;
}

/// Two lines of one date, in whatever letters and blanks, name each other.
void require_one_a_date(const std::vector<Row>& rows, const Places& places, Problems& problems) {
  std::map<std::string, int> line_of;
  for (const auto& row : rows) {
    const auto given = row.cells[*places[date]].text;
    auto plain = in_small_letters(std::string(given));
    std::erase_if(plain, [](char letter) { return letter == ' ' || letter == '\t'; });
    if (plain.empty()) continue;
    const auto [first, is_new] = line_of.emplace(plain, row.line);
    if (!is_new)
      problems.add(row.mark_of(*places[date]),
                   fmt::format("date: \"{}\" is there already, on line {}; one line a morning",
                               one_line(given, most_date_columns), first->second));
  }
}

/// The reader of rows speaks of weather where no row follows; a form that nobody filled in is told here.
void require_rows(std::string_view text, Problems& problems) {
  int number = 0;
  int header = 0;
  while (!text.empty()) {
    const auto end = text.find('\n');
    const auto line = text.substr(0, end);
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    ++number;
    const auto start = line.find_first_not_of(" \t\r");
    if (start == std::string_view::npos || line[start] == '#') continue;
    if (header > 0) return;
    header = number;
  }
  if (header > 0) problems.add({header, 1}, "there is a header, but no reading follows it");
  problems.stop_if_any();
}

}  // namespace

std::vector<WinterReading> read_readings(std::string_view text, std::string_view file_name) {
  Problems problems(file_name);
  require_rows(text, problems);
  const CsvRows table = weather::read_rows(text, problems);
  const std::size_t of_rows = problems.count();
  const Places places = places_of(table.header, problems);
  if (problems.count() > of_rows) problems.stop_if_any();
  if (table.rows.size() > most_readings)
    problems.add({table.rows[most_readings].line, 1},
                 fmt::format("more than {} readings; give those of the frosty mornings", most_readings));
  std::vector<WinterReading> readings;
  for (const auto& row : table.rows) readings.push_back(reading_of(ReadingRow(row, places, problems)));
  require_one_a_date(table.rows, places, problems);
  problems.stop_if_any();
  return readings;
}

std::string readings_form() {
  return R"(# What was seen behind the sheet in the first frosty weeks: one line a morning, before the sun
# is on it.
# Three mornings or more, also those without mist. The last line is an example, a comment by its #.
# date: as you write it, each day once
# outdoor_C: the night's lowest, -40 to 30; mild nights, above 3, are left out
# room_C: at the window in the morning, 0 to 40; leave it empty when not known
# room_humidity_percent: by a hygrometer, 5 to 100; leave it empty when not known
# mist: on old glass or sheet, towards the gap: none, edges, lower_third, all_over, runs
date,outdoor_C,room_C,room_humidity_percent,mist
# 3 December,-4,17.5,62,edges
)";
}

}  // namespace dewgap::tools
