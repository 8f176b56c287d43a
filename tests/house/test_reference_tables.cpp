// Every table under reference/ keeps to the vocabulary, has its source beside it, and is used by a test.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <filesystem>
#include <iostream>
#include <map>
#include <set>

#include "dewgap/numerics/csv_text.hpp"
#include "house.hpp"

namespace dewgap::house {
namespace {

constexpr int least_published_values = 150;
constexpr std::array<std::string_view, 6> required_columns{"expected", "tolerance", "claim",
                                                           "status",   "exercises", "known_difference"};

std::vector<std::string> reference_tables() {
  return files_under("reference", {".csv"});
}

numerics::CsvTable open_table(const std::string& path) {
  return {read_text(path), path};
}

// Tables that hold something against the library. The others are their inputs: no `expected`, and no claim
// either.
std::vector<std::string> tables_of_expected_values() {
  std::vector<std::string> paths;
  for (const auto& path : reference_tables()) {
    const auto table = open_table(path);
    const bool expects = table.has_column("expected");
    EXPECT_TRUE(expects || !(table.has_column("claim") || table.has_column("tolerance"))) << path;
    if (expects) {
      paths.push_back(path);
    }
  }
  return paths;
}

// Half a unit of the last digit that is not a trailing zero of a whole number: "1500" 50, "0.20" 0.005,
// "1.5e-3" 5e-5.
double half_of_last_digit(std::string_view printed) {
  const auto exponent_at = printed.find_first_of("eE");
  const auto mantissa = printed.substr(0, exponent_at);
  int exponent = 0;
  if (exponent_at != std::string_view::npos) {
    std::from_chars(printed.data() + exponent_at + 1, printed.data() + printed.size(), exponent);
  }
  const auto point = mantissa.find('.');
  if (point != std::string_view::npos) {
    exponent -= static_cast<int>(mantissa.size() - point - 1);
  } else {
    const auto last = mantissa.find_last_not_of('0');
    exponent += static_cast<int>(mantissa.size() - 1 - (last == std::string_view::npos ? 0 : last));
  }
  return 0.5 * std::pow(10.0, exponent);
}

TEST(ReferenceTables, KeepToTheVocabulary) {
  const std::set<std::string> claims{"half_digit", "bound", "percent"};
  const std::set<std::string> statuses{"published", "from_memory", "computed"};
  for (const auto& path : tables_of_expected_values()) {
    const auto table = open_table(path);
    ASSERT_GT(table.row_count(), 0u) << path;
    for (const auto column : required_columns) {
      ASSERT_TRUE(table.has_column(column)) << path << ": column " << column;
    }
    for (std::size_t row = 0; row < table.row_count(); ++row) {
      const auto where = path + ":" + std::to_string(table.line_of(row));
      EXPECT_TRUE(claims.contains(table.text(row, "claim"))) << where;
      EXPECT_TRUE(statuses.contains(table.text(row, "status"))) << where;
      EXPECT_FALSE(table.text(row, "exercises").empty()) << where;
      EXPECT_TRUE(std::isfinite(table.number(row, "expected"))) << where;
      EXPECT_GE(table.number(row, "tolerance"), 0.0) << where;  // 0: a class, met or not
      if (table.text(row, "claim") == "percent") {
        EXPECT_LT(table.number(row, "tolerance"), 1.0) << where << ": a fraction, not per cent";
      }
    }
  }
}

TEST(ReferenceTables, AHalfDigitIsNoMoreThanHalfADigit) {
  EXPECT_DOUBLE_EQ(half_of_last_digit("1500"), 50.0);
  EXPECT_DOUBLE_EQ(half_of_last_digit("0.20"), 0.005);
  EXPECT_DOUBLE_EQ(half_of_last_digit("1.5e-3"), 5e-5);
  EXPECT_DOUBLE_EQ(half_of_last_digit("-7"), 0.5);
  for (const auto& path : tables_of_expected_values()) {
    const auto table = open_table(path);
    const bool derived = table.has_column("tolerance_from");  // says how it follows from other printed digits
    for (std::size_t row = 0; row < table.row_count(); ++row) {
      if (table.text(row, "claim") == "half_digit" &&
          !(derived && !table.text(row, "tolerance_from").empty())) {
        EXPECT_LE(table.number(row, "tolerance"),
                  half_of_last_digit(table.text(row, "expected")) * (1.0 + 1e-9))
            << path << ":" << table.line_of(row) << ": expected " << table.text(row, "expected");
      }
    }
  }
}

TEST(ReferenceTables, HoldNoNotANumber) {
  for (const auto& path : reference_tables()) {
    for (const auto& line : lines_of(read_text(path))) {
      std::string lower = "," + line + ",";
      std::transform(lower.begin(), lower.end(), lower.begin(),
                     [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
      for (const auto* word : {",nan,", ",-nan,", ",inf,", ",-inf,", ",n/a,"}) {
        EXPECT_EQ(lower.find(word), std::string::npos) << path << ": " << line;
      }
    }
  }
}

TEST(ReferenceTables, EachFolderSaysWhereItComesFrom) {
  for (const auto& path : reference_tables()) {
    const auto folder = std::filesystem::path(path).parent_path().generic_string();
    ASSERT_NE(folder, "reference") << path << ": a table lies in the folder of its source";
    EXPECT_TRUE(exists(folder + "/README.md")) << folder;
    EXPECT_TRUE(read_text(path).starts_with("#")) << path << ": starts with its citation";
  }
}

TEST(ReferenceTables, EachIsUsedByATest) {
  std::string tests;
  for (const auto& path : files_under("tests", {".cpp", ".hpp"})) {
    tests += read_text(path);
  }
  for (const auto& path : reference_tables()) {
    const auto name = path.substr(std::string("reference/").size());
    EXPECT_NE(tests.find("\"" + name + "\""), std::string::npos) << name << " is used by no test";
  }
}

TEST(ReferenceTables, HoldEnoughPublishedValues) {
  std::map<std::string, int> rows;
  for (const auto& path : tables_of_expected_values()) {
    const auto table = open_table(path);
    for (std::size_t row = 0; row < table.row_count(); ++row) {
      ++rows[table.text(row, "status") + ", " + table.text(row, "claim")];
    }
  }
  int published = 0;
  for (const auto& [kind, count] : rows) {
    std::cout << "reference values, " << kind << ": " << count << '\n';
    published +=
        kind.starts_with("published, half_digit") || kind.starts_with("published, bound") ? count : 0;
  }
  EXPECT_GE(published, least_published_values) << "published values held to a digit or a bound";
}

}  // namespace
}  // namespace dewgap::house
