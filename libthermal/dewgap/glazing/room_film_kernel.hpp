// The room-side film, prepared for many surface temperatures. Private to glazing.
#pragma once

#include "dewgap/glazing/convection.hpp"
#include "dewgap/glazing/gap_gas_kernel.hpp"

namespace dewgap::glazing_kernel {

/// Air as ISO 15099 has it, worked out once a process.
const GapGas& iso_15099_air();

/// Nusselt number of a free surface with the exponent of its slope, d ln Nu / d ln Ra.
struct FilmNusselt {
  double nusselt = 0.0;
  double exponent = 0.0;
  ValidityFlags flags;
};

class RoomFilm {
 public:
  RoomFilm() = default;
  /// Natural convection by ISO 15099 8.3.2.2 times `factor`.
  static RoomFilm natural(double air_temperature_K, double height_m, double tilt_deg, double factor);
  static RoomFilm fixed(double air_temperature_K, double convection_W_m2K);

  SurfaceFilm at(double surface_temperature_K) const;
  double air_temperature_K() const { return air_temperature_K_; }

 private:
  FilmNusselt cold_below(double rayleigh) const;  // tilt up to 90 degrees
  FilmNusselt warm_below(double rayleigh) const;  // the same face, warmer than the air

  double air_temperature_K_ = 0.0;
  double height_m_ = 1.0;
  double tilt_deg_ = 90.0;
  double sin_tilt_ = 1.0;
  double critical_rayleigh_ = 0.0;
  double factor_ = 1.0;
  double fixed_W_m2K_ = 0.0;
};

}  // namespace dewgap::glazing_kernel
