#include <gtest/gtest.h>

#include <limits>
#include <set>
#include <string>

#include "dewgap/errors.hpp"
#include "dewgap/validity.hpp"

namespace dewgap {
namespace {

TEST(RequireInRange, BothEndsAreInside) {
  EXPECT_NO_THROW(require_in_range(1.0, {1.0, 2.0}, "x", "m"));
  EXPECT_NO_THROW(require_in_range(2.0, {1.0, 2.0}, "x", "m"));
}

TEST(RequireInRange, MessageHasFieldValueRangeAndUnit) {
  try {
    require_in_range(0.25, {1.0, 2.5}, "gap", "m");
    FAIL() << "accepted";
  } catch (const InvalidInput& error) {
    EXPECT_STREQ(error.what(), "gap is 0.25; permitted is 1 to 2.5 m");
    EXPECT_EQ(error.field(), "gap");
  }
}

TEST(RequireInRange, NanAndInfinityAreOutside) {
  const double infinity = std::numeric_limits<double>::infinity();
  EXPECT_THROW(require_in_range(std::numeric_limits<double>::quiet_NaN(), {0.0, 1.0}, "x", ""), InvalidInput);
  EXPECT_THROW(require_in_range(infinity, {0.0, 1.0}, "x", ""), InvalidInput);
  EXPECT_THROW(require_in_range(-infinity, {0.0, 1.0}, "x", ""), InvalidInput);
}

TEST(Explain, EveryFlagHasItsOwnSentence) {
  std::set<std::string> sentences{std::string(explain(ValidityFlag::none))};
  for (unsigned bit = 0; bit < 12; ++bit) {
    sentences.emplace(explain(static_cast<ValidityFlag>(1u << bit)));
  }
  EXPECT_EQ(sentences.size(), 13u);
  EXPECT_FALSE(sentences.contains("unknown flag"));
}

}  // namespace
}  // namespace dewgap
