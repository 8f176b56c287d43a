#include "support/reference.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <map>
#include <sstream>
#include <stdexcept>

namespace dewgap::test {
namespace {

struct Tally {
  int rows = 0;
  int known_differences = 0;
  double worst = 0.0;           // largest |computed - expected| of the rows that must hold
  double worst_relative = 0.0;  // the same over |expected|
};

double allowed_difference(const ReferenceRow& row) {
  const double tolerance = row.number("tolerance");
  return row.text("claim") == "percent" ? tolerance * std::abs(row.number("expected")) : tolerance;
}

void check_vocabulary(const ReferenceRow& row, std::string_view path) {
  const auto& claim = row.text("claim");
  const auto& status = row.text("status");
  EXPECT_TRUE(claim == "half_digit" || claim == "bound" || claim == "percent")
      << path << " line " << row.line() << ": claim '" << claim << "'";
  EXPECT_TRUE(status == "published" || status == "from_memory" || status == "computed")
      << path << " line " << row.line() << ": status '" << status << "'";
}

// One file a table, so that test programs that run side by side do not write into each other's.
void write_accuracy(std::string_view path,
                    const std::map<std::pair<std::string, std::string>, Tally>& tallies) {
  std::string name{path};
  std::replace(name.begin(), name.end(), '/', '-');
  std::ofstream out(std::string(DEWGAP_ACCURACY_DIR) + "/" + name);
  out << "table,claim,status,rows,known_differences,worst,worst_relative\n";
  for (const auto& [key, tally] : tallies) {
    out << path << ',' << key.first << ',' << key.second << ',' << tally.rows << ','
        << tally.known_differences << ',' << tally.worst << ',' << tally.worst_relative << '\n';
  }
}

std::string read_whole(const std::string& full) {
  std::ifstream in(full, std::ios::binary);
  if (!in) {
    throw std::runtime_error("table not found: " + full);
  }
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

}  // namespace

std::string read_reference_text(std::string_view path) {
  return read_whole(std::string(DEWGAP_REFERENCE_DIR) + "/" + std::string(path));
}

numerics::CsvTable read_test_table(std::string_view path) {
  numerics::CsvTable table(read_whole(std::string(DEWGAP_TESTS_DIR) + "/" + std::string(path)), path);
  if (table.row_count() == 0) {
    throw std::runtime_error("table is empty: " + std::string(path));
  }
  return table;
}

numerics::CsvTable read_reference(std::string_view path) {
  numerics::CsvTable table(read_reference_text(path), path);
  if (table.row_count() == 0) {
    throw std::runtime_error("reference table is empty: " + std::string(path));
  }
  return table;
}

void check_reference(std::string_view path, const std::function<double(const ReferenceRow&)>& compute,
                     double known_difference_limit) {
  const auto table = read_reference(path);
  std::map<std::pair<std::string, std::string>, Tally> tallies;
  for (std::size_t i = 0; i < table.row_count(); ++i) {
    const ReferenceRow row(table, i);
    check_vocabulary(row, path);
    const double expected = row.number("expected");
    const double allowed = allowed_difference(row);
    const double computed = compute(row);
    const double difference = std::abs(computed - expected);
    const bool inside = difference <= allowed;  // false for NaN
    auto& tally = tallies[{row.text("claim"), row.text("status")}];
    ++tally.rows;
    const auto where = std::string(path) + " line " + std::to_string(row.line());
    if (row.text("known_difference").empty()) {
      EXPECT_TRUE(inside) << where << ": expected " << expected << " within " << allowed << ", computed "
                          << computed;
      tally.worst = std::max(tally.worst, difference);
      tally.worst_relative = expected == 0.0
                                 ? tally.worst_relative
                                 : std::max(tally.worst_relative, difference / std::abs(expected));
    } else {
      ++tally.known_differences;
      EXPECT_FALSE(inside) << where << ": listed as a known difference but agrees; strike it off the list";
      EXPECT_LE(difference, known_difference_limit) << where << ": known difference, computed " << computed;
    }
  }
  write_accuracy(path, tallies);
}

}  // namespace dewgap::test
