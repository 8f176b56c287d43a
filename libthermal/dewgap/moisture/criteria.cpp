#include "dewgap/moisture/criteria.hpp"

#include <cmath>

#include "dewgap/air/saturation.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr PermittedRange temperatures_C{-60.0, 80.0};

}  // namespace

double temperature_factor(double surface_temperature_C, double room_temperature_C,
                          double outdoor_temperature_C) {
  require_in_range(surface_temperature_C, temperatures_C, "surface_temperature_C", "C");
  require_in_range(room_temperature_C, temperatures_C, "room_temperature_C", "C");
  require_in_range(outdoor_temperature_C, temperatures_C, "outdoor_temperature_C", "C");
  const double difference_K = room_temperature_C - outdoor_temperature_C;
  if (std::abs(difference_K) < 0.1) {
    throw InvalidInput("room_temperature_C",
                       "a temperature factor needs at least 0.1 K between room and outdoors");
  }
  // ISO 13788:2012 clause 3, definition of f_Rsi (from memory).
  return (surface_temperature_C - outdoor_temperature_C) / difference_K;
}

FilmBand film_band(double film_g_m2) {
  require_in_range(film_g_m2, {0.0, 1e6}, "film_g_m2", "g/m2");
  if (film_g_m2 <= 0.0) {
    return FilmBand::dry;
  }
  if (film_g_m2 < droplets_from_g_m2) {
    return FilmBand::mist;
  }
  return film_g_m2 <= runs_above_g_m2 ? FilmBand::droplets : FilmBand::runs;
}

std::string_view name_of(FilmBand band) {
  switch (band) {
    case FilmBand::dry:
      return "dry";
    case FilmBand::mist:
      return "mist";
    case FilmBand::droplets:
      return "droplets";
    case FilmBand::runs:
      return "runs";
  }
  return "unknown band";
}

double surface_relative_humidity(double room_vapour_Pa, double surface_temperature_C) {
  require_in_range(room_vapour_Pa, {0.0, 20000.0}, "room_vapour_Pa", "Pa");
  require_in_range(surface_temperature_C, temperatures_C, "surface_temperature_C", "C");
  // ISO 13788:2012 clause 5 (from memory): vapour pressure over saturation at the surface.
  return room_vapour_Pa / saturation_pressure_Pa(surface_temperature_C);
}

}  // namespace dewgap
