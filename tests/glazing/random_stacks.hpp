// Random stacks drawn from the ranges of tests/glazing/states.csv; the same on every machine.
#pragma once

#include <cmath>
#include <cstdint>
#include <functional>
#include <random>

#include "dewgap/glazing/stack.hpp"

namespace dewgap::test {

struct RandomStack {
  Stack stack;
  OutdoorClimate outdoors;
  RoomClimate room;

  bool has_sources() const;
  bool has_stream() const;
  /// Sun and face heat of all layers.
  double sources_W_m2() const;
};

class Draw {
 public:
  explicit Draw(std::uint64_t seed) : engine_(seed) {}
  double unit() { return static_cast<double>(engine_() >> 11) * 0x1p-53; }
  double between(double low, double high) { return low + (high - low) * unit(); }
  double log_between(double low, double high) { return low * std::pow(high / low, unit()); }
  bool chance(double share) { return unit() < share; }

 private:
  std::mt19937_64 engine_;
};

/// Calls check(state) for every stack of every row, with the row's name and the stack's number traced when it
/// fails. `one_in`: takes only every so many-th stack.
void for_each_random_stack(const std::function<void(const RandomStack&)>& check, int one_in = 1);

}  // namespace dewgap::test
