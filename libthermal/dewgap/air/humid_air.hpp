// Humid air as an ideal mixture of dry air and water vapour.
//
// Left out: the enhancement of the vapour pressure by air (0.4 to 0.5 % at one atmosphere), so that humidity
// ratios at saturation lie up to 0.5 % and enthalpies up to 0.4 % below tables of real moist air. Ranges:
// temperature -80 to 100 C, or the saturation formula's; pressure 30 to 120 kPa; vapour pressure from 0 to
// 0.9 of the pressure, or to 120 kPa where no pressure is given. NaN and values outside throw InvalidInput.
#pragma once

#include "dewgap/air/constants.hpp"
#include "dewgap/air/saturation.hpp"

namespace dewgap {

/// Vapour pressure of air at a measured relative humidity, Pa. relative_humidity 0..1 (not per cent). More
/// than 1 throws. Instruments report humidity over water, also below zero, so `water` is the default; use
/// `ice` or `stable` where the source says so.
double vapour_pressure_Pa(double temperature_C, double relative_humidity,
                          SaturationFormula formula = SaturationFormula::murphy_koop,
                          Phase phase = Phase::water);

/// The inverse of vapour_pressure_Pa. May exceed 1 (supersaturated).
double relative_humidity(double temperature_C, double vapour_pressure_Pa,
                         SaturationFormula formula = SaturationFormula::murphy_koop,
                         Phase phase = Phase::water);

/// Vapour density (absolute humidity), kg/m3, ideal gas.
double vapour_density_kg_m3(double temperature_C, double vapour_pressure_Pa);
/// The inverse.
double vapour_pressure_from_density_Pa(double temperature_C, double vapour_density_kg_m3);

/// Density of humid air, kg/m3, ideal mixture. Lighter as it gets damper.
double humid_air_density_kg_m3(double temperature_C, double vapour_pressure_Pa,
                               double pressure_Pa = constants::standard_pressure_Pa);

/// Humidity ratio, kg water vapour per kg dry air.
double humidity_ratio(double vapour_pressure_Pa, double pressure_Pa = constants::standard_pressure_Pa);

/// Enthalpy per kg dry air, J/kg, zero for dry air and liquid water at 0 C: 1006 t + w (2501e3 + 1860 t)
/// (ASHRAE Fundamentals, psychrometrics, SI, from memory).
double humid_air_enthalpy_J_kg(double temperature_C, double vapour_pressure_Pa,
                               double pressure_Pa = constants::standard_pressure_Pa);

/// Volumetric heat capacity of humid air, J/(m3 K), vapour included.
double volumetric_heat_capacity_J_m3K(double temperature_C, double vapour_pressure_Pa,
                                      double pressure_Pa = constants::standard_pressure_Pa);

/// Latent heat of the change vapour to `water` or `ice`, J/kg: 2501 - 2.36 t kJ/kg; sublimation 2834 (from
/// memory). Phase::stable chooses by the sign of the temperature; `ice` above 0 C throws. Water: 0.1 % of
/// IAPWS from 0 to 60 C. Ice: 0.2 % from -40 to 0 C.
double latent_heat_J_kg(double temperature_C, Phase phase = Phase::stable);

}  // namespace dewgap
