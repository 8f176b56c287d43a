#include "tools/weather/csv_rows_kernel.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cmath>

namespace dewgap::tools::weather {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

[[noreturn]] void stop(Problems& problems, TextMark mark, std::string what) {
  problems.add(mark, std::move(what));
  problems.stop_if_any();
  throw std::logic_error("a problem was told");  // not reached
}

/// The line up to its end, which is taken off the text.
std::string_view take_line(std::string_view& text) {
  const auto end = text.find('\n');
  auto line = text.substr(0, end);
  text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  if (line.ends_with('\r')) line.remove_suffix(1);
  return line;
}

/// A cell begins at `at`; its end is the next comma outside quotes. Nothing when a quote stays open or text
/// follows it.
struct CellSpan {
  Cell cell;
  std::size_t end;
};
std::optional<CellSpan> cell_at(std::string_view line, std::size_t at) {
  const auto begin = line.find_first_not_of(" \t", at);
  if (begin == std::string_view::npos || line[begin] != '"') {
    const auto end = std::min(line.find(',', at), line.size());
    const auto from = std::min(begin == std::string_view::npos ? end : begin, end);
    return CellSpan{{without_blanks(line.substr(from, end - from)), static_cast<int>(from) + 1}, end};
  }
  auto close = line.find('"', begin + 1);
  while (close != std::string_view::npos && line.substr(close, 2) == "\"\"")
    close = line.find('"', close + 2);
  if (close == std::string_view::npos) return std::nullopt;
  const auto end = std::min(line.find(',', close), line.size());
  if (!without_blanks(line.substr(close + 1, end - close - 1)).empty()) return std::nullopt;
  return CellSpan{{without_blanks(line.substr(begin + 1, close - begin - 1)), static_cast<int>(begin) + 1},
                  end};
}

std::optional<Row> row_of(std::string_view line, int number, std::size_t expected_cells) {
  Row row{.line = number, .cells = {}};
  row.cells.reserve(expected_cells);
  std::size_t at = 0;
  while (at <= line.size()) {
    const auto span = cell_at(line, at);
    if (!span) return std::nullopt;
    row.cells.push_back(span->cell);
    at = span->end + 1;
  }
  return row;
}

void require_text(std::string_view text, Problems& problems) {
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF") ||
      text.find('\0') != std::string_view::npos)
    stop(problems, {}, "is not plain text; save it as CSV, UTF-8");
}

void require_commas(const Row& header, Problems& problems) {
  if (header.cells.size() > 1) return;
  const auto separator = header.cells.front().text.find_first_of(";\t");
  if (separator != std::string_view::npos)
    stop(problems, {header.line, header.cells.front().column + static_cast<int>(separator)},
         "columns are separated by commas here, and numbers written with a point");
}

void add_row(CsvRows& table, Row row, Problems& problems) {
  const auto expected = table.header.cells.size();
  const auto found = row.cells.size();
  if (found == expected) {
    table.rows.push_back(std::move(row));
    return;
  }
  problems.add_of_kind("cells", {row.line, 1},
                       fmt::format("has {} values, but the header names {} columns", found, expected));
}

}  // namespace

std::string_view without_blanks(std::string_view text) {
  constexpr std::string_view blanks = " \t";
  const auto begin = text.find_first_not_of(blanks);
  if (begin == std::string_view::npos) return {};
  return text.substr(begin, text.find_last_not_of(blanks) - begin + 1);
}

std::optional<double> number_of(std::string_view text) {
  if (text.size() > 1 && text[0] == '+' && text[1] != '-') text.remove_prefix(1);
  double value = 0.0;
  const auto* end = text.data() + text.size();
  const auto [stopped, error] = std::from_chars(text.data(), end, value);
  if (error != std::errc() || stopped != end || !std::isfinite(value)) return std::nullopt;
  return value;
}

CsvRows read_rows(std::string_view text, Problems& problems) {
  require_text(text, problems);
  if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
  CsvRows table;
  int number = 0;
  while (!text.empty()) {
    const auto line = take_line(text);
    ++number;
    const auto inner = without_blanks(line);
    const bool before_header = table.header.cells.empty();
    if (inner.empty()) continue;
    if (inner.front() == '#') {
      if (before_header) table.comments.push_back({number, {{without_blanks(inner.substr(1)), 1}}});
      continue;
    }
    auto row = row_of(line, number, table.header.cells.size());
    if (!row) {
      problems.add_of_kind("quotes", {number, 1}, "a quote stays open, or text follows it");
      if (before_header) problems.stop_if_any();
    } else if (before_header) {
      table.header = std::move(*row);
      require_commas(table.header, problems);
    } else {
      add_row(table, std::move(*row), problems);
    }
  }
  if (table.header.cells.empty()) stop(problems, {}, "is empty: there is no header that names the columns");
  if (table.rows.empty() && problems.empty())
    stop(problems, {table.header.line, 1}, "there is a header, but no hour follows it");
  return table;
}

}  // namespace dewgap::tools::weather
