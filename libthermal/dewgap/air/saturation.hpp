// Saturation pressure of water vapour over water and ice, and its inverse, the dew or frost point.
#pragma once

namespace dewgap {

/// Which published formula gives the saturation pressure.
enum class SaturationFormula {
  iso_13788,    ///< ISO 13788:2012 Annex E: water from 0 C up, ice below; the standard's own check values
  sonntag,      ///< Sonntag 1990, water (valid supercooled to -100 C, up to +100 C) and ice (-100 to 0 C)
  murphy_koop,  ///< Murphy and Koop 2005, supercooled water (123-332 K) and ice (above 110 K)
};

/// The phase that the vapour is in equilibrium with. ISO 13788 knows water below zero only by continuing its upper
/// branch, which is not what it publishes: with iso_13788, `water` below 0 C throws.
enum class Phase {
  stable,  ///< ice below 0 C, water from 0 C up
  water,   ///< water, supercooled below 0 C: what a hygrometer's relative humidity refers to (WMO practice)
  ice,     ///< ice; above 0 C throws
};

/// Saturation vapour pressure, Pa. temperature_C: -80 to 100; iso_13788 -60 to 80.
double saturation_pressure_Pa(double temperature_C, SaturationFormula formula = SaturationFormula::murphy_koop,
                              Phase phase = Phase::stable);

/// d(saturation pressure)/dT, Pa/K, analytic, same ranges.
double saturation_slope_Pa_K(double temperature_C, SaturationFormula formula = SaturationFormula::murphy_koop,
                             Phase phase = Phase::stable);

/// The temperature at which `vapour_pressure_Pa` saturates, C: dew point, or frost point for ice. Exact inverse of
/// saturation_pressure_Pa to 1e-9 K (closed form for iso_13788, else Newton). Throws outside the formula's range.
double dew_point_C(double vapour_pressure_Pa, SaturationFormula formula = SaturationFormula::murphy_koop,
                   Phase phase = Phase::stable);

}  // namespace dewgap
