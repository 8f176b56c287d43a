// Where the two schemes differ: section_estimate_kernel.hpp.
#include <algorithm>
#include <cmath>
#include <numeric>

#include "dewgap/window/section_estimate_kernel.hpp"

namespace dewgap::section_kernel {
namespace {

double square(double x) {
  return x * x;
}

/// int (a - b)^2 over a square for a linear along x from a1 to a2, b linear along y from b1 to b2: the square
/// of the difference of the means, and a twelfth of the square of each one's change. The trapezoidal rule
/// gives a sixth of the square of a change too much for the square of a linear function.
constexpr double share_of_change = 1.0 / 12.0;
constexpr double excess_of_change = 1.0 / 6.0;

/// Terms so near to the last one marked are marked with it: those of a symmetric section come in pairs.
constexpr double same_term = 1.0 - 1e-6;

void add_cells(const Mesh& mesh, const Conductivities& conductivity_W_mK,
               const std::vector<double>& crossing_C, const CellFlux& flux, DifferenceTerms& terms) {
  const std::size_t columns = mesh.columns();
  for (std::size_t row = 0; row < mesh.rows(); ++row) {
    for (std::size_t column = 0; column < columns; ++column) {
      const std::size_t cell = mesh.cell(column, row);
      if (!mesh.item[cell]) {
        continue;
      }
      const double conductivity = conductivity_W_mK[*mesh.item[cell]];
      const double x_m = mesh.x.width_m(column);
      const double y_m = mesh.y.width_m(row);
      const double south_west = crossing_C[mesh.crossing(column, row)];
      const double south_east = crossing_C[mesh.crossing(column + 1, row)];
      const double north_west = crossing_C[mesh.crossing(column, row + 1)];
      const double north_east = crossing_C[mesh.crossing(column + 1, row + 1)];
      // -lambda grad T of the vertex scheme on the four sides
      const double slope_south = conductivity * (south_west - south_east) / x_m;
      const double slope_north = conductivity * (north_west - north_east) / x_m;
      const double slope_west = conductivity * (south_west - north_west) / y_m;
      const double slope_east = conductivity * (south_east - north_east) / y_m;
      // q of the cell scheme
      const double west = flux.east_W_m2[row * (columns + 1) + column];
      const double east = flux.east_W_m2[row * (columns + 1) + column + 1];
      const double south = flux.north_W_m2[row * columns + column];
      const double north = flux.north_W_m2[(row + 1) * columns + column];
      const double weight = x_m * y_m / conductivity;
      const double means = 0.25 * (square(west + east - slope_south - slope_north) +
                                   square(south + north - slope_west - slope_east));
      terms.column_W_K_m[column] +=
          weight * (0.5 * means + share_of_change * (square(east - west) + square(slope_east - slope_west)));
      terms.row_W_K_m[row] +=
          weight *
          (0.5 * means + share_of_change * (square(north - south) + square(slope_north - slope_south)));
      terms.vertex_excess_W_K_m +=
          weight * excess_of_change * (square(slope_east - slope_west) + square(slope_north - slope_south));
      terms.cell_shortfall_W_K_m += weight * excess_of_change * (square(east - west) + square(north - south));
    }
  }
}

void add_films(const Mesh& mesh, const std::vector<std::optional<FaceAir>>& air,
               const std::vector<double>& crossing_C, const CellFlux& flux, DifferenceTerms& terms) {
  const std::size_t columns = mesh.columns();
  for (const auto& part : mesh.faces) {
    const auto& beside = air[part.face];
    if (!beside || beside->resistance_m2K_W == 0.0) {
      continue;
    }
    const std::size_t column = part.cell % columns;
    const std::size_t row = part.cell / columns;
    const bool on_x_line = part.side == CellSide::west || part.side == CellSide::east;
    const bool inward_positive = part.side == CellSide::west || part.side == CellSide::south;
    const std::size_t beyond = inward_positive ? 0 : 1;
    const double component = on_x_line ? flux.east_W_m2[row * (columns + 1) + column + beyond]
                                       : flux.north_W_m2[(row + beyond) * columns + column];
    const double outward_W_m2 = inward_positive ? -component : component;
    const double one_C = crossing_C[part.end_1];
    const double other_C = crossing_C[part.end_2];
    const double resistance = beside->resistance_m2K_W;
    const double mean = square(outward_W_m2 * resistance + beside->temperature_C - 0.5 * (one_C + other_C));
    const double change = share_of_change * square(other_C - one_C);
    const double weight = part.length_m / resistance;
    terms.vertex_excess_W_K_m += weight * excess_of_change * square(other_C - one_C);
    terms.column_W_K_m[column] += weight * (0.5 * mean + (on_x_line ? 0.0 : change));
    terms.row_W_K_m[row] += weight * (0.5 * mean + (on_x_line ? change : 0.0));
  }
}

}  // namespace

double DifferenceTerms::total() const {
  return std::accumulate(column_W_K_m.begin(), column_W_K_m.end(), 0.0) +
         std::accumulate(row_W_K_m.begin(), row_W_K_m.end(), 0.0);
}

DifferenceTerms difference_terms(const Mesh& mesh, const std::vector<std::optional<FaceAir>>& air,
                                 const Conductivities& conductivity_W_mK,
                                 const std::vector<double>& crossing_C, const CellFlux& flux) {
  DifferenceTerms terms{std::vector<double>(mesh.columns(), 0.0), std::vector<double>(mesh.rows(), 0.0)};
  add_cells(mesh, conductivity_W_mK, crossing_C, flux, terms);
  add_films(mesh, air, crossing_C, flux, terms);
  return terms;
}

Marked largest_terms(const DifferenceTerms& terms, double share) {
  const std::size_t columns = terms.column_W_K_m.size();
  std::vector<std::size_t> order(columns + terms.row_W_K_m.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  const auto term = [&](std::size_t k) {
    return k < columns ? terms.column_W_K_m[k] : terms.row_W_K_m[k - columns];
  };
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return term(a) > term(b); });
  Marked marked{std::vector<bool>(columns, false), std::vector<bool>(terms.row_W_K_m.size(), false)};
  double left = share * terms.total();
  double last = 0.0;
  for (const std::size_t k : order) {
    if (!(left > 0.0) && term(k) < same_term * last) {
      break;
    }
    left -= term(k);
    last = term(k);
    (k < columns ? marked.columns[k] : marked.rows[k - columns]) = true;
  }
  return marked;
}

}  // namespace dewgap::section_kernel
