#include "dewgap/energy/sun_cut.hpp"

#include <algorithm>

#include "dewgap/errors.hpp"

namespace dewgap {

std::array<double, 12> sun_cut_kWh_day(const MonthlySun& sun, double glass_area_m2,
                                       double glass_transmittance, double sheet_transmittance) {
  require_in_range(glass_area_m2, {0.0, 100.0}, "glass_area_m2", "m2");
  require_in_range(glass_transmittance, {0.0, 1.0}, "glass_transmittance", "-");
  require_in_range(sheet_transmittance, {0.0, 1.0}, "sheet_transmittance", "-");
  for (const double irradiation_kWh_m2_day : sun.plane_kWh_m2_day) {
    require_in_range(irradiation_kWh_m2_day, {0.0, 15.0}, "plane_kWh_m2_day", "kWh/(m2 day)");
  }
  std::array<double, 12> cut_kWh_day{};
  // A G tau_1 - A G tau_1 tau_2
  const double cut_m2 = glass_area_m2 * glass_transmittance * (1.0 - sheet_transmittance);
  std::transform(sun.plane_kWh_m2_day.begin(), sun.plane_kWh_m2_day.end(), cut_kWh_day.begin(),
                 [cut_m2](double irradiation_kWh_m2_day) { return irradiation_kWh_m2_day * cut_m2; });
  return cut_kWh_day;
}

}  // namespace dewgap
