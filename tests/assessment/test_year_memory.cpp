// A year of hours takes no memory that grows with the hours: allocations are counted.
#include <gtest/gtest.h>

#include <atomic>
#include <cstdlib>
#include <new>

#include "assessment/year_cases.hpp"

namespace {
std::atomic<std::size_t> allocations{0};
}  // namespace

// Not inlined: g++ would take the pair for a mismatch of new and free.
[[gnu::noinline]] void* operator new(std::size_t bytes) {
  ++allocations;
  void* memory = std::malloc(bytes == 0 ? 1 : bytes);
  if (memory == nullptr) {
    throw std::bad_alloc();
  }
  return memory;
}
[[gnu::noinline]] void operator delete(void* memory) noexcept {
  std::free(memory);
}
[[gnu::noinline]] void operator delete(void* memory, std::size_t) noexcept {
  std::free(memory);
}

namespace dewgap::test {
namespace {

std::size_t allocations_of(const YearSetting& year, const UnknownValues& sample) {
  const std::size_t before = allocations;
  run_sample_year(year, sample);
  return allocations - before;
}

TEST(YearMemory, NoAllocationInTheHours) {
  auto survey = worn_sash_survey();
  survey.sheet.curtain_gap_m = 0.08;
  const YearCase at(survey);
  const auto sample = damp_sample(survey);
  const auto month = cut(at.year, first_of_december, month_h);
  allocations_of(month, sample);  // tables that are made once
  const std::size_t in_a_month = allocations_of(month, sample);
  EXPECT_GT(in_a_month, 0U);
  EXPECT_EQ(allocations_of(cut(at.year, first_of_december, 3 * month_h), sample), in_a_month);
}

}  // namespace
}  // namespace dewgap::test
