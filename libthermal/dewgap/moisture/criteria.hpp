// When damp matters: surface criteria and bands of film on a pane.
#pragma once

#include <string_view>

namespace dewgap {

/// (T_surface - T_outdoors) / (T_room - T_outdoors), ISO 13788 eq. for fRsi. Throws when the difference is
/// under 0.1 K; temperatures -60 to 80 C.
double temperature_factor(double surface_temperature_C, double room_temperature_C,
                          double outdoor_temperature_C);

/// Bands of the film that a vertical impermeable face retains, BS 5250:2002 (from memory): below 30 g/m2
/// mist, 30 to 50 droplets begin to run, above 50 runs. Both edges belong to droplets; no film at all is dry.
/// film_g_m2 0 to 1e6.
inline constexpr double droplets_from_g_m2 = 30.0;
inline constexpr double runs_above_g_m2 = 50.0;
enum class FilmBand { dry, mist, droplets, runs };
FilmBand film_band(double film_g_m2);
std::string_view name_of(FilmBand band);

/// Surface humidity (0..1) of room air at a colder face: room vapour pressure over the face's saturation
/// pressure, over ice below 0 C (Murphy and Koop). Above 1 the face is wet. Vapour 0 to 20000 Pa, face -60 to
/// 80 C.
double surface_relative_humidity(double room_vapour_Pa, double surface_temperature_C);
inline constexpr double mould_surface_humidity = 0.80;  ///< ISO 13788, monthly mean, from memory

}  // namespace dewgap
