// Where the two schemes of section.hpp differ: the local terms of their difference.
#pragma once

#include <vector>

#include "dewgap/window/section_schemes_kernel.hpp"

namespace dewgap::section_kernel {

/// Terms of  int |q + lambda grad T|^2 / lambda + int (q.n R_s + T_air - T)^2 / R_s  over faces, q of the
/// cell scheme, T of the vertex scheme, W K/m. By the identity of Prager and Synge (Quart. Appl. Math. 5,
/// 1947) its sum is the dissipation of T less that of q, and so what a part of the grid adds to the
/// uncertainty of L2D. A change of a component along x counts to the column, along y to the row, a difference
/// of means to both in halves.
struct DifferenceTerms {
  std::vector<double> column_W_K_m;
  std::vector<double> row_W_K_m;
  double vertex_excess_W_K_m = 0.0;   ///< what the trapezoidal rule adds to the dissipation of T
  double cell_shortfall_W_K_m = 0.0;  ///< and takes off that of q
  double total() const;
};
DifferenceTerms difference_terms(const Mesh& mesh, const std::vector<std::optional<FaceAir>>& air,
                                 const Conductivities& conductivity_W_mK,
                                 const std::vector<double>& crossing_C, const CellFlux& flux);

/// The fewest columns and rows that hold `share` of the total.
struct Marked {
  std::vector<bool> columns;
  std::vector<bool> rows;
};
Marked largest_terms(const DifferenceTerms& terms, double share);

}  // namespace dewgap::section_kernel
