#include "kinsol_stack.hpp"

#include <kinsol/kinsol.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

#include <algorithm>
#include <stdexcept>
#include <string>

namespace dewgap::bench {

using glazing_kernel::FaceVector;
using glazing_kernel::RealEquations;

namespace {

// The equations give residual and Jacobian in one evaluation. KINSOL asks for the Jacobian at the point where
// it last asked for the residual, so the evaluation is kept and KINSOL never pays for it twice.
template <std::size_t Layers>
struct Problem {
  const RealEquations<Layers>* equations = nullptr;
  numerics::NewtonPoint<2 * Layers> last;
};

template <std::size_t Layers>
FaceVector<Layers> to_vector(N_Vector values) {
  FaceVector<Layers> x{};
  std::copy_n(NV_DATA_S(values), 2 * Layers, x.begin());
  return x;
}

template <std::size_t Layers>
int residual(N_Vector u, N_Vector f, void* user) {
  auto& problem = *static_cast<Problem<Layers>*>(user);
  problem.last = problem.equations->evaluate(to_vector<Layers>(u));
  std::copy_n(problem.last.residual.begin(), 2 * Layers, NV_DATA_S(f));
  return 0;
}

template <std::size_t Layers>
int jacobian(N_Vector, N_Vector, SUNMatrix matrix, void* user, N_Vector, N_Vector) {
  const auto& problem = *static_cast<Problem<Layers>*>(user);
  for (std::size_t column = 0; column < 2 * Layers; ++column) {
    sunrealtype* const entries = SM_COLUMN_D(matrix, static_cast<sunindextype>(column));
    for (std::size_t row = 0; row < 2 * Layers; ++row) {
      entries[row] = problem.last.jacobian(row, column);
    }
  }
  return 0;
}

void require_success(int flag, const char* what) {
  if (flag < 0) {
    throw std::runtime_error(std::string("KINSOL: ") + what);
  }
}

}  // namespace

template <std::size_t Layers>
struct KinsolStack<Layers>::Memory {
  SUNContext context = nullptr;
  N_Vector state = nullptr;
  N_Vector ones = nullptr;
  SUNMatrix matrix = nullptr;
  SUNLinearSolver linear = nullptr;
  void* kinsol = nullptr;
  Problem<Layers> problem;
};

template <std::size_t Layers>
KinsolStack<Layers>::KinsolStack() : memory_(std::make_unique<Memory>()) {
  auto& m = *memory_;
  const auto n = static_cast<sunindextype>(2 * Layers);
  require_success(SUNContext_Create(nullptr, &m.context), "context");
  m.state = N_VNew_Serial(n, m.context);
  m.ones = N_VNew_Serial(n, m.context);
  N_VConst(1.0, m.ones);
  m.matrix = SUNDenseMatrix(n, n, m.context);
  m.linear = SUNLinSol_Dense(m.state, m.matrix, m.context);
  m.kinsol = KINCreate(m.context);
  require_success(KINInit(m.kinsol, residual<Layers>, m.state), "init");
  require_success(KINSetUserData(m.kinsol, &m.problem), "user data");
  require_success(KINSetLinearSolver(m.kinsol, m.linear, m.matrix), "linear solver");
  require_success(KINSetJacFn(m.kinsol, jacobian<Layers>), "Jacobian");
  require_success(KINSetMaxSetupCalls(m.kinsol, 1), "a new Jacobian each iteration");
  require_success(KINSetScaledStepTol(m.kinsol, 1e-15), "step tolerance");
}

template <std::size_t Layers>
KinsolStack<Layers>::~KinsolStack() {
  auto& m = *memory_;
  KINFree(&m.kinsol);
  SUNLinSolFree(m.linear);
  SUNMatDestroy(m.matrix);
  N_VDestroy(m.state);
  N_VDestroy(m.ones);
  SUNContext_Free(&m.context);
}

template <std::size_t Layers>
KinsolAnswer<Layers> KinsolStack<Layers>::solve(const Equations& equations, const FaceVector<Layers>& start,
                                                double tolerance_W_m2) {
  auto& m = *memory_;
  m.problem.equations = &equations;
  std::copy_n(start.begin(), 2 * Layers, NV_DATA_S(m.state));
  require_success(KINSetFuncNormTol(m.kinsol, tolerance_W_m2), "tolerance");
  KinsolAnswer<Layers> answer;
  answer.flag = KINSol(m.kinsol, m.state, KIN_NONE, m.ones, m.ones);
  answer.solution = to_vector<Layers>(m.state);
  KINGetNumNonlinSolvIters(m.kinsol, &answer.iterations);
  return answer;
}

template class KinsolStack<2>;
template class KinsolStack<3>;

}  // namespace dewgap::bench
