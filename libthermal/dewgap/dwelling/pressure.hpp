// The pressure across a window: stack of the dwelling, wind, extract.
#pragma once

#include "dewgap/airflow/gap_network.hpp"

namespace dewgap {

/// How open the surroundings are; presets carry pressure coefficients and the wind ratio, with source.
enum class Shelter { open, fields, suburb, facing_wall };

struct PressureCoefficients {
  double windward = 0.25;
  double leeward = -0.5;
  double side = -0.4;
  double wind_ratio = 0.5;  ///< wind speed at the window over the station's
};
PressureCoefficients pressure_coefficients(Shelter shelter);

struct DwellingPressureInput {
  double room_temperature_C = 20.0;
  double outdoor_temperature_C = 0.0;
  double window_height_m = 1.5;         ///< mid-height of the window above the ground floor of the connected space
  double neutral_level_m = 2.5;         ///< where inside and outside pressures are equal without wind
  double station_wind_m_s = 4.0;
  double wind_ratio = 0.5;
  double pressure_coefficient = 0.0;    ///< of this facade for this wind, -1.5 to 1.2
  double internal_coefficient = -0.1;   ///< of the dwelling's inside
  double gust_intensity = 0.3;          ///< standard deviation of wind speed over its mean, within the hour
  double direction_coefficient_sd = 0.2;///< spread of the coefficient within the hour, from wandering direction
  double extract_Pa = 0.0;              ///< depression of the dwelling by fans, >= 0
};

/// Parts of the mean pressure, each positive outwards (p = p_room - p_outdoor), and the spread within the hour.
struct DwellingPressure {
  double stack_Pa = 0.0;    ///< (rho_out - rho_in) g (z - z_neutral)
  double wind_Pa = 0.0;     ///< -(Cp - Cpi) rho v^2 / 2, with v^2 raised by (1 + intensity^2)
  double extract_Pa = 0.0;  ///< negative: air is drawn inwards
  PressureWithinHour within_hour;
};
DwellingPressure dwelling_pressure(const DwellingPressureInput& input);

}  // namespace dewgap
