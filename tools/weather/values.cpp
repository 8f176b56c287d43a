#include "tools/weather/values_kernel.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "tools/answer/plain_text.hpp"
#include "tools/job/spelling.hpp"

namespace dewgap::tools::weather {
namespace {

bool is_missing(std::string_view text) {
  if (text.empty()) return true;
  if (text.size() > 3) return false;
  constexpr std::array<std::string_view, 3> marks{"-", "nan", "na"};
  const auto small = in_small_letters(text);
  return std::find(marks.begin(), marks.end(), small) != marks.end();
}

/// A number of nines alone, as files use it for "none".
bool is_made_of_nines(std::string_view text) {
  if (text.starts_with('-')) text.remove_prefix(1);
  const auto point = text.find('.');
  const auto whole = text.substr(0, point);
  return whole.size() >= 2 && whole.find_first_not_of('9') == std::string_view::npos;
}

class ColumnReading {
 public:
  ColumnReading(const DataColumn& column, Problems& problems) : column_(column), problems_(problems) {}

  std::optional<double> read(const Row& row) {
    const auto text = row.cells[column_.position].text;
    if (is_missing(text)) return std::nullopt;
    const auto number = number_of(text);
    if (!number) return tell(row, "is not a number", hint_of_text(text));
    const double value = column_.unit->to_base(*number);
    const auto& permitted = column_.rule->permitted;
    if (!(value >= permitted.min && value <= permitted.max))
      return tell(row, "is out of range",
                  is_made_of_nines(text) ? "; where it stands for 'missing', leave the cell empty" : "");
    if (column_.rule->is_sun() && value < 0.0) {
      ++below_zero_;
      return 0.0;
    }
    return value;
  }

  std::string note() const {
    if (below_zero_ == 0) return {};
    return fmt::format("{}: {} hours slightly below 0 count as 0.", column_.name(), below_zero_);
  }

 private:
  static std::string_view hint_of_text(std::string_view text) {
    return text.find(',') == std::string_view::npos ? "" : "; write it with a point";
  }

  double tell(const Row& row, std::string_view what, std::string_view hint) {
    problems_.add_of_kind(fmt::format("{} {}", column_.position, what), row.mark_of(column_.position),
                          fmt::format("{}: \"{}\" {} (permitted: {}){}", column_.name(),
                                      one_line(row.cells[column_.position].text, 40), what,
                                      permitted_values(*column_.rule, *column_.unit), hint));
    return column_.rule->permitted.max;
  }

  const DataColumn& column_;
  Problems& problems_;
  std::size_t below_zero_ = 0;
};

}  // namespace

ReadValues read_values(const CsvRows& table, const Header& header, Problems& problems) {
  ReadValues read;
  for (const auto& column : header.columns) {
    ColumnReading reading(column, problems);
    HourlyValues hourly{column, {}};
    hourly.values.reserve(table.rows.size());
    for (const auto& row : table.rows) hourly.values.push_back(reading.read(row));
    read.columns.push_back(std::move(hourly));
    if (auto note = reading.note(); !note.empty()) read.notes.push_back(std::move(note));
  }
  return read;
}

std::vector<HourlyValues> in_order_of_year(const std::vector<HourlyValues>& of_rows, const YearOrder& order) {
  std::vector<HourlyValues> of_slots;
  for (const auto& rows : of_rows) {
    HourlyValues hourly{rows.column, std::vector<std::optional<double>>(order.row_of_slot.size())};
    for (std::size_t slot = 0; slot < order.row_of_slot.size(); ++slot)
      if (const auto& row = order.row_of_slot[slot]) hourly.values[slot] = rows.values[*row];
    of_slots.push_back(std::move(hourly));
  }
  return of_slots;
}

}  // namespace dewgap::tools::weather
