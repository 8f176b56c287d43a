// A small generator of pseudo-random words, the same on every machine. Private to the library.
#pragma once

#include <cstdint>

namespace dewgap::numerics {

/// SplitMix64 of Steele, Lea and Flood (OOPSLA 2014): a good 64-bit word from each step of a counter.
class SplitMix64 {
 public:
  explicit SplitMix64(std::uint64_t seed) : state_(seed) {}

  std::uint64_t next() {
    state_ += 0x9e3779b97f4a7c15u;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
    return z ^ (z >> 31);
  }

  /// Midpoint of the cell of width 2^-52 that the next word's leading bits name: strictly inside (0, 1).
  double inside_unit_interval() { return (static_cast<double>(next() >> 12) + 0.5) * 0x1p-52; }

 private:
  std::uint64_t state_;
};

}  // namespace dewgap::numerics
