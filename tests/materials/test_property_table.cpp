#include <gtest/gtest.h>

#include <string>

#include "dewgap/errors.hpp"
#include "dewgap/materials/materials_kernel.hpp"

namespace dewgap::materials_kernel {
namespace {

const std::string header = "kind,property,low,best,high,unit,source,status\n";

TEST(PropertyTable, ReadsARange) {
  const PropertyTable table(header + "oak,density,600,700,800,kg/m3,some book,published\n");
  const auto range = table.range("oak", "density", "kg/m3");
  EXPECT_EQ(range.low, 600.0);
  EXPECT_EQ(range.best, 700.0);
  EXPECT_EQ(range.high, 800.0);
}

TEST(PropertyTable, LowBestAndHighMayBeEqual) {
  EXPECT_NO_THROW(PropertyTable(header + "oak,density,700,700,700,kg/m3,some book,published\n"));
}

TEST(PropertyTable, MissingRowOrOtherUnitThrows) {
  const PropertyTable table(header + "oak,density,600,700,800,kg/m3,some book,published\n");
  EXPECT_THROW(table.range("oak", "conductivity", "W/(m K)"), InvalidInput);
  EXPECT_THROW(table.range("elm", "density", "kg/m3"), InvalidInput);
  EXPECT_THROW(table.range("oak", "density", "g/cm3"), InvalidInput);
}

TEST(PropertyTable, FaultyRowsThrow) {
  for (const std::string row :
       {"oak,density,700,600,800,kg/m3,book,published",  // best below low
        "oak,density,600,900,800,kg/m3,book,published",  // best above high
        "oak,density,800,700,600,kg/m3,book,published",  // reversed
        "oak,density,,700,800,kg/m3,book,published",     // low missing
        "oak,density,600,,800,kg/m3,book,published",     // best missing
        "oak,density,600,700,,kg/m3,book,published",     // high missing
        "oak,density,600,nan,800,kg/m3,book,published",  // not a number
        "oak,density,600-800,700,800,kg/m3,book,published", ",density,600,700,800,kg/m3,book,published",
        "oak,,600,700,800,kg/m3,book,published", "oak,density,600,700,800,,book,published",
        "oak,density,600,700,800,kg/m3,,published", "oak,density,600,700,800,kg/m3,book,",
        "oak,density,600,700,800,kg/m3,book,perhaps", "oak,density,600,700,800,kg/m3,book"}) {
    EXPECT_THROW(PropertyTable(header + row + "\n"), InvalidInput) << row;
  }
  const std::string row = "oak,density,600,700,800,kg/m3,book,published\n";
  EXPECT_THROW(PropertyTable(header + row + row), InvalidInput) << "occurs twice";
  EXPECT_THROW(
      PropertyTable("kind,property,low,high,unit,source,status\noak,density,1,2,kg/m3,book,published\n"),
      InvalidInput)
      << "a column is missing";
}

}  // namespace
}  // namespace dewgap::materials_kernel
