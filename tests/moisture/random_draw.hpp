// Random numbers for law tests, the same with every standard library.
#pragma once

#include <cmath>
#include <cstdint>
#include <functional>
#include <random>

#include "support/reference.hpp"

namespace dewgap::test {

class RandomDraw {
 public:
  explicit RandomDraw(std::uint64_t seed) : engine_(seed) {}
  double between(double low, double high) { return low + (high - low) * unit(); }
  double log_between(double low, double high) { return low * std::pow(high / low, unit()); }
  /// Nothing in one case of `in`.
  double or_none(int in, double value) { return unit() * in < 1.0 ? 0.0 : value; }

 private:
  double unit() { return static_cast<double>(engine_() >> 11) * 0x1p-53; }
  std::mt19937_64 engine_;
};

/// A row of a table of states, by column.
using Limits = std::function<double(const char*)>;

/// Calls visit(draw, limits, name) for each case of each row of tests/<path>; columns name, seed, cases.
inline void for_each_drawn_case(
    std::string_view path, const std::function<void(RandomDraw&, const Limits&, const std::string&)>& visit) {
  const auto table = read_test_table(path);
  for (std::size_t row = 0; row < table.row_count(); ++row) {
    RandomDraw draw(static_cast<std::uint64_t>(table.number(row, "seed")));
    const Limits limits = [&](const char* column) { return table.number(row, column); };
    const int cases = static_cast<int>(table.number(row, "cases"));
    for (int i = 0; i < cases; ++i) {
      visit(draw, limits, table.text(row, "name") + ", case " + std::to_string(i));
    }
  }
}

}  // namespace dewgap::test
