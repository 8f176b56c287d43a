// Heating degree-days from monthly temperatures, to any base, by four published methods.
#pragma once

#include <array>

#include "dewgap/climate/places.hpp"

namespace dewgap {

enum class DegreeDayMethod {
  hitchin,          ///< Hitchin 1983: N (tb - tm) / (1 - exp(-k (tb - tm))), k 0.71
  erbs,             ///< Erbs, Klein and Beckman 1983
  schoenau_kehrig,  ///< Schoenau and Kehrig 1990, normal daily temperatures
  max_min,          ///< daily maximum and minimum, four cases (UK practice), here on each month's mean day
};

/// A month's heating degree-days, K day. `yearly_sd_K`: standard deviation of the twelve monthly means (erbs and
/// schoenau_kehrig take the daily spread from it, sm = 1.45 - 0.0290 tm + 0.0664 sy).
double monthly_degree_days_Kd(const MonthlyNormals& month, int days, double base_C, double yearly_sd_K,
                              DegreeDayMethod method);

std::array<double, 12> degree_days_Kd(const Place& place, double base_C, DegreeDayMethod method);
double annual_degree_days_Kd(const Place& place, double base_C, DegreeDayMethod method);

/// Days of the year whose mean lies below the base (heating days), from the same daily distribution
/// (Schoenau-Kehrig's normal spread), per month.
std::array<double, 12> heating_days(const Place& place, double base_C);

/// The monthly mean temperature that gives a month's degree-days at a base (inverse of Hitchin), C.
double hitchin_mean_temperature_C(double degree_days_Kd, int days, double base_C);

}  // namespace dewgap
