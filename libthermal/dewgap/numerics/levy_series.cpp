#include "dewgap/numerics/levy_series.hpp"

#include <cmath>
#include <numbers>

namespace dewgap::numerics {
namespace {

constexpr double pi = std::numbers::pi;
constexpr int terms = 50;  // odd ones

/// Sum over odd m of a term of m, sin(m pi / 2) and alpha = m pi b / (2 a), the small ones first.
template <class Term>
double levy_sum(double long_over_short, Term&& term) {
  double sum = 0.0;
  for (int i = terms - 1; i >= 0; --i) {
    const double m = 2.0 * i + 1.0;
    sum += term(m, i % 2 == 0 ? 1.0 : -1.0, 0.5 * m * pi * long_over_short);
  }
  return sum;
}

double sech(double x) {
  return 1.0 / std::cosh(x);
}

}  // namespace

PlateCentre levy_centre(double long_over_short) {
  PlateCentre centre;
  // w = 4 q a^4 / (pi^5 D) sum (-1)^.. m^-5 (1 - (alpha tanh alpha + 2) / (2 cosh alpha)); section 30
  centre.deflection = 4.0 / std::pow(pi, 5) * levy_sum(long_over_short, [](double m, double s, double x) {
                        return s / std::pow(m, 5) * (1.0 - 0.5 * (x * std::tanh(x) + 2.0) * sech(x));
                      });
  // its second derivatives at the centre, term by term
  centre.curvature_across =
      4.0 / std::pow(pi, 3) * levy_sum(long_over_short, [](double m, double s, double x) {
        return s / std::pow(m, 3) * (1.0 - 0.5 * (x * std::tanh(x) + 2.0) * sech(x));
      });
  centre.curvature_along =
      4.0 / std::pow(pi, 3) * levy_sum(long_over_short, [](double m, double s, double x) {
        return s / std::pow(m, 3) * 0.5 * x * std::tanh(x) * sech(x);
      });
  return centre;
}

double levy_mean_deflection(double long_over_short) {
  // The series integrated over the plate, divided by its area: 8 / pi^6 times the sum over odd m of
  // m^-6 (1 - 3 tanh(alpha) / (2 alpha) + (1 - tanh^2(alpha)) / 2).
  const double sum = levy_sum(long_over_short, [](double m, double, double x) {
    const double tanh = std::tanh(x);
    return (1.0 - 1.5 * tanh / x + 0.5 * (1.0 - tanh * tanh)) / std::pow(m, 6);
  });
  return 8.0 / std::pow(pi, 6) * sum;
}

double levy_central_force(double long_over_short) {
  // w = P a^2 / (2 pi^3 D) sum over odd m of m^-3 (tanh alpha - alpha / cosh^2 alpha); section 34
  return levy_sum(long_over_short,
                  [](double m, double, double x) {
                    return (std::tanh(x) - x * sech(x) * sech(x)) / (m * m * m);
                  }) /
         (2.0 * std::pow(pi, 3));
}

}  // namespace dewgap::numerics
