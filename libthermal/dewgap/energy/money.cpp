#include "dewgap/energy/money.hpp"

#include <cmath>

#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

void validate(double heat_saved_kWh, const MoneyTerms& terms) {
  require_in_range(heat_saved_kWh, {-1e7, 1e7}, "heat_saved_kWh", "kWh");
  require_in_range(terms.price_per_kWh, {0.0, 1e6}, "price_per_kWh", "currency/kWh");
  require_in_range(terms.system_efficiency, {0.3, 6.0}, "system_efficiency", "-");
  require_in_range(terms.discount_rate, {-0.05, 0.5}, "discount_rate", "1/year");
  require_in_range(terms.price_rise, {-0.1, 0.3}, "price_rise", "1/year");
  if (terms.carbon_kg_per_kWh) {
    require_in_range(*terms.carbon_kg_per_kWh, {0.0, 10.0}, "carbon_kg_per_kWh", "kg/kWh");
  }
  if (terms.cost) {
    require_in_range(*terms.cost, {0.0, 1e9}, "cost", "currency");
  }
  if (terms.life_years) {
    require_in_range(*terms.life_years, {1.0, 60.0}, "life_years", "year");
  }
}

/// Present worth of a yearly sum of 1 at today's price: q + q^2 + ... + q^n with q = (1 + e) / (1 + d), the
/// modified uniform present value (life-cycle costing handbooks, from memory), in closed form q (1 - q^n) /
/// (1 - q).
double present_worth_years(double life_years, double discount_rate, double price_rise) {
  const double log_ratio = std::log1p(price_rise) - std::log1p(discount_rate);
  if (log_ratio == 0.0) {
    return life_years;
  }
  return std::exp(log_ratio) * std::expm1(life_years * log_ratio) / std::expm1(log_ratio);
}

}  // namespace

MoneyResult money_from_heat(double heat_saved_kWh, const MoneyTerms& terms) {
  validate(heat_saved_kWh, terms);
  MoneyResult result;
  result.fuel_kWh = heat_saved_kWh / terms.system_efficiency;
  result.saved_per_year = result.fuel_kWh * terms.price_per_kWh;
  result.never_pays_back = !(result.saved_per_year > 0.0);
  if (terms.carbon_kg_per_kWh) {
    result.carbon_kg_per_year = result.fuel_kWh * *terms.carbon_kg_per_kWh;
  }
  if (terms.cost && !result.never_pays_back) {
    // simple payback: no discount, today's price
    result.payback_years = *terms.cost / result.saved_per_year;
  }
  if (terms.cost && terms.life_years) {
    result.net_present_value =
        result.saved_per_year *
            present_worth_years(*terms.life_years, terms.discount_rate, terms.price_rise) -
        *terms.cost;
  }
  return result;
}

}  // namespace dewgap
