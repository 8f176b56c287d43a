#include "dewgap/numerics/csv_text.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <utility>

#include "dewgap/errors.hpp"

namespace dewgap::numerics {
namespace {

/// Takes the text apart at line ends ("\n" or "\r\n") and counts the lines.
class LineReader {
 public:
  explicit LineReader(std::string_view text) : rest_(text) {}

  std::optional<std::string_view> next() {
    if (rest_.empty()) {
      return std::nullopt;
    }
    const auto end = rest_.find('\n');
    std::string_view line = rest_.substr(0, end);
    rest_ = end == std::string_view::npos ? std::string_view{} : rest_.substr(end + 1);
    ++line_number_;
    if (!line.empty() && line.back() == '\r') {
      line.remove_suffix(1);
    }
    return line;
  }
  std::size_t line_number() const { return line_number_; }

 private:
  std::string_view rest_;
  std::size_t line_number_ = 0;
};

bool carries_no_data(std::string_view line) {
  return line.find_first_not_of(" \t") == std::string_view::npos || line.front() == '#';
}

InvalidInput fault(const std::string& table, std::size_t line, const std::string& why) {
  return InvalidInput(table, "line " + std::to_string(line) + ": " + why);
}

struct Field {
  std::string text;
  std::size_t end = 0;  // index of the comma or the end of the line
};

// A field that starts with a quote: nullopt when the quote stays open.
std::optional<Field> quoted_field(std::string_view line, std::size_t start) {
  Field field;
  for (std::size_t i = start + 1; i < line.size(); ++i) {
    if (line[i] != '"') {
      field.text += line[i];
    } else if (i + 1 < line.size() && line[i + 1] == '"') {
      field.text += '"';
      ++i;
    } else {
      field.end = i + 1;
      return field;
    }
  }
  return std::nullopt;
}

Field plain_field(std::string_view line, std::size_t start) {
  const auto end = std::min(line.find(',', start), line.size());
  return {std::string(line.substr(start, end - start)), end};
}

std::vector<std::string> split(std::string_view line, const std::string& table, std::size_t line_number) {
  std::vector<std::string> fields;
  for (std::size_t start = 0;;) {
    const bool quoted = start < line.size() && line[start] == '"';
    auto field = quoted ? quoted_field(line, start) : plain_field(line, start);
    if (!field) {
      throw fault(table, line_number, "a quote stays open");
    }
    fields.push_back(std::move(field->text));
    if (field->end == line.size()) {
      return fields;
    }
    if (line[field->end] != ',') {
      throw fault(table, line_number, "text follows a closing quote");
    }
    start = field->end + 1;
  }
}

void require_distinct(std::vector<std::string> names, const std::string& table, std::size_t line_number) {
  std::sort(names.begin(), names.end());
  const auto twice = std::adjacent_find(names.begin(), names.end());
  if (twice != names.end()) {
    throw fault(table, line_number, "column '" + *twice + "' occurs twice");
  }
}

}  // namespace

CsvTable::CsvTable(std::string_view text, std::string_view table_name) : name_(table_name) {
  LineReader reader(text);
  while (const auto line = reader.next()) {
    if (carries_no_data(*line)) {
      continue;
    }
    auto fields = split(*line, name_, reader.line_number());
    if (header_.empty()) {
      require_distinct(fields, name_, reader.line_number());
      header_ = std::move(fields);
      continue;
    }
    if (fields.size() != header_.size()) {
      throw fault(
          name_, reader.line_number(),
          std::to_string(fields.size()) + " fields where the header has " + std::to_string(header_.size()));
    }
    rows_.push_back(std::move(fields));
    lines_.push_back(reader.line_number());
  }
  if (header_.empty()) {
    throw InvalidInput(name_, "has no header line");
  }
}

bool CsvTable::has_column(std::string_view column) const {
  return std::find(header_.begin(), header_.end(), column) != header_.end();
}

std::size_t CsvTable::column_index(std::string_view column) const {
  const auto found = std::find(header_.begin(), header_.end(), column);
  if (found == header_.end()) {
    throw InvalidInput(name_, "has no column '" + std::string(column) + "'");
  }
  return static_cast<std::size_t>(found - header_.begin());
}

const std::string& CsvTable::text(std::size_t row, std::string_view column) const {
  return rows_.at(row).at(column_index(column));
}

double CsvTable::number(std::size_t row, std::string_view column) const {
  const std::string& field = text(row, column);
  double value = 0.0;
  const auto [end, error] = std::from_chars(field.data(), field.data() + field.size(), value);
  const bool whole_field = error == std::errc{} && end == field.data() + field.size();
  if (!whole_field || !std::isfinite(value)) {
    throw fault(name_, line_of(row), "column '" + std::string(column) + "': '" + field + "' is not a number");
  }
  return value;
}

std::optional<double> CsvTable::optional_number(std::size_t row, std::string_view column) const {
  if (text(row, column).empty()) {
    return std::nullopt;
  }
  return number(row, column);
}

}  // namespace dewgap::numerics
