#include "dewgap/glazing/emissivity.hpp"

#include <array>
#include <cstddef>

#include "dewgap/air/constants.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

struct CorrectionRow {
  double normal;
  double ratio;
};

// EN 12898 / EN 673 Annex A, from memory: corrected over normal emissivity.
constexpr std::array<CorrectionRow, 11> corrections{{{0.03, 1.22},
                                                     {0.05, 1.18},
                                                     {0.1, 1.14},
                                                     {0.2, 1.10},
                                                     {0.3, 1.06},
                                                     {0.4, 1.03},
                                                     {0.5, 1.00},
                                                     {0.6, 0.98},
                                                     {0.7, 0.96},
                                                     {0.8, 0.95},
                                                     {0.89, 0.94}}};

}  // namespace

double corrected_emissivity(double normal_emissivity) {
  require_in_range(normal_emissivity, {0.03, 0.89}, "normal emissivity", "");
  std::size_t above = 1;
  while (normal_emissivity > corrections[above].normal) {
    ++above;
  }
  const auto& low = corrections[above - 1];
  const auto& high = corrections[above];
  const double share = (normal_emissivity - low.normal) / (high.normal - low.normal);
  return normal_emissivity * (low.ratio + share * (high.ratio - low.ratio));
}

double radiation_conductance_W_m2K(double emissivity_1, double emissivity_2, double mean_temperature_K) {
  require_in_range(emissivity_1, {0.001, 1.0}, "emissivity", "");
  require_in_range(emissivity_2, {0.001, 1.0}, "emissivity", "");
  require_in_range(mean_temperature_K, {100.0, 500.0}, "mean temperature", "K");
  // EN 673 5.2: hr = 4 sigma Tm^3 / (1/e1 + 1/e2 - 1), with the standard's rounded sigma.
  const double cube = mean_temperature_K * mean_temperature_K * mean_temperature_K;
  return 4.0 * constants::stefan_boltzmann_en_673_W_m2K4 * cube /
         (1.0 / emissivity_1 + 1.0 / emissivity_2 - 1.0);
}

}  // namespace dewgap
