// Heating degree-days from monthly temperatures, to any base, by four published methods.
#pragma once

#include <array>

#include "dewgap/climate/places.hpp"

namespace dewgap {

/// hitchin, erbs and schoenau_kehrig spread the days of a month about its mean and approximate degree-days of
/// daily means. max_min belongs to degree-days of daily maxima and minima, which are larger (Dublin,
/// base 15.5: 2188 and 2266 K day). Compare each with published figures of its own kind only. All formulas
/// from memory.
enum class DegreeDayMethod {
  hitchin,          ///< Hitchin 1983: N (tb - tm) / (1 - exp(-k (tb - tm))), k 0.71
  erbs,             ///< Erbs, Klein and Beckman 1983
  schoenau_kehrig,  ///< Schoenau and Kehrig 1990, normal daily temperatures
  max_min,  ///< daily maximum and minimum, four cases (UK practice), here on each month's mean day, not
            ///< daily: without the spread of the days it falls short in mild months
};

/// A month's heating degree-days, K day. `days` 28 to 31, `base_C` -20 to 40, `yearly_sd_K` 0 to 30: standard
/// deviation of the twelve monthly means, from which erbs and schoenau_kehrig take the spread of the days:
/// sm = 1.45 - 0.0290 tm + 0.0664 sy is that of the monthly mean (Erbs et al.). The standard deviation of the
/// days is then pi / (2 sqrt(3) 1.698) sm sqrt(N) = 0.534 sm sqrt(N), that of the logistic distribution which
/// Erbs's formula integrates; sm sqrt(N) itself, as of independent days, is too wide since cold days come in
/// runs (it adds 9 % to Toronto's year at 18 C). Schoenau and Kehrig take the spread from daily records,
/// which places here do not carry.
double monthly_degree_days_Kd(const MonthlyNormals& month, int days, double base_C, double yearly_sd_K,
                              DegreeDayMethod method);

/// Standard deviation of the twelve monthly means about their mean (divided by 12: our convention, the
/// paper's is not at hand), K.
double yearly_sd_K(const Place& place);

std::array<double, 12> degree_days_Kd(const Place& place, double base_C, DegreeDayMethod method);
double annual_degree_days_Kd(const Place& place, double base_C, DegreeDayMethod method);

/// Days of each month whose mean lies below the base (heating days), from the same normal
/// distribution as schoenau_kehrig: N Phi((tb - tm) / s).
std::array<double, 12> heating_days(const Place& place, double base_C);

/// The monthly mean temperature that gives a month's degree-days at a base (inverse of Hitchin), C.
/// degree_days_Kd 1e-6 to 100 a day: with none the mean is only known to lie far above the base, so zero
/// throws.
double hitchin_mean_temperature_C(double degree_days_Kd, int days, double base_C);

}  // namespace dewgap
