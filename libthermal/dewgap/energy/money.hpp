// Cost, carbon, simple payback and net present value from the user's own figures. None is built in as a fact.
#pragma once

#include <optional>

namespace dewgap {

struct MoneyTerms {
  double price_per_kWh = 0.0;               ///< of the fuel, user's currency, >= 0
  double system_efficiency = 1.0;           ///< heat delivered per fuel, 0.3 to 6 (a heat pump is above 1)
  std::optional<double> carbon_kg_per_kWh;  ///< of the fuel
  std::optional<double> cost;               ///< of the sheet as fitted
  std::optional<double> life_years;         ///< 1 to 60
  double discount_rate = 0.0;               ///< a year, -0.05 to 0.5
  double price_rise = 0.0;                  ///< a year, above general inflation, -0.1 to 0.3
};

struct MoneyResult {
  double fuel_kWh = 0.0;
  double saved_per_year = 0.0;
  std::optional<double> carbon_kg_per_year;
  std::optional<double> payback_years;      ///< absent when nothing is saved: it never pays back
  bool never_pays_back = false;             ///< nothing is saved a year
  std::optional<double> net_present_value;  ///< needs cost and life
};

/// Fuel = heat / efficiency. Payback is simple: today's price, no discount. Net present value sums the years'
/// savings at year's end, the price risen once by the first, S (q + q^2 + ... + q^n) - cost with
/// q = (1 + rise) / (1 + rate), in closed form, so a life of part years lies between its neighbours.
/// heat -1e7 to 1e7 kWh, price up to 1e6, cost up to 1e9, carbon 0 to 10 kg/kWh. Throws InvalidInput outside
/// these and the ranges above.
MoneyResult money_from_heat(double heat_saved_kWh, const MoneyTerms& terms);

}  // namespace dewgap
