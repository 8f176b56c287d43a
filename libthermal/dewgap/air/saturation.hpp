// Saturation pressure of water vapour over water and ice, and its inverse, the dew or frost point.
//
// Accuracy against IAPWS (Wagner and Pruss over water, R14-08(2011) over ice); the tests use the same bounds:
//   formula       over water                               over ice
//   iso_13788     0.2 %, 0 to 80 C                         0.5 %, -20 to 0 C; 5 %, -60 to 0 C
//   sonntag       0.003 %, 0 to 100 C                      0.035 %, -40 to 0 C; 0.09 %, -80 to 0 C
//   murphy_koop   0.021 %, 0 to 58 C; 0.6 %, 58 to 100 C   0.025 %, -40 to 0 C; 0.065 %, -80 to 0 C
// Murphy and Koop state their water formula for 123 to 332 K (58.85 C); it is continued to 100 C here.
// Over supercooled water there is no IAPWS value: sonntag and murphy_koop agree within 0.07 % from -20 to 0
// C, 0.65 % from -40 to 0 C and 13 % from -80 to 0 C. Murphy and Koop's is the one made for it; prefer it
// below -20 C. Between -20 and 40 C both lie within 0.03 % of Hyland and Wexler (1983), the formula of ASHRAE
// Fundamentals. Constants from memory; the match with IAPWS, 0.001 Pa at the triple point, confirms them. NaN
// and values outside a stated range throw InvalidInput.
#pragma once

namespace dewgap {

/// Which published formula gives the saturation pressure.
enum class SaturationFormula {
  iso_13788,    ///< ISO 13788:2012 Annex E: water from 0 C up, ice below; the standard's own check values
  sonntag,      ///< Sonntag 1990, water (valid supercooled to -100 C, up to +100 C) and ice (-100 to 0 C)
  murphy_koop,  ///< Murphy and Koop 2005, supercooled water (123-332 K) and ice (above 110 K)
};

/// The phase that the vapour is in equilibrium with. ISO 13788 knows water below zero only by continuing its
/// upper branch, which is not what it publishes: with iso_13788, `water` below 0 C throws.
enum class Phase {
  stable,  ///< ice below 0 C, water from 0 C up
  water,   ///< water, supercooled below 0 C: what a hygrometer's relative humidity refers to (WMO practice)
  ice,     ///< ice; above 0 C throws
};

/// Saturation vapour pressure, Pa. temperature_C: -80 to 100; iso_13788 -60 to 80.
double saturation_pressure_Pa(double temperature_C,
                              SaturationFormula formula = SaturationFormula::murphy_koop,
                              Phase phase = Phase::stable);

/// d(saturation pressure)/dT, Pa/K, analytic, same ranges.
double saturation_slope_Pa_K(double temperature_C, SaturationFormula formula = SaturationFormula::murphy_koop,
                             Phase phase = Phase::stable);

/// The temperature at which `vapour_pressure_Pa` saturates, C: dew point, or frost point for ice. Exact
/// inverse of saturation_pressure_Pa to 1e-9 K (closed form for iso_13788, else Newton). Throws outside the
/// pressures that the formula gives over its range of temperature. Stable: ice and water differ by about 0.06
/// Pa at 0 C for sonntag and murphy_koop (the triple point is at 0.01 C); pressures in between have their dew
/// point at 0 C.
double dew_point_C(double vapour_pressure_Pa, SaturationFormula formula = SaturationFormula::murphy_koop,
                   Phase phase = Phase::stable);

}  // namespace dewgap
