#include <cmath>
#include <numbers>

#include "dewgap/air/constants.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/glazing/stack.hpp"

namespace dewgap {

double sky_view_factor(double tilt_deg) {
  require_in_range(tilt_deg, {0.0, 180.0}, "tilt", "deg");
  return 0.5 * (1.0 + std::cos(tilt_deg * std::numbers::pi / 180.0));
}

double sky_temperature_C(double air_temperature_C, double dew_point_C, double cloud_cover) {
  require_in_range(air_temperature_C, {-60.0, 60.0}, "air temperature", "C");
  require_in_range(dew_point_C, {-60.0, 40.0}, "dew point", "C");
  require_in_range(cloud_cover, {0.0, 1.0}, "cloud cover", "");
  if (dew_point_C > air_temperature_C) {
    throw InvalidInput("dew point", "must not exceed the air temperature");
  }
  // Berdahl and Martin 1984 (from memory), mean over day and night: e = 0.711 + 0.56 d + 0.73 d^2, d = dew
  // point / 100 C.
  const double d = dew_point_C / 100.0;
  const double clear = 0.711 + d * (0.56 + 0.73 * d);
  // Cloud is taken as black at air temperature (our convention).
  const double emissivity = clear + (1.0 - clear) * cloud_cover;
  return constants::kelvin(air_temperature_C) * std::sqrt(std::sqrt(emissivity)) - constants::celsius_zero_K;
}

}  // namespace dewgap
