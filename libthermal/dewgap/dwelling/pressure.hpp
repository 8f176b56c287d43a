// The pressure across a window: stack of the dwelling, wind, extract.
#pragma once

#include "dewgap/airflow/gap_network.hpp"

namespace dewgap {

/// How open the surroundings are, as seen from the window: sea or open hill, fields, suburb, a wall opposite.
enum class Shelter { open, fields, suburb, facing_wall };

/// For air leakage, averaged over a facade of a house up to three storeys; never structural peak
/// coefficients.
struct PressureCoefficients {
  double windward = 0.25;
  double leeward = -0.5;
  double side = -0.3;
  double wind_ratio = 0.52;  ///< wind speed at the window over the station's at 10 m
};
/// The row of dwelling/pressure_coefficients.csv, which has the sources (EN 15242, Liddament, BS 5925), all
/// from memory. Two recalled sources of the wind ratio differ by up to 16 %; measured street canyons scatter
/// from 0.16 to 0.67 of the wind above the roofs. The default above is the suburb's row.
PressureCoefficients pressure_coefficients(Shelter shelter);

struct DwellingPressureInput {
  double room_temperature_C = 20.0;    ///< -30 to 50
  double outdoor_temperature_C = 0.0;  ///< -60 to 50
  double window_height_m = 1.5;   ///< mid-height of the window above the ground floor of the connected space,
                                  ///< -20 to 300
  double neutral_level_m = 2.5;   ///< where inside and outside pressures are equal without wind, -20 to 300
  double station_wind_m_s = 4.0;  ///< 0 to 40
  double wind_ratio = 0.5;        ///< 0 to 1.5
  double pressure_coefficient = 0.0;   ///< of this facade for this wind, -1.5 to 1.2
  double internal_coefficient = -0.1;  ///< of the dwelling's inside, -1.5 to 1.2
  double gust_intensity = 0.3;  ///< standard deviation of wind speed over its mean, within the hour, 0 to 1
  double direction_coefficient_sd =
      0.2;                  ///< spread of the coefficient within the hour, from wandering direction, 0 to 1
  double extract_Pa = 0.0;  ///< depression of the dwelling by fans, 0 to 100
};

/// Parts of the mean pressure, each positive outwards (p = p_room - p_outdoor), and the spread within the
/// hour.
struct DwellingPressure {
  double stack_Pa = 0.0;           ///< (rho_out - rho_in) g (z - z_neutral)
  double wind_Pa = 0.0;            ///< -(Cp - Cpi) rho v^2 / 2, with v^2 raised by (1 + intensity^2)
  double extract_Pa = 0.0;         ///< negative: air is drawn inwards
  PressureWithinHour within_hour;  ///< mean: the sum of the parts
};

/// Densities are of dry air at 101325 Pa: moisture of the room, which lightens its air, adds about 3 % to the
/// stack at 5 C outdoors and 50 % indoors. 0.64 Pa per metre at 20 C in and 5 C out.
///
/// Within the hour the wind speed is normal about its mean v with sd intensity v, the coefficient normal
/// about Cp - Cpi with its own sd, independent of each other. Then exactly: E[v'^2] = v^2 (1 + I^2),
/// Var[v'^2] = v^4 (4 I^2 + 2 I^4), and Var[C v'^2] = sC^2 (Var[v'^2] + E[v'^2]^2) + C^2 Var[v'^2].
/// Leaves out: the dwelling's inside following the gusts (which damps them in leaky houses), resonance,
/// altitude.
DwellingPressure dwelling_pressure(const DwellingPressureInput& input);

}  // namespace dewgap
