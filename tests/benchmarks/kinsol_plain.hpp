// The same stack given to SUNDIALS KINSOL as ISO 15099 writes its equations, from the library's public
// functions: two temperatures and two radiosities a layer, correlations and gas properties called at every
// evaluation, with an analytic Jacobian. What a user without this solver would hand to a general one.
#pragma once

#include <vector>

#include "dewgap/glazing/stack.hpp"

namespace dewgap::bench {

/// The equations' data: a vertical stack without air streams.
struct PlainStack {
  Stack stack;
  OutdoorClimate outdoors;
  RoomClimate room;

  std::size_t size() const { return 4 * stack.layer_count; }
  /// u holds for each layer the outer and inner face's temperature (K), then for each layer their
  /// radiosities.
  std::vector<double> start(const std::vector<double>& face_temperature_K) const;
  void residual(const double* u, double* f) const;
  /// Column by column; the matrix is zero on entry.
  void jacobian(const double* u, double* const* columns) const;
};

struct PlainAnswer {
  std::vector<double> face_temperature_K;
  int flag = 0;
  long iterations = 0;
};

/// Sets KINSOL up, solves and tears it down; the set-up is outside the time where `repetitions` solves share
/// it.
class KinsolPlain {
 public:
  explicit KinsolPlain(const PlainStack& problem);
  ~KinsolPlain();
  KinsolPlain(const KinsolPlain&) = delete;
  KinsolPlain& operator=(const KinsolPlain&) = delete;
  PlainAnswer solve(const std::vector<double>& start, double tolerance_W_m2);

 private:
  struct Memory;
  Memory* memory_;
};

}  // namespace dewgap::bench
