#include "dewgap/numerics/aggregation_multigrid.hpp"

#include <algorithm>
#include <utility>

namespace dewgap::numerics {
namespace {

constexpr Eigen::Index coarsest_size = 600;
constexpr std::size_t most_levels = 30;
constexpr double least_strength = 0.25;  // of a pair's coupling, over the row's strongest (Notay)
constexpr double good_enough = 0.25;     // a first coarse step that leaves less needs no second (Notay)

using RowIterator = SymmetricRows::InnerIterator;

struct Aggregates {
  std::vector<Eigen::Index> of;  // of each unknown
  Eigen::Index count = 0;
};

/// Each unknown with that of its free neighbours to which it is coupled strongest; alone where none is near
/// the strongest of all.
Aggregates pairs(const SymmetricRows& matrix) {
  Aggregates made;
  made.of.assign(static_cast<std::size_t>(matrix.rows()), -1);
  for (Eigen::Index i = 0; i < matrix.rows(); ++i) {
    if (made.of[static_cast<std::size_t>(i)] >= 0) {
      continue;
    }
    double strongest = 0.0;
    double strongest_free = 0.0;
    Eigen::Index partner = i;
    for (RowIterator entry(matrix, i); entry; ++entry) {
      const Eigen::Index j = entry.col();
      if (j == i) {
        continue;
      }
      strongest = std::max(strongest, -entry.value());
      if (made.of[static_cast<std::size_t>(j)] < 0 && -entry.value() > strongest_free) {
        strongest_free = -entry.value();
        partner = j;
      }
    }
    made.of[static_cast<std::size_t>(i)] = made.count;
    if (strongest_free >= least_strength * strongest) {
      made.of[static_cast<std::size_t>(partner)] = made.count;
    }
    ++made.count;
  }
  return made;
}

/// P^T A P for the P that is 1 where an unknown belongs to an aggregate.
SymmetricRows summed(const SymmetricRows& matrix, const Aggregates& aggregates) {
  std::vector<std::vector<Eigen::Index>> members(static_cast<std::size_t>(aggregates.count));
  for (std::size_t i = 0; i < aggregates.of.size(); ++i) {
    members[static_cast<std::size_t>(aggregates.of[i])].push_back(static_cast<Eigen::Index>(i));
  }
  SymmetricRows coarse(aggregates.count, aggregates.count);
  coarse.reserve(matrix.nonZeros());
  std::vector<double> sum(members.size(), 0.0);
  std::vector<Eigen::Index> last_seen(members.size(), -1);
  std::vector<Eigen::Index> columns;
  for (Eigen::Index row = 0; row < aggregates.count; ++row) {
    columns.clear();
    for (const Eigen::Index i : members[static_cast<std::size_t>(row)]) {
      for (RowIterator entry(matrix, i); entry; ++entry) {
        const auto column = static_cast<std::size_t>(aggregates.of[static_cast<std::size_t>(entry.col())]);
        if (last_seen[column] != row) {
          last_seen[column] = row;
          sum[column] = 0.0;
          columns.push_back(static_cast<Eigen::Index>(column));
        }
        sum[column] += entry.value();
      }
    }
    std::sort(columns.begin(), columns.end());
    coarse.startVec(row);
    for (const Eigen::Index column : columns) {
      coarse.insertBack(row, column) = sum[static_cast<std::size_t>(column)];
    }
  }
  coarse.finalize();
  return coarse;
}

}  // namespace

struct AggregationMultigrid::Level {
  explicit Level(SymmetricRows of_level) : matrix(std::move(of_level)), diagonal(matrix.diagonal()) {
    const auto* starts = matrix.outerIndexPtr();
    const auto* columns = matrix.innerIndexPtr();
    for (Eigen::Index i = 0; i < matrix.rows(); ++i) {
      const auto* at = std::lower_bound(columns + starts[i], columns + starts[i + 1], i);
      diagonal_at.push_back(static_cast<int>(at - columns));
    }
  }

  SymmetricRows matrix;
  Eigen::VectorXd diagonal;
  std::vector<int> diagonal_at;            // its place among the entries, row by row
  std::vector<Eigen::Index> aggregate_of;  // empty on the coarsest
  Eigen::Index aggregates = 0;

  /// Sum of entry times x over the entries from one place to another.
  double product(const Eigen::VectorXd& x, int from, int to) const {
    const auto* columns = matrix.innerIndexPtr();
    const auto* values = matrix.valuePtr();
    double sum = 0.0;
    for (int k = from; k < to; ++k) {
      sum += values[k] * x[columns[k]];
    }
    return sum;
  }
  /// Gauss-Seidel from x = 0, first row to last.
  Eigen::VectorXd forward(const Eigen::VectorXd& right_side) const {
    Eigen::VectorXd x(matrix.rows());
    for (Eigen::Index i = 0; i < matrix.rows(); ++i) {
      const int diagonal_place = diagonal_at[static_cast<std::size_t>(i)];
      x[i] = (right_side[i] - product(x, matrix.outerIndexPtr()[i], diagonal_place)) / diagonal[i];
    }
    return x;
  }
  /// What that sweep leaves of the right side: minus the upper triangle times x.
  Eigen::VectorXd left_by_forward(const Eigen::VectorXd& x) const {
    Eigen::VectorXd left(matrix.rows());
    for (Eigen::Index i = 0; i < matrix.rows(); ++i) {
      left[i] = -product(x, diagonal_at[static_cast<std::size_t>(i)] + 1, matrix.outerIndexPtr()[i + 1]);
    }
    return left;
  }
  /// Gauss-Seidel, last row to first.
  void backward(Eigen::VectorXd& x, const Eigen::VectorXd& right_side) const {
    for (Eigen::Index i = matrix.rows() - 1; i >= 0; --i) {
      const int* starts = matrix.outerIndexPtr();
      x[i] += (right_side[i] - product(x, starts[i], starts[i + 1])) / diagonal[i];
    }
  }
};

AggregationMultigrid::AggregationMultigrid(SymmetricRows matrix) {
  levels_.push_back(std::make_unique<Level>(std::move(matrix)));
  while (levels_.back()->matrix.rows() > coarsest_size && levels_.size() < most_levels) {
    Level& fine = *levels_.back();
    const Aggregates first = pairs(fine.matrix);
    const SymmetricRows half = summed(fine.matrix, first);
    const Aggregates second = pairs(half);
    if (5 * second.count > 4 * fine.matrix.rows()) {
      break;  // hardly any coarser
    }
    fine.aggregates = second.count;
    fine.aggregate_of.resize(first.of.size());
    for (std::size_t i = 0; i < first.of.size(); ++i) {
      fine.aggregate_of[i] = second.of[static_cast<std::size_t>(first.of[i])];
    }
    levels_.push_back(std::make_unique<Level>(summed(half, second)));
  }
  coarsest_.compute(Eigen::SparseMatrix<double>(levels_.back()->matrix));
  usable_ = coarsest_.info() == Eigen::Success && (levels_.front()->diagonal.array() > 0.0).all();
}

AggregationMultigrid::~AggregationMultigrid() = default;

/// Two steps of conjugate gradients on a coarse level (the K-cycle of Notay).
Eigen::VectorXd AggregationMultigrid::coarse_answer(std::size_t level,
                                                    const Eigen::VectorXd& residual) const {
  if (level + 1 == levels_.size()) {
    return coarsest_.solve(residual);
  }
  const SymmetricRows& matrix = levels_[level]->matrix;
  const Eigen::VectorXd first = preconditioned(level, residual);
  const Eigen::VectorXd image = matrix * first;
  const double energy = first.dot(image);
  if (!(energy > 0.0)) {
    return first;
  }
  const double step = first.dot(residual) / energy;
  const Eigen::VectorXd left = residual - step * image;
  if (left.norm() <= good_enough * residual.norm()) {
    return step * first;
  }
  const Eigen::VectorXd second = preconditioned(level, left);
  const Eigen::VectorXd second_image = matrix * second;
  const double mixed = second.dot(image);
  const double second_energy = second.dot(second_image) - mixed * mixed / energy;
  if (!(second_energy > 0.0)) {
    return step * first;
  }
  const double second_step = second.dot(left) / second_energy;
  return (step - mixed * second_step / energy) * first + second_step * second;
}

Eigen::VectorXd AggregationMultigrid::preconditioned(std::size_t level,
                                                     const Eigen::VectorXd& residual) const {
  const Level& here = *levels_[level];
  if (here.aggregate_of.empty()) {
    return coarsest_.solve(residual);
  }
  const Eigen::Index count = here.matrix.rows();
  Eigen::VectorXd x = here.forward(residual);
  const Eigen::VectorXd left = here.left_by_forward(x);
  Eigen::VectorXd coarse = Eigen::VectorXd::Zero(here.aggregates);
  for (Eigen::Index i = 0; i < count; ++i) {
    coarse[here.aggregate_of[static_cast<std::size_t>(i)]] += left[i];
  }
  const Eigen::VectorXd correction = coarse_answer(level + 1, coarse);
  for (Eigen::Index i = 0; i < count; ++i) {
    x[i] += correction[here.aggregate_of[static_cast<std::size_t>(i)]];
  }
  here.backward(x, residual);
  return x;
}

AggregationMultigrid::Answer AggregationMultigrid::solve(const Eigen::VectorXd& right_side, double tolerance,
                                                         int most_iterations) const {
  const SymmetricRows& matrix = levels_.front()->matrix;
  Answer answer{Eigen::VectorXd::Zero(matrix.rows()), 0, false};
  Eigen::VectorXd residual = right_side;
  Eigen::VectorXd direction;
  Eigen::VectorXd last_residual;
  double last_product = 0.0;
  const double aim = tolerance * right_side.norm();
  while (!(answer.reached = residual.norm() <= aim) && answer.iterations < most_iterations) {
    const Eigen::VectorXd z = preconditioned(0, residual);
    const double product = z.dot(residual);
    // flexible: the preconditioner differs a little from step to step
    direction = answer.iterations == 0
                    ? z
                    : Eigen::VectorXd(z + (product - z.dot(last_residual)) / last_product * direction);
    const Eigen::VectorXd image = matrix * direction;
    const double energy = direction.dot(image);
    if (!(energy > 0.0)) {
      break;  // rounding is all that is left
    }
    const double step = direction.dot(residual) / energy;
    answer.x += step * direction;
    last_residual = residual;
    residual -= step * image;
    last_product = product;
    ++answer.iterations;
  }
  return answer;
}

}  // namespace dewgap::numerics
