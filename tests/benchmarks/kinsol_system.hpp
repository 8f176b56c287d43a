// A system of equations handed to SUNDIALS KINSOL: Newton, dense, analytic Jacobian, set up once and used
// again.
#pragma once

#include <kinsol/kinsol.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

#include <algorithm>
#include <array>
#include <stdexcept>

namespace dewgap::bench {

/// Equations has `size`, residual(u, f) and jacobian(u, columns), which KINSOL asks for at the point of the
/// last residual.
template <class Equations>
class KinsolSystem {
 public:
  static constexpr std::size_t size = Equations::size;
  using Unknowns = std::array<double, size>;

  struct Answer {
    Unknowns unknowns{};
    int flag = 0;  ///< KINSOL's own: 0 the residual's norm is met, negative for failure
    long iterations = 0;
  };

  /// Typical sizes of the unknowns; Newton's steps are bounded by them.
  explicit KinsolSystem(Equations& equations, const Unknowns& typical) {
    const auto n = static_cast<sunindextype>(size);
    require(SUNContext_Create(nullptr, &context_));
    state_ = N_VNew_Serial(n, context_);
    unknown_scale_ = N_VNew_Serial(n, context_);
    residual_scale_ = N_VNew_Serial(n, context_);
    std::transform(typical.begin(), typical.end(), NV_DATA_S(unknown_scale_),
                   [](double one) { return 1.0 / one; });
    matrix_ = SUNDenseMatrix(n, n, context_);
    linear_ = SUNLinSol_Dense(state_, matrix_, context_);
    kinsol_ = KINCreate(context_);
    require(KINInit(kinsol_, residual, state_));
    require(KINSetUserData(kinsol_, &equations));
    require(KINSetLinearSolver(kinsol_, linear_, matrix_));
    require(KINSetJacFn(kinsol_, jacobian));
    require(KINSetMaxSetupCalls(
        kinsol_, 1));  // a Jacobian each iteration: one in 2, 4 or 10 (usual) takes over twice as long here
    require(KINSetScaledStepTol(kinsol_, 1e-15));
    require(KINSetErrHandlerFn(kinsol_, say_nothing, nullptr));  // failures are told by the flag
  }
  ~KinsolSystem() {
    KINFree(&kinsol_);
    SUNLinSolFree(linear_);
    SUNMatDestroy(matrix_);
    N_VDestroy(state_);
    N_VDestroy(unknown_scale_);
    N_VDestroy(residual_scale_);
    SUNContext_Free(&context_);
  }
  KinsolSystem(const KinsolSystem&) = delete;
  KinsolSystem& operator=(const KinsolSystem&) = delete;

  void set_tolerance(double largest_scaled_residual) {
    require(KINSetFuncNormTol(kinsol_, largest_scaled_residual));
  }

  /// strategy: KIN_NONE or KIN_LINESEARCH.
  Answer solve(const Unknowns& start, const Unknowns& residual_scale, int strategy) {
    std::copy(start.begin(), start.end(), NV_DATA_S(state_));
    std::copy(residual_scale.begin(), residual_scale.end(), NV_DATA_S(residual_scale_));
    Answer answer;
    answer.flag = KINSol(kinsol_, state_, strategy, unknown_scale_, residual_scale_);
    std::copy_n(NV_DATA_S(state_), size, answer.unknowns.begin());
    KINGetNumNonlinSolvIters(kinsol_, &answer.iterations);
    return answer;
  }

 private:
  static int residual(N_Vector u, N_Vector f, void* user) {
    try {
      static_cast<Equations*>(user)->residual(NV_DATA_S(u), NV_DATA_S(f));
    } catch (const std::exception&) {
      return 1;  // outside the correlations' range: KINSOL may try a shorter step
    }
    return 0;
  }
  static int jacobian(N_Vector u, N_Vector, SUNMatrix matrix, void* user, N_Vector, N_Vector) {
    static_cast<const Equations*>(user)->jacobian(NV_DATA_S(u), SM_COLS_D(matrix));
    return 0;
  }
  static void say_nothing(int, const char*, const char*, char*, void*) {}
  static void require(int flag) {
    if (flag < 0) {
      throw std::runtime_error("KINSOL could not be set up");
    }
  }

  SUNContext context_ = nullptr;
  N_Vector state_ = nullptr;
  N_Vector unknown_scale_ = nullptr;
  N_Vector residual_scale_ = nullptr;
  SUNMatrix matrix_ = nullptr;
  SUNLinearSolver linear_ = nullptr;
  void* kinsol_ = nullptr;
};

}  // namespace dewgap::bench
