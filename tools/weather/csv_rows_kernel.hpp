// A CSV text as rows of cells that know where they stand.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "tools/weather/problems_kernel.hpp"

namespace dewgap::tools::weather {

/// Without the blanks and quotes round it. Views the text.
struct Cell {
  std::string_view text;
  int column = 1;
};

struct Row {
  int line = 1;
  std::vector<Cell> cells;

  TextMark mark_of(std::size_t cell) const { return {line, cells[cell].column}; }
};

/// Every row has as many cells as the header.
struct CsvRows {
  std::vector<Row> comments;  ///< above the header, '#' taken off, one cell each
  Row header;
  std::vector<Row> rows;
};

std::string_view without_blanks(std::string_view text);
/// A finite number written with a point; nothing when the text is anything else.
std::optional<double> number_of(std::string_view text);

/// Rows that do not fit the header are told and left out. What is no such text at all is told and stops.
CsvRows read_rows(std::string_view text, Problems& problems);

}  // namespace dewgap::tools::weather
