// Damped Newton for small dense systems whose size is known when compiled: no heap, no physics. Private to
// the library.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>
#include <utility>

#include "dewgap/validity.hpp"

namespace dewgap::numerics {

template <std::size_t N>
using Vector = std::array<double, N>;

/// Square matrix, row by row; zero on construction.
template <std::size_t N>
struct SquareMatrix {
  std::array<double, N * N> entries{};

  double& operator()(std::size_t row, std::size_t column) { return entries[row * N + column]; }
  double operator()(std::size_t row, std::size_t column) const { return entries[row * N + column]; }
};

/// Forward and back substitution with factors L and U in one matrix, rows in `order`.
template <std::size_t N>
Vector<N> substitute(const SquareMatrix<N>& lu, const std::array<std::size_t, N>& order,
                     const Vector<N>& reciprocal_pivot, const Vector<N>& b) {
  Vector<N> x{};
  for (std::size_t i = 0; i < N; ++i) {
    double sum = b[order[i]];
    for (std::size_t j = 0; j < i; ++j) {
      sum -= lu(i, j) * x[j];
    }
    x[i] = sum;
  }
  for (std::size_t i = N; i-- > 0;) {
    double sum = x[i];
    for (std::size_t j = i + 1; j < N; ++j) {
      sum -= lu(i, j) * x[j];
    }
    x[i] = sum * reciprocal_pivot[i];
  }
  return x;
}

/// LU factors with row exchanges (Golub and Van Loan, Matrix Computations, algorithm 3.4.1), made in place of
/// `matrix`, which must outlive them.
template <std::size_t N>
class LuFactors {
 public:
  explicit LuFactors(SquareMatrix<N>& matrix) : lu_(matrix) {
    for (std::size_t i = 0; i < N; ++i) {
      order_[i] = i;
    }
    for (std::size_t k = 0; k < N && !singular_; ++k) {
      exchange_rows(k);
      eliminate(k);
    }
  }

  bool singular() const { return singular_; }

  /// Solution of A x = b; only when not singular.
  Vector<N> solve(const Vector<N>& b) const { return substitute(lu_, order_, reciprocal_pivot_, b); }

  const std::array<std::size_t, N>& order() const { return order_; }
  const Vector<N>& reciprocal_pivots() const { return reciprocal_pivot_; }

 private:
  void exchange_rows(std::size_t k) {
    std::size_t pivot = k;
    for (std::size_t i = k + 1; i < N; ++i) {
      pivot = std::abs(lu_(i, k)) > std::abs(lu_(pivot, k)) ? i : pivot;
    }
    const double size = std::abs(lu_(pivot, k));
    singular_ = !(size > 0.0 && std::isfinite(size));
    if (pivot != k) {
      std::swap(order_[pivot], order_[k]);
      for (std::size_t j = 0; j < N; ++j) {
        std::swap(lu_(pivot, j), lu_(k, j));
      }
    }
  }

  void eliminate(std::size_t k) {
    reciprocal_pivot_[k] = 1.0 / lu_(k, k);
    for (std::size_t i = k + 1; i < N; ++i) {
      if (lu_(i, k) == 0.0) {
        continue;
      }
      const double factor = lu_(i, k) * reciprocal_pivot_[k];
      lu_(i, k) = factor;
      for (std::size_t j = k + 1; j < N; ++j) {
        lu_(i, j) -= factor * lu_(k, j);
      }
    }
  }

  SquareMatrix<N>& lu_;
  std::array<std::size_t, N> order_{};
  Vector<N> reciprocal_pivot_{};
  bool singular_ = false;
};

/// LU factors that keep their matrix: for a sequence of systems whose Jacobian changes little.
template <std::size_t N>
class KeptLuFactors {
 public:
  /// Takes over a matrix; false when it is singular.
  bool factorise(const SquareMatrix<N>& matrix) {
    matrix_ = matrix;
    const LuFactors<N> factors(matrix_);
    held_ = !factors.singular();
    order_ = factors.order();
    reciprocal_pivot_ = factors.reciprocal_pivots();
    return held_;
  }
  bool held() const { return held_; }
  /// As PassingFactors::full_step; the factors stay.
  std::optional<Vector<N>> full_step(const SquareMatrix<N>& jacobian, const Vector<N>& residual) {
    return factorise(jacobian) ? std::optional(solve(residual)) : std::nullopt;
  }
  Vector<N> solve(const Vector<N>& b) const { return substitute(matrix_, order_, reciprocal_pivot_, b); }

 private:
  SquareMatrix<N> matrix_;
  std::array<std::size_t, N> order_{};
  Vector<N> reciprocal_pivot_{};
  bool held_ = false;
};

/// What a system of equations says at one point.
template <std::size_t N>
struct NewtonPoint {
  Vector<N> residual{};
  SquareMatrix<N> jacobian;
  double scale = 0.0;  ///< the size that the imbalance is to be small against
  double imbalance =
      0.0;  ///< what the system counts as its distance from a solution, of the size of a residual
};

struct NewtonOptions {
  int max_iterations = 60;
  double relative_tolerance = 1e-9;  ///< on the imbalance over the point's scale
  double absolute_tolerance = 1e-9;  ///< the imbalance need not be smaller than this
};

template <std::size_t N>
struct NewtonResult {
  Vector<N> solution{};
  Vector<N> residual{};
  double scale = 0.0;
  int iterations = 0;
  SolveStatus status = SolveStatus::iteration_limit;
};

template <std::size_t N>
double sum_of_magnitudes(const Vector<N>& v) {
  double sum = 0.0;
  for (const double entry : v) {
    sum += std::abs(entry);
  }
  return sum;
}

/// A step of Newton's method and how much of it is being tried.
template <std::size_t N>
struct NewtonStep {
  Vector<N> from{};
  Vector<N> step{};
  double share = 0.0;
  double norm_before = std::numeric_limits<double>::infinity();
  int halvings = 0;

  /// Armijo's condition with 1e-4; the Newton step is a descent direction of every norm of the residual.
  bool is_worth_halving(double norm_now) const {
    constexpr int max_halvings = 10;
    return !(norm_now <= (1.0 - 1e-4 * share) * norm_before) && halvings < max_halvings;
  }
  void halve() {
    share *= 0.5;
    ++halvings;
  }
  Vector<N> end() const {
    Vector<N> x{};
    for (std::size_t i = 0; i < N; ++i) {
      x[i] = from[i] - share * step[i];
    }
    return x;
  }
};

/// Newton's full step by factors that are made where they are used, and forgotten. None when singular.
struct PassingFactors {
  template <std::size_t N>
  std::optional<Vector<N>> full_step(SquareMatrix<N>& jacobian, const Vector<N>& residual) const {
    const LuFactors<N> factors(jacobian);
    return factors.singular() ? std::nullopt : std::optional(factors.solve(residual));
  }
};

/// Newton's method from `start`. A system has evaluate(x) -> NewtonPoint and step_limit(step), the largest
/// share of a step (above 0, at most 1) that it wants taken. A step is halved until the sum of |residual|
/// falls; when ten halvings do not help, as at a kink of the residual, the last and shortest step is taken
/// all the same. `linear` makes the full steps.
template <std::size_t N, class System, class Linear>
NewtonResult<N> solve_newton(const System& system, const Vector<N>& start, const NewtonOptions& options,
                             Linear&& linear) {
  NewtonResult<N> result{start};
  NewtonStep<N> step;
  while (true) {
    // `point` is made where it is used: moving its matrix about costs more than a small elimination.
    auto point = system.evaluate(result.solution);
    const double norm = sum_of_magnitudes(point.residual);
    if (step.is_worth_halving(norm)) {
      step.halve();
      result.solution = step.end();
      continue;
    }
    result.residual = point.residual;
    result.scale = point.scale;
    if (point.imbalance <= std::max(options.relative_tolerance * point.scale, options.absolute_tolerance)) {
      result.status = SolveStatus::converged;
      return result;
    }
    if (result.iterations == options.max_iterations) {
      return result;
    }
    const auto full = linear.full_step(point.jacobian, point.residual);
    if (!full) {
      result.status = SolveStatus::singular;
      return result;
    }
    step = {result.solution, *full, system.step_limit(*full), norm, 0};
    result.solution = step.end();
    ++result.iterations;
  }
}

template <std::size_t N, class System>
NewtonResult<N> solve_newton(const System& system, const Vector<N>& start, const NewtonOptions& options) {
  return solve_newton(system, start, options, PassingFactors{});
}

}  // namespace dewgap::numerics
