#include "dewgap/numerics/parallel.hpp"

#include <gtest/gtest.h>

#include <stdexcept>
#include <string>
#include <vector>

namespace dewgap::test {
namespace {

TEST(Parallel, EveryIndexIsDoneOnce) {
  std::vector<int> done(1000, 0);
  numerics::for_each_index(done.size(), [&](std::size_t i) { ++done[i]; });
  EXPECT_EQ(done, std::vector<int>(1000, 1));
  numerics::for_each_index(0, [](std::size_t) { FAIL(); });
}

TEST(Parallel, TheFirstExceptionByIndexIsThrownWhenAllHaveEnded) {
  std::vector<int> done(100, 0);
  try {
    numerics::for_each_index(done.size(), [&](std::size_t i) {
      ++done[i];
      if (i == 7 || i == 70) {
        throw std::runtime_error(std::to_string(i));
      }
    });
    FAIL();
  } catch (const std::runtime_error& error) {
    EXPECT_STREQ(error.what(), "7");
  }
  EXPECT_EQ(done, std::vector<int>(100, 1));
}

}  // namespace
}  // namespace dewgap::test
