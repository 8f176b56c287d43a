// Conjugate gradients with a multigrid of aggregates as preconditioner. Private to the library.
#pragma once

#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>
#include <memory>
#include <vector>

namespace dewgap::numerics {

/// Symmetric, both triangles stored, row after row.
using SymmetricRows = Eigen::SparseMatrix<double, Eigen::RowMajor>;

/// Solves A x = b for a symmetric positive definite A whose entries off the diagonal are not positive.
/// Unknowns are paired along their strongest couplings, twice a level, as in Notay (Electron. Trans. Numer.
/// Anal. 37, 2010, from memory), which follows thin layers and jumps of the coefficients; each level is
/// smoothed by one Gauss-Seidel sweep before and one after, and the next coarser one is solved by two steps
/// of conjugate gradients. Work and memory are about proportional to the number of unknowns (measured:
/// tests/benchmarks/bench_section.cpp).
class AggregationMultigrid {
 public:
  explicit AggregationMultigrid(SymmetricRows matrix);
  ~AggregationMultigrid();
  AggregationMultigrid(const AggregationMultigrid&) = delete;
  AggregationMultigrid& operator=(const AggregationMultigrid&) = delete;

  /// False when the coarsest level has no factors: A is singular.
  bool usable() const { return usable_; }

  struct Answer {
    Eigen::VectorXd x;
    int iterations = 0;
    bool reached = false;  ///< residual below the tolerance times that of x = 0
  };
  Answer solve(const Eigen::VectorXd& right_side, double tolerance, int most_iterations) const;

 private:
  struct Level;
  Eigen::VectorXd preconditioned(std::size_t level, const Eigen::VectorXd& residual) const;
  Eigen::VectorXd coarse_answer(std::size_t level, const Eigen::VectorXd& residual) const;

  std::vector<std::unique_ptr<Level>> levels_;
  Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> coarsest_;
  bool usable_ = false;
};

}  // namespace dewgap::numerics
