// Random networks drawn from the ranges of tests/airflow/states.csv; the same on every machine.
#pragma once

#include <cstdint>
#include <functional>
#include <random>
#include <string>
#include <vector>

#include "dewgap/airflow/gap_network.hpp"
#include "support/reference.hpp"

namespace dewgap::test {

struct RandomState {
  GapNetwork network;
  AirDensities densities;
  double pressure_Pa = 0.0;
};

class Draw {
 public:
  explicit Draw(std::uint64_t seed) : engine_(seed) {}
  double unit() { return static_cast<double>(engine_() >> 11) * 0x1p-53; }
  double between(double low, double high) { return low + (high - low) * unit(); }
  double log_between(double low, double high);
  int integer(int low, int high) { return low + static_cast<int>(unit() * (high - low + 1)); }

 private:
  std::mt19937_64 engine_;
};

/// Calls check(state) for every network of every row, with the row's name traced.
void for_each_random_state(const std::function<void(const RandomState&)>& check);

double sum_in(const GapFlows& flows);
double sum_out(const GapFlows& flows);

}  // namespace dewgap::test
