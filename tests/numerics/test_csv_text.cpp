#include <gtest/gtest.h>

#include <string>

#include "dewgap/errors.hpp"
#include "dewgap/numerics/csv_text.hpp"

namespace dewgap::numerics {
namespace {

std::string message_of(std::string_view text) {
  try {
    const CsvTable table(text, "some table");
  } catch (const InvalidInput& error) {
    return error.what();
  }
  return "accepted";
}

TEST(CsvText, ReadsHeaderRowsAndSkipsComments) {
  const CsvTable table("# a comment\n\na,b\n1,x\n# between\n   \n2,y", "t");
  ASSERT_EQ(table.row_count(), 2u);
  EXPECT_EQ(table.number(0, "a"), 1.0);
  EXPECT_EQ(table.text(1, "b"), "y");
  EXPECT_EQ(table.line_of(0), 4u);
  EXPECT_EQ(table.line_of(1), 7u);
  EXPECT_TRUE(table.has_column("b"));
  EXPECT_FALSE(table.has_column("c"));
}

TEST(CsvText, QuotedFieldsHoldCommasAndQuotes) {
  const CsvTable table("name,note\n\"a, b\",\"say \"\"so\"\"\"\n\"\",plain\n", "t");
  EXPECT_EQ(table.text(0, "name"), "a, b");
  EXPECT_EQ(table.text(0, "note"), "say \"so\"");
  EXPECT_EQ(table.text(1, "name"), "");
}

TEST(CsvText, LinesMayEndInCarriageReturn) {
  const CsvTable table("a,b\r\n1,\r\n\r\n", "t");
  ASSERT_EQ(table.row_count(), 1u);
  EXPECT_EQ(table.text(0, "b"), "");
}

TEST(CsvText, HeaderAloneHasNoRows) {
  EXPECT_EQ(CsvTable("a,b\n", "t").row_count(), 0u);
}

TEST(CsvText, FaultsNameTableAndLine) {
  EXPECT_EQ(message_of("a,b\n1\n"), "some table: line 2: 1 fields where the header has 2");
  EXPECT_EQ(message_of("a,b\n1,2,3\n"), "some table: line 2: 3 fields where the header has 2");
  EXPECT_EQ(message_of("a\n\"open\n"), "some table: line 2: a quote stays open");
  EXPECT_EQ(message_of("a\n\"x\"y\n"), "some table: line 2: text follows a closing quote");
  EXPECT_EQ(message_of("# c\na,b,a\n"), "some table: line 2: column 'a' occurs twice");
  EXPECT_EQ(message_of("# only a comment\n"), "some table: has no header line");
  EXPECT_EQ(message_of(""), "some table: has no header line");
}

TEST(CsvText, NumbersAreFiniteAndFillTheField) {
  for (const std::string good : {"-1.5e-3", "0", "1e300", "007"}) {
    EXPECT_EQ(CsvTable("v,w\n" + good + ",\n", "t").number(0, "v"), std::stod(good)) << good;
  }
  for (const std::string bad :
       {"", "nan", "inf", "-inf", "1e999", "1.5 ", " 1", "1.5m", "0x10", "one", "1;5", "+1"}) {
    const CsvTable table("v,w\n" + bad + ",\n", "t");
    EXPECT_THROW(table.number(0, "v"), InvalidInput) << "'" << bad << "'";
  }
}

TEST(CsvText, EmptyOptionalNumberIsNone) {
  const CsvTable table("v,w\n,2\nx,nan\n", "t");
  EXPECT_FALSE(table.optional_number(0, "v").has_value());
  EXPECT_EQ(table.optional_number(0, "w"), 2.0);
  EXPECT_THROW(table.optional_number(1, "v"), InvalidInput);
  EXPECT_THROW(table.optional_number(1, "w"), InvalidInput);
}

TEST(CsvText, UnknownColumnThrows) {
  const CsvTable table("v\n1\n", "t");
  EXPECT_THROW(table.text(0, "w"), InvalidInput);
  EXPECT_THROW(table.number(0, "w"), InvalidInput);
  EXPECT_THROW(table.optional_number(0, "w"), InvalidInput);
}

}  // namespace
}  // namespace dewgap::numerics
