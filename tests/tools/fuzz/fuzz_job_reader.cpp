// Random bytes as a job file and as a money file: the reader must end with an answer or with problems, never
// worse.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "tools/job/house_reader.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(bytes), size);
  for (const auto& read : {dewgap::tools::read_job(text), dewgap::tools::read_money(text)})
    for (const auto& problem : read.problems)
      if (problem.what.empty() || problem.mark.line < 1 || problem.mark.column < 1) std::abort();
  for (const auto& problem : dewgap::tools::read_house(text).problems)
    if (problem.what.empty() || problem.mark.line < 1 || problem.mark.column < 1) std::abort();
  return 0;
}
