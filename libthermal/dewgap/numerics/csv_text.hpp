// Reads the CSV tables that the library carries as text. Private to the library; tests use it for reference/
// too.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace dewgap::numerics {

/// A parsed table. Lines that start with '#' and empty lines are skipped; the first other line is the header.
/// Fields may be quoted with "..." ("" for a quote inside).
class CsvTable {
 public:
  /// Throws InvalidInput, naming `table_name` and the line, when a row's field count differs from the
  /// header's, a quote stays open or is followed by text, or a column name occurs twice; also when there is
  /// no header at all. A quoted field ends on its line. Lines may end in CR LF.
  CsvTable(std::string_view text, std::string_view table_name);

  std::size_t row_count() const { return rows_.size(); }
  /// Line of a row in the text, from 1.
  std::size_t line_of(std::size_t row) const { return lines_.at(row); }
  bool has_column(std::string_view column) const;
  /// The field as text. Throws InvalidInput for an unknown column.
  const std::string& text(std::size_t row, std::string_view column) const;
  /// The field as a finite number, written with a point whatever the locale; an empty field, text, blanks
  /// around the number, infinity or NaN throws InvalidInput with table, line and column.
  double number(std::size_t row, std::string_view column) const;
  /// As number(), but an empty field is nullopt.
  std::optional<double> optional_number(std::size_t row, std::string_view column) const;

 private:
  std::size_t column_index(std::string_view column) const;

  std::string name_;
  std::vector<std::string> header_;
  std::vector<std::vector<std::string>> rows_;
  std::vector<std::size_t> lines_;
};

}  // namespace dewgap::numerics
