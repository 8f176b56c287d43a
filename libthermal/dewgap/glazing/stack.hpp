// The stack: panes, sheets, films and curtains between outdoors and a room, under real conditions (ISO
// 15099).
#pragma once

#include <array>
#include <cstddef>

#include "dewgap/air/gas.hpp"
#include "dewgap/glazing/convection.hpp"
#include "dewgap/validity.hpp"

namespace dewgap {

inline constexpr std::size_t max_stack_layers = 7;  ///< five panes and two room-side layers

/// One solid layer. Faces: outer looks outdoors, inner looks to the room.
struct StackLayer {
  double thickness_m = 0.004;       ///< 1e-5 to 0.1
  double conductivity_W_mK = 1.0;   ///< 0.01 to 400
  double emissivity_outer = 0.837;  ///< hemispherical, 0.01 to 0.99
  double emissivity_inner = 0.837;
  double long_wave_transmittance = 0.0;  ///< 0 to 0.9; emissivity + transmittance <= 1 on each face
  double absorbed_sun_W_m2 = 0.0;        ///< 0 to 1500, half at each face
  double outer_face_heat_W_m2 = 0.0;     ///< latent heat set free at the face (negative: taken), -500 to 500
  double inner_face_heat_W_m2 = 0.0;
};

/// Air that enters a gap, mixes and leaves: its heat capacity flow per area of the gap and its mean inlet
/// temperature (-60 to 90 C). One mixed node, where ISO 15099 has a profile along the height: the heat
/// carried is about 6 % less at 0.5 and 20 % less at 2 W/(m2 K) (computed at fixed faces), and its 4 v W/(m2
/// K) of forced convection is left out.
struct GapAirStream {
  double heat_capacity_flow_W_m2K = 0.0;  ///< rho cp Q / A, 0 to 200
  double inlet_temperature_C = 0.0;       ///< flow-weighted over the inlets
};

/// One gap. A gap to which the room side is open (behind a curtain or blind) is a gap too.
struct StackGap {
  double width_m = 0.020;  ///< 0.002 to 0.250
  GasMixture gas;
  GapAirStream air_stream;
  double convection_factor = 1.0;  ///< multiplies Nu - 1: the correlation spread, 0.3 to 3
};

struct OutdoorClimate {
  double air_temperature_C = 0.0;     ///< -60 to 60
  double sky_temperature_C = 0.0;     ///< effective radiant, -100 to 60
  double ground_temperature_C = 0.0;  ///< ground and facing walls, -60 to 80
  double sky_view_factor =
      0.5;  ///< of the outermost face, 0 to 1; (1 + cos tilt)/2 less obstruction and reveal
  double convection_W_m2K = 20.0;  ///< 0.1 to 200
};

struct RoomClimate {
  double air_temperature_C = 20.0;      ///< -60 to 60
  double radiant_temperature_C = 20.0;  ///< -60 to 80
  double film_convection_W_m2K = 0.0;   ///< 0: from the surface's own Rayleigh number; else fixed, up to 100
  double film_factor = 1.0;             ///< multiplies the computed film: its uncertainty, 0.3 to 3
};

struct Stack {
  std::array<StackLayer, max_stack_layers> layers{};  ///< from outdoors to the room
  std::array<StackGap, max_stack_layers - 1> gaps{};  ///< gap i lies between layer i and i + 1
  std::size_t layer_count = 1;                        ///< 1 to max_stack_layers
  double height_m = 1.0;                              ///< of the glazing, 0.05 to 10
  double tilt_deg = 90.0;                             ///< 0 (skylight) to 90 (vertical)
  GapCorrelation correlation = GapCorrelation::wright;
};

struct StackOptions {
  int max_iterations = 60;  ///< of one run of Newton's method
  double flux_tolerance =
      1e-9;  ///< imbalance of each face and of the whole over the largest flux, at least 1e-9 W/m2
  /// Throws InvalidInput for a tolerance outside 1e-13 to 1e-3 or iterations outside 1 to 1000.
  void validate() const;
};

/// Temperatures in C, fluxes in W/m2, positive from the room to outdoors. Entries beyond layer_count are
/// zero.
struct StackSolution {
  SolveStatus status = SolveStatus::iteration_limit;
  int iterations = 0;
  double residual_W_m2 = 0.0;  ///< largest energy imbalance at a face
  std::size_t layer_count = 0;
  std::array<double, 2 * max_stack_layers>
      face_temperature_C{};  ///< outer and inner face of each layer, outdoors first
  std::array<double, max_stack_layers - 1> gap_air_temperature_C{};
  std::array<double, max_stack_layers - 1> gap_convection_W_m2K{};  ///< face to face
  std::array<double, max_stack_layers - 1> gap_radiation_flux_W_m2{};
  std::array<double, max_stack_layers - 1>
      gap_convection_flux_W_m2{};      ///< leaving the warmer-side face into the gap air
  double room_convection_W_m2K = 0.0;  ///< film used at the room face
  double room_flux_W_m2 = 0.0;         ///< heat leaving the room's air and surfaces through the stack
  double room_radiation_flux_W_m2 = 0.0;
  double room_convection_flux_W_m2 = 0.0;
  double outdoor_flux_W_m2 = 0.0;  ///< heat arriving outdoors through the outermost face
  double outdoor_radiation_flux_W_m2 = 0.0;
  double outdoor_convection_flux_W_m2 = 0.0;
  double air_stream_heat_W_m2 = 0.0;  ///< heat carried away by the air streams, sum of C (T_out - T_in)
  /// room_flux over the difference of room and outdoor air temperature; only when that is at least 0.1 K,
  /// else 0.
  /// With an air stream it is the room side's share alone: air that comes from the room and returns is not in
  /// it.
  double u_value_W_m2K = 0.0;
  ValidityFlags flags;
};

/// Solves the energy balance of every face by damped Newton with an analytic Jacobian. O(layers^3), no
/// allocation. Throws InvalidInput for fields outside the ranges above, and when the answer has a gap or the
/// room's film outside the range of the gas properties, -100 to 99.85 C (strong sun between insulating
/// layers). Convection in a gap follows the difference of its faces only, as the closed-gap correlations have
/// it; a stream does not stir it. With closed gaps every stack tried converged (tests/glazing/states.csv) and
/// the balance is monotone. With strong streams (tens of W/(m2 K)) in wide gaps the balance need not be
/// monotone: several states may satisfy it, one is returned, and about 2 in a million drawn from the whole
/// permitted range end at the iteration limit.
StackSolution solve_stack(const Stack& stack, const OutdoorClimate& outdoors, const RoomClimate& room,
                          StackOptions options = {});

/// View factor of a plane to the unobstructed sky: (1 + cos tilt)/2; tilt 0 horizontal, 90 vertical.
double sky_view_factor(double tilt_deg);

/// Effective clear-sky temperature from air temperature (-60 to 60 C) and dew point (-60 to 40 C, not above
/// air) by Berdahl and Martin 1984 (from memory; their data end near -20 C), with cloud cover 0..1 taking it
/// to the air's.
double sky_temperature_C(double air_temperature_C, double dew_point_C, double cloud_cover);

}  // namespace dewgap
