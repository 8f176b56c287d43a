// The outdoor air of the design cases: the coldest month's mean and its frost night.
#include <algorithm>

#include "dewgap/air/saturation.hpp"
#include "dewgap/climate/places.hpp"

namespace dewgap {
namespace {

double saturation_over_water_Pa(double temperature_C) {
  return saturation_pressure_Pa(temperature_C, SaturationFormula::murphy_koop, Phase::water);
}

DesignCondition of_month(const MonthlyNormals& month, double temperature_C) {
  DesignCondition condition;
  condition.outdoor_temperature_C = temperature_C;
  condition.vapour_was_modelled = !month.vapour_pressure_Pa.has_value();
  // Lacking vapour pressure: saturation at the mean minimum (FAO Paper 56 eq. 48, from memory).
  condition.outdoor_vapour_Pa = month.vapour_pressure_Pa.value_or(saturation_over_water_Pa(month.min_C));
  condition.wind_was_modelled = !month.wind_m_s.has_value();
  condition.wind_m_s = month.wind_m_s.value_or(default_wind_m_s);
  return condition;
}

const MonthlyNormals& coldest(const Place& place) {
  return place.months[static_cast<std::size_t>(coldest_month(place))];
}

}  // namespace

DesignCondition coldest_month_mean(const Place& place) {
  const auto& month = coldest(place);
  return of_month(month, month.mean_C);
}

DesignCondition frost_night(const Place& place) {
  const auto& month = coldest(place);
  auto condition = of_month(month, month.min_C);
  // The night's air holds no more than saturation over water; the rest has gone as dew or fog.
  condition.outdoor_vapour_Pa = std::min(condition.outdoor_vapour_Pa, saturation_over_water_Pa(month.min_C));
  return condition;
}

}  // namespace dewgap
