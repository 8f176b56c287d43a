#include "dewgap/air/saturation.hpp"

#include <cmath>

#include "dewgap/air/constants.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

using constants::celsius_zero_K;
using constants::kelvin;

/// p = scale_Pa exp(value); slope is the derivative of value by temperature, 1/K.
struct LogPressure {
  double scale_Pa;
  double value;
  double slope;
};

double pressure_of(const LogPressure& logarithm) {
  return logarithm.scale_Pa * std::exp(logarithm.value);
}

/// ISO 13788:2012 Annex E: 610.5 exp(a t / (b + t)).
struct MagnusBranch {
  double a;
  double b_C;
};
constexpr double iso_13788_zero_Pa = 610.5;
constexpr MagnusBranch iso_13788_water{17.269, 237.3};
constexpr MagnusBranch iso_13788_ice{21.875, 265.5};

constexpr MagnusBranch iso_13788_branch(Phase phase) {
  return phase == Phase::ice ? iso_13788_ice : iso_13788_water;
}

LogPressure iso_13788(double temperature_C, Phase phase) {
  const auto [a, b] = iso_13788_branch(phase);
  const double sum = b + temperature_C;
  return {iso_13788_zero_Pa, a * temperature_C / sum, a * b / (sum * sum)};
}

// Sonntag, Z. Meteorol. 40 (1990) 340, equations for water and ice, from memory; in hPa.
LogPressure sonntag(double temperature_C, Phase phase) {
  const double T = kelvin(temperature_C);
  const double hectopascal_Pa = 100.0;
  if (phase == Phase::ice) {
    return {hectopascal_Pa,
            -6024.5282 / T + 24.7219 + 1.0613868e-2 * T - 1.3198825e-5 * T * T - 0.49382577 * std::log(T),
            6024.5282 / (T * T) + 1.0613868e-2 - 2.0 * 1.3198825e-5 * T - 0.49382577 / T};
  }
  return {hectopascal_Pa,
          -6096.9385 / T + 16.635794 - 2.711193e-2 * T + 1.673952e-5 * T * T + 2.433502 * std::log(T),
          6096.9385 / (T * T) - 2.711193e-2 + 2.0 * 1.673952e-5 * T + 2.433502 / T};
}

// Murphy and Koop, Q. J. R. Meteorol. Soc. 131 (2005) 1539, from memory.
LogPressure murphy_koop(double temperature_C, Phase phase) {
  const double T = kelvin(temperature_C);
  const double log_T = std::log(T);
  if (phase == Phase::ice) {
    // Equation 7.
    return {1.0, 9.550426 - 5723.265 / T + 3.53068 * log_T - 0.00728332 * T,
            5723.265 / (T * T) + 3.53068 / T - 0.00728332};
  }
  // Equation 10: base + tanh(0.0415 (T - 218.8)) * cold.
  const double base = 54.842763 - 6763.22 / T - 4.210 * log_T + 0.000367 * T;
  const double base_slope = 6763.22 / (T * T) - 4.210 / T + 0.000367;
  const double cold = 53.878 - 1331.22 / T - 9.44523 * log_T + 0.014025 * T;
  const double cold_slope = 1331.22 / (T * T) - 9.44523 / T + 0.014025;
  const double blend = std::tanh(0.0415 * (T - 218.8));
  const double blend_slope = 0.0415 * (1.0 - blend * blend);
  return {1.0, base + blend * cold, base_slope + blend_slope * cold + blend * cold_slope};
}

LogPressure log_pressure(double temperature_C, SaturationFormula formula, Phase phase) {
  switch (formula) {
    case SaturationFormula::iso_13788:
      return iso_13788(temperature_C, phase);
    case SaturationFormula::sonntag:
      return sonntag(temperature_C, phase);
    case SaturationFormula::murphy_koop:
      return murphy_koop(temperature_C, phase);
  }
  throw InvalidInput("saturation formula", "is none of the three known");
}

double pressure_Pa(double temperature_C, SaturationFormula formula, Phase phase) {
  return pressure_of(log_pressure(temperature_C, formula, phase));
}

PermittedRange temperature_range_C(SaturationFormula formula, Phase phase) {
  const bool iso = formula == SaturationFormula::iso_13788;
  const PermittedRange whole = iso ? PermittedRange{-60.0, 80.0} : PermittedRange{-80.0, 100.0};
  switch (phase) {
    case Phase::stable:
      return whole;
    case Phase::water:
      return {iso ? 0.0 : whole.min, whole.max};
    case Phase::ice:
      return {whole.min, 0.0};
  }
  throw InvalidInput("phase", "is none of the three known");
}

/// The phase that `stable` means at a temperature: ice below 0 C, water from 0 C up.
Phase resolved(Phase phase, double temperature_C) {
  if (phase != Phase::stable) {
    return phase;
  }
  return temperature_C < 0.0 ? Phase::ice : Phase::water;
}

LogPressure checked_log_pressure(double temperature_C, SaturationFormula formula, Phase phase) {
  require_in_range(temperature_C, temperature_range_C(formula, phase), "saturation temperature", "C");
  return log_pressure(temperature_C, formula, resolved(phase, temperature_C));
}

double iso_13788_dew_point_C(double vapour_pressure_Pa, Phase phase) {
  // ISO 13788:2012 Annex E, inverse equations.
  const auto [a, b] = iso_13788_branch(phase);
  const double logarithm = std::log(vapour_pressure_Pa / iso_13788_zero_Pa);
  return b * logarithm / (a - logarithm);
}

// Newton on ln p(T) = ln p, which is nearly straight in 1/T: started from the Magnus form of ISO 13788,
// within 1 K of the root at moderate temperatures, it settles in three or four steps.
double newton_dew_point_C(double vapour_pressure_Pa, SaturationFormula formula, Phase phase) {
  double temperature_C = iso_13788_dew_point_C(vapour_pressure_Pa, phase);
  for (int iteration = 0; iteration < 20; ++iteration) {
    const auto [scale_Pa, value, slope] = log_pressure(temperature_C, formula, phase);
    const double step = (std::log(vapour_pressure_Pa / scale_Pa) - value) / slope;
    temperature_C += step;
    if (std::abs(step) < 1e-11 * celsius_zero_K) {
      return temperature_C;
    }
  }
  throw InvalidInput("vapour pressure", "no dew point found for it");
}

}  // namespace

double saturation_pressure_Pa(double temperature_C, SaturationFormula formula, Phase phase) {
  return pressure_of(checked_log_pressure(temperature_C, formula, phase));
}

double saturation_slope_Pa_K(double temperature_C, SaturationFormula formula, Phase phase) {
  const LogPressure logarithm = checked_log_pressure(temperature_C, formula, phase);
  return pressure_of(logarithm) * logarithm.slope;
}

double dew_point_C(double vapour_pressure_Pa, SaturationFormula formula, Phase phase) {
  const PermittedRange range_C = temperature_range_C(formula, phase);
  const PermittedRange range_Pa{pressure_Pa(range_C.min, formula, resolved(phase, range_C.min)),
                                pressure_Pa(range_C.max, formula, resolved(phase, range_C.max))};
  require_in_range(vapour_pressure_Pa, range_Pa, "vapour pressure", "Pa");

  Phase over = phase;
  if (phase == Phase::stable) {
    // Ice and water differ by about 0.06 Pa at 0 C: pressures in between belong to 0 C itself.
    const bool above_ice = vapour_pressure_Pa > pressure_Pa(0.0, formula, Phase::ice);
    const bool below_water = vapour_pressure_Pa < pressure_Pa(0.0, formula, Phase::water);
    if (above_ice && below_water) {
      return 0.0;
    }
    over = below_water ? Phase::ice : Phase::water;
  }
  return formula == SaturationFormula::iso_13788 ? iso_13788_dew_point_C(vapour_pressure_Pa, over)
                                                 : newton_dew_point_C(vapour_pressure_Pa, formula, over);
}

}  // namespace dewgap
