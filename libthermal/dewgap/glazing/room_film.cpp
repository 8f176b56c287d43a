#include <cmath>
#include <numbers>

#include "dewgap/air/constants.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/glazing/convection.hpp"
#include "dewgap/glazing/room_film_kernel.hpp"

namespace dewgap {
namespace glazing_kernel {

const GapGas& iso_15099_air() {
  static const GapGas air = GapGas::iso_15099(GasMixture{});
  return air;
}

namespace {

struct RisingFilm {
  double sin_tilt = 1.0;
  double critical_rayleigh = 0.0;
};

// ISO 15099 8.3.2.2 (from memory): Ra_cv = 2.5e5 (e^(0.72 tilt) / sin tilt)^(1/5), tilt in degrees, from 15
// up.
RisingFilm rising_film(double tilt_deg) {
  const double sin_tilt = std::sin(tilt_deg * std::numbers::pi / 180.0);
  if (tilt_deg < 15.0) {
    return {sin_tilt, 0.0};
  }
  return {sin_tilt, 2.5e5 * std::exp(0.2 * 0.72 * tilt_deg) / std::pow(sin_tilt, 0.2)};
}

}  // namespace

RoomFilm RoomFilm::natural(double air_temperature_K, double height_m, double tilt_deg, double factor) {
  RoomFilm film;
  film.air_temperature_K_ = air_temperature_K;
  film.height_m_ = height_m;
  film.tilt_deg_ = tilt_deg;
  film.factor_ = factor;
  static const RisingFilm vertical = rising_film(90.0);
  const auto rising = tilt_deg == 90.0 ? vertical : rising_film(tilt_deg);
  film.sin_tilt_ = rising.sin_tilt;
  film.critical_rayleigh_ = rising.critical_rayleigh;
  return film;
}

RoomFilm RoomFilm::fixed(double air_temperature_K, double convection_W_m2K) {
  RoomFilm film;
  film.air_temperature_K_ = air_temperature_K;
  film.fixed_W_m2K_ = convection_W_m2K;
  return film;
}

FilmNusselt RoomFilm::cold_below(double ra) const {
  FilmNusselt film;
  if (ra > 1.0e12) {
    film.flags.raise(ValidityFlag::room_film_rayleigh_number);
  }
  if (tilt_deg_ < 15.0) {
    // a) tilt under 15 degrees: Nu = 0.13 Ra^(1/3)
    return {0.13 * std::cbrt(ra), 1.0 / 3.0, film.flags};
  }
  if (ra <= critical_rayleigh_) {
    // b) 15 to 90 degrees, laminar: Nu = 0.56 (Ra sin tilt)^(1/4)
    return {0.56 * std::sqrt(std::sqrt(ra * sin_tilt_)), 0.25, film.flags};
  }
  // b) beyond Ra_cv: Nu = 0.13 (Ra^(1/3) - Ra_cv^(1/3)) + 0.56 (Ra_cv sin tilt)^(1/4)
  const double rising = 0.13 * std::cbrt(ra);
  const double nusselt = rising - 0.13 * std::cbrt(critical_rayleigh_) +
                         0.56 * std::sqrt(std::sqrt(critical_rayleigh_ * sin_tilt_));
  return {nusselt, rising / (3.0 * nusselt), film.flags};
}

FilmNusselt RoomFilm::warm_below(double ra) const {
  if (tilt_deg_ == 90.0) {
    return cold_below(ra);
  }
  FilmNusselt film;
  if (tilt_deg_ < 1.0) {
    // d) 179 to 180 degrees: Nu = 0.58 Ra^(1/5), Ra to 1e11
    if (ra > 1.0e11) {
      film.flags.raise(ValidityFlag::room_film_rayleigh_number);
    }
    return {0.58 * std::pow(ra, 0.2), 0.2, film.flags};
  }
  // c) 90 to 179 degrees: Nu = 0.56 (Ra sin tilt)^(1/4), Ra sin tilt 1e5 to 1e11
  const double r = ra * sin_tilt_;
  if (r < 1.0e5 || r > 1.0e11) {
    film.flags.raise(ValidityFlag::room_film_rayleigh_number);
  }
  return {0.56 * std::sqrt(std::sqrt(r)), 0.25, film.flags};
}

SurfaceFilm RoomFilm::at(double surface_temperature_K) const {
  if (fixed_W_m2K_ > 0.0) {
    return {fixed_W_m2K_, 0.0, {}};
  }
  const double difference_K = surface_temperature_K - air_temperature_K_;
  if (std::abs(difference_K) < 1e-9) {
    return {};
  }
  // ISO 15099 8.3.2.2: properties at Tair + (Tsurface - Tair)/4; Ra over the surface's height.
  const auto air = iso_15099_air().at(air_temperature_K_ + 0.25 * difference_K);
  const double ra = air.rayleigh_factor * std::abs(difference_K) * height_m_ * height_m_ * height_m_;
  // A face of the room's ceiling light looks down: colder than the air it is stirred, warmer it is
  // stratified.
  const auto nu = difference_K < 0.0 ? cold_below(ra) : warm_below(ra);
  const double h = factor_ * nu.nusselt * air.conductivity_W_mK / height_m_;
  const double log_slope = nu.exponent * (1.0 / difference_K + 0.25 * air.rayleigh_log_slope) +
                           0.25 * air.conductivity_slope / air.conductivity_W_mK;
  return {h, h * log_slope, nu.flags};
}

}  // namespace glazing_kernel

SurfaceFilm room_side_film(double surface_temperature_C, double air_temperature_C, double height_m,
                           double tilt_deg) {
  require_in_range(surface_temperature_C, {-90.0, 99.0}, "surface temperature", "C");
  require_in_range(air_temperature_C, {-90.0, 99.0}, "air temperature", "C");
  require_in_range(height_m, {0.05, 10.0}, "height", "m");
  require_in_range(tilt_deg, {0.0, 90.0}, "tilt", "deg");
  return glazing_kernel::RoomFilm::natural(constants::kelvin(air_temperature_C), height_m, tilt_deg, 1.0)
      .at(constants::kelvin(surface_temperature_C));
}

double vertical_plate_nusselt_churchill_chu(double rayleigh, double prandtl) {
  require_in_range(rayleigh, {0.0, 1.0e12}, "Rayleigh number", "");
  require_in_range(prandtl, {1e-3, 1e4}, "Prandtl number", "");
  // Churchill and Chu 1975, eq. 9: Nu = (0.825 + 0.387 Ra^(1/6) / (1 + (0.492/Pr)^(9/16))^(8/27))^2.
  const double prandtl_term = std::pow(1.0 + std::pow(0.492 / prandtl, 9.0 / 16.0), 8.0 / 27.0);
  const double root = 0.825 + 0.387 * std::pow(rayleigh, 1.0 / 6.0) / prandtl_term;
  return root * root;
}

GapNusselt gap_nusselt_textbook(double rayleigh, double prandtl, double aspect_ratio) {
  require_in_range(rayleigh, {0.0, 1.0e12}, "Rayleigh number", "");
  require_in_range(prandtl, {1e-3, 1e5}, "Prandtl number", "");
  require_in_range(aspect_ratio, {0.2, 5000.0}, "aspect ratio of the gap", "");
  GapNusselt nu;
  if (aspect_ratio < 10.0 || aspect_ratio > 40.0) {
    nu.flags.raise(ValidityFlag::gap_aspect_ratio);
  }
  if (rayleigh < 1.0e4 || rayleigh > 1.0e7) {
    nu.flags.raise(ValidityFlag::gap_rayleigh_number);
  }
  const double value =
      0.42 * std::pow(rayleigh, 0.25) * std::pow(prandtl, 0.012) * std::pow(aspect_ratio, -0.3);
  if (value > 1.0) {  // still gas conducts with Nu 1
    nu.nusselt = value;
    nu.slope = 0.25 * value / rayleigh;
  }
  return nu;
}

double outdoor_convection_W_m2K(double wind_m_s) {
  require_in_range(wind_m_s, {0.0, 40.0}, "wind speed", "m/s");
  return 4.0 + 4.0 * wind_m_s;  // ISO 15099 8.3.3.3, from memory
}

}  // namespace dewgap
