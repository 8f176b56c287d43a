// Whole-window U-value, ISO 10077-1, and the ventilated layers of ISO 6946.
#pragma once

#include <vector>

#include "dewgap/materials/materials.hpp"

namespace dewgap {

struct AreaPart {
  double area_m2 = 0.0;
  double u_value_W_m2K = 0.0;
};

struct EdgePart {
  double length_m = 0.0;
  double transmittance_W_mK = 0.0;
};

/// ISO 10077-1 eq. 1: (sum A_g U_g + sum A_f U_f + sum l_g Psi_g) / (sum A_g + sum A_f).
double window_u_value_W_m2K(const std::vector<AreaPart>& glazing, const std::vector<AreaPart>& frame,
                            const std::vector<EdgePart>& edges);

/// Surface resistances of a window, ISO 10077-1 Annex A, vertical.
inline constexpr double window_rsi_m2K_W = 0.13;
inline constexpr double window_rse_m2K_W = 0.04;

/// ISO 10077-1 eq. 2, two separate windows (each with its own frame) with an air space of resistance rs between:
/// 1 / (1/Uw1 - Rsi + Rs - Rse + 1/Uw2).
double double_window_u_value_W_m2K(double outer_u_W_m2K, double inner_u_W_m2K, double air_space_m2K_W,
                                   double rsi_m2K_W = window_rsi_m2K_W, double rse_m2K_W = window_rse_m2K_W);

/// Resistance of the closed air space of coupled and double windows, ISO 10077-1 Annex C Table C.1, computed from
/// EN 673 (mean 10 C, 15 K). corrected emissivities; width 2 to 250 mm.
double coupled_window_air_space_m2K_W(double width_m, double emissivity_outer, double emissivity_inner);

/// ISO 6946:2017 Annex D: unventilated layer between parallel faces, by direction of heat flow.
enum class HeatFlow { upwards, horizontal, downwards };
struct AirLayer {
  double thickness_m = 0.025;  ///< 0.002 to 0.3
  double emissivity_1 = 0.9;
  double emissivity_2 = 0.9;
  double mean_temperature_C = 10.0;
  double difference_K = 5.0;   ///< over 5 K the other branch applies
  HeatFlow direction = HeatFlow::horizontal;
};
double unventilated_air_layer_m2K_W(const AirLayer& layer);

/// ISO 6946:2017 6.9.3 and 6.9.4. openings_mm2_per_m: area of openings to OUTDOORS per metre of length for vertical
/// layers. Below 500 unventilated, 500-1500 interpolated on the total resistance, above 1500 well ventilated.
enum class LayerVentilation { unventilated, slightly_ventilated, well_ventilated };
LayerVentilation layer_ventilation(double openings_mm2_per_m);
/// total resistance from the two limits: unventilated and well ventilated.
double ventilated_total_resistance_m2K_W(double openings_mm2_per_m, double total_unventilated_m2K_W,
                                         double total_well_ventilated_m2K_W);

/// Frame of one material: 1 / (Rsi + d/lambda + Rse), with Annex D's guidance for timber of given thickness; metal
/// without a thermal break is limited by its films. thickness 5 to 200 mm.
double frame_u_value_W_m2K(FrameKind kind, double thickness_m);
double frame_u_value_W_m2K(double conductivity_W_mK, double thickness_m);

}  // namespace dewgap
