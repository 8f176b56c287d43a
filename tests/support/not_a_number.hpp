// What is no number, for tests of what refuses it.
#pragma once

#include <limits>

namespace dewgap::test {

inline constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();

}  // namespace dewgap::test
