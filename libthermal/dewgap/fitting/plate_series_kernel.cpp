#include "dewgap/fitting/plate_series_kernel.hpp"

#include <Eigen/Dense>
#include <cmath>
#include <numbers>

#include "dewgap/numerics/levy_series.hpp"

namespace dewgap::fitting {
namespace {

constexpr double pi = std::numbers::pi;
constexpr int edge_terms = 40;  // of each pair of edges
constexpr double longest_clamped = 6.0;

/// 1, 3, 5, ... and sin(m pi / 2) of them.
double odd(int i) {
  return 2.0 * i + 1.0;
}
double sign_of(int i) {
  return i % 2 == 0 ? 1.0 : -1.0;
}

double sech(double x) {
  return 1.0 / std::cosh(x);
}

/// Moments along the short and the long side from -D w_xx and -D w_yy (x along the short side).
PlateCoefficients from_curvatures(double deflection, double across, double along, double poisson_ratio) {
  // M_x = -D (w_xx + nu w_yy), M_y = -D (w_yy + nu w_xx)
  return {.deflection = deflection,
          .moment_along_short = across + poisson_ratio * along,
          .moment_along_long = along + poisson_ratio * across};
}

/// Slope at the edges of length `length` from the pressure, sine coefficient m; `across` the other side.
double slope_from_pressure(double m, double length, double across) {
  const double alpha = 0.5 * m * pi * across / length;
  const double t = std::tanh(alpha);
  return 2.0 * std::pow(length, 3) / std::pow(pi * m, 4) * (alpha - t * (1.0 + alpha * t));
}

/// The same from this pair of edges' own moments, for a unit coefficient.
double slope_from_own_moment(double m, double length, double across) {
  const double alpha = 0.5 * m * pi * across / length;
  return length / (2.0 * pi * m) * (std::tanh(alpha) + alpha * sech(alpha) * sech(alpha));
}

/// The same, coefficient m, from a unit coefficient n of the moments on the other pair of edges.
double slope_from_other_moment(double m, double n, double length, double across) {
  const double k = m * pi / length;
  const double p = n * pi / across;
  return across / (2.0 * pi * n) * 8.0 * k * p * p / (length * std::pow(k * k + p * p, 2));
}

/// Moments along the short edges (first half) and the long edges that bring every slope to zero; section 44.
Eigen::VectorXd edge_moments(double a, double b) {
  constexpr int count = edge_terms;
  Eigen::MatrixXd slopes = Eigen::MatrixXd::Zero(2 * count, 2 * count);
  Eigen::VectorXd pressure(2 * count);
  for (int i = 0; i < count; ++i) {
    const double m = odd(i);
    pressure(i) = slope_from_pressure(m, a, b);
    pressure(count + i) = slope_from_pressure(m, b, a);
    slopes(i, i) = slope_from_own_moment(m, a, b);
    slopes(count + i, count + i) = slope_from_own_moment(m, b, a);
    for (int j = 0; j < count; ++j) {
      slopes(i, count + j) = slope_from_other_moment(m, odd(j), a, b);
      slopes(count + i, j) = slope_from_other_moment(m, odd(j), b, a);
    }
  }
  return slopes.partialPivLu().solve(pressure);
}

/// What the moments on one pair of edges (length `length`, `across` apart) add at the centre.
numerics::PlateCentre centre_from_moments(const Eigen::VectorXd& moments, int first, double length,
                                          double across) {
  numerics::PlateCentre centre;
  for (int i = 0; i < edge_terms; ++i) {
    const double m = odd(i);
    const double alpha = 0.5 * m * pi * across / length;
    const double part = moments(first + i) * sign_of(i) * sech(alpha);
    const double shape = alpha * std::tanh(alpha);
    // eq. (173) and its second derivatives at the centre
    centre.deflection += length * length / (2.0 * pi * pi * m * m) * part * shape;
    centre.curvature_along += 0.5 * part * shape;  // along these edges
    centre.curvature_across += 0.5 * part * (2.0 - shape);
  }
  return centre;
}

/// Sum of an alternating sine series at its middle, the last two partial sums averaged.
double middle_of_edge(const Eigen::VectorXd& moments, int first) {
  double sum = 0.0;
  for (int i = 0; i < edge_terms; ++i) {
    sum += (i + 1 == edge_terms ? 0.5 : 1.0) * moments(first + i) * sign_of(i);
  }
  return sum;
}

}  // namespace

PlateCoefficients simply_supported_plate(double long_over_short, double poisson_ratio) {
  const auto centre = numerics::levy_centre(long_over_short);
  return from_curvatures(centre.deflection, centre.curvature_across, centre.curvature_along, poisson_ratio);
}

PlateCoefficients clamped_plate(double long_over_short, double poisson_ratio) {
  if (long_over_short > longest_clamped) {
    // strip held fast at both ends: q a^4 / 384, q a^2 / 24, -q a^2 / 12
    auto strip = from_curvatures(1.0 / 384.0, 1.0 / 24.0, 0.0, poisson_ratio);
    strip.edge_moment = -1.0 / 12.0;
    return strip;
  }
  const double b = long_over_short;
  const Eigen::VectorXd moments = edge_moments(1.0, b);
  const auto free = numerics::levy_centre(b);
  const auto short_edges = centre_from_moments(moments, 0, 1.0, b);
  const auto long_edges = centre_from_moments(moments, edge_terms, b, 1.0);
  auto plate = from_curvatures(
      free.deflection + short_edges.deflection + long_edges.deflection,
      free.curvature_across + short_edges.curvature_along + long_edges.curvature_across,
      free.curvature_along + short_edges.curvature_across + long_edges.curvature_along, poisson_ratio);
  plate.edge_moment = middle_of_edge(moments, edge_terms);
  return plate;
}

}  // namespace dewgap::fitting
