// Random gap cases from tests/gap/states.csv.
#pragma once

#include <cstdint>
#include <vector>

#include "dewgap/gap/steady.hpp"

namespace dewgap::test {

std::vector<GapCase> random_gap_cases(std::size_t count, std::uint64_t seed);

}  // namespace dewgap::test
