// Holds computed values against the published tables under reference/.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "dewgap/numerics/csv_text.hpp"

namespace dewgap::test {

/// A row of a reference table.
class ReferenceRow {
 public:
  ReferenceRow(const numerics::CsvTable& table, std::size_t row) : table_(table), row_(row) {}
  double number(std::string_view column) const { return table_.number(row_, column); }
  std::optional<double> optional_number(std::string_view column) const {
    return table_.optional_number(row_, column);
  }
  const std::string& text(std::string_view column) const { return table_.text(row_, column); }
  std::size_t line() const { return table_.line_of(row_); }

 private:
  const numerics::CsvTable& table_;
  std::size_t row_;
};

/// Checks every row of reference/<path> (a CSV): |compute(row) - expected| <= tolerance.
///
/// Columns that every table has: `expected`, `tolerance` (same unit), `claim`, `status`, `known_difference`.
/// claim: half_digit (half a unit of the last printed digit), bound (a stated error bound), percent (an
/// accuracy claim, reported apart; `tolerance` is then a fraction of expected). status: published,
/// from_memory, computed. known_difference: empty, or the reason why the row lies beyond its tolerance. Such
/// a row must really lie beyond it, and at most `known_difference_limit` beyond expected.
///
/// A NaN, an empty table or a missing file fails. Each row is counted for the accuracy table.
void check_reference(std::string_view path, const std::function<double(const ReferenceRow&)>& compute,
                     double known_difference_limit = 0.0);

/// The table itself, for tests that need more than one number a row. Fails the test when it is missing or
/// empty.
numerics::CsvTable read_reference(std::string_view path);

/// A table of tests/: states that laws are drawn from.
numerics::CsvTable read_test_table(std::string_view path);

/// Whole text of a file under reference/.
std::string read_reference_text(std::string_view path);

}  // namespace dewgap::test
