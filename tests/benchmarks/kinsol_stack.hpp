// The stack's equations solved by SUNDIALS KINSOL: Newton, dense, the same analytic Jacobian.
#pragma once

#include <memory>

#include "dewgap/glazing/stack_ends_kernel.hpp"

namespace dewgap::bench {

template <std::size_t Layers>
struct KinsolAnswer {
  glazing_kernel::FaceVector<Layers> solution{};
  int flag = 0;  // KINSOL's own, negative for failure
  long iterations = 0;
};

/// Set up once for one size of system; solves any equations of that size.
template <std::size_t Layers>
class KinsolStack {
 public:
  using Equations = glazing_kernel::RealEquations<Layers>;

  KinsolStack();
  ~KinsolStack();
  KinsolStack(const KinsolStack&) = delete;
  KinsolStack& operator=(const KinsolStack&) = delete;

  /// Until the largest |residual| is at most `tolerance_W_m2`.
  KinsolAnswer<Layers> solve(const Equations& equations, const glazing_kernel::FaceVector<Layers>& start,
                             double tolerance_W_m2);

 private:
  struct Memory;
  std::unique_ptr<Memory> memory_;
};

extern template class KinsolStack<2>;
extern template class KinsolStack<3>;

}  // namespace dewgap::bench
