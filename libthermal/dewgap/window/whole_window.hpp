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

/// ISO 10077-1 eq. 1 (from memory): (sum A_g U_g + sum A_f U_f + sum l_g Psi_g) / (sum A_g + sum A_f). Areas
/// and lengths 0 to 1e4, U 0 to 20 W/(m2 K), Psi -1 to 5 W/(m K). Throws InvalidInput outside, or when there
/// is no area.
double window_u_value_W_m2K(const std::vector<AreaPart>& glazing, const std::vector<AreaPart>& frame,
                            const std::vector<EdgePart>& edges);

/// Surface resistances of a window, ISO 10077-1 Annex A, vertical.
inline constexpr double window_rsi_m2K_W = 0.13;
inline constexpr double window_rse_m2K_W = 0.04;

/// ISO 10077-1 eq. 2, two separate windows (each with its own frame) with an air space of resistance rs
/// between: 1 / (1/Uw1 - Rsi + Rs - Rse + 1/Uw2), from memory. U 0.01 to 20, Rs 0 to 10, films 0 to 1. Throws
/// InvalidInput when a window transmits more than its own film towards the air space would let through.
double double_window_u_value_W_m2K(double outer_u_W_m2K, double inner_u_W_m2K, double air_space_m2K_W,
                                   double rsi_m2K_W = window_rsi_m2K_W, double rse_m2K_W = window_rse_m2K_W);

/// Resistance of the closed air space of coupled and double windows, ISO 10077-1 Annex C Table C.1, computed
/// from EN 673 (mean 10 C, 15 K). Corrected emissivities; width 2 to 250 mm.
double coupled_window_air_space_m2K_W(double width_m, double emissivity_outer, double emissivity_inner);

/// ISO 6946:2017 Annex D (from memory): unventilated layer between parallel faces, by direction of heat flow.
/// Emissivities 0.01 to 1, mean -60 to 80 C, difference 0 to 60 K. The two branches in the difference are not
/// quite continuous at 5 K (ha horizontal 1.25 against 1.248 W/(m2 K), as published).
enum class HeatFlow { upwards, horizontal, downwards };
struct AirLayer {
  double thickness_m = 0.025;  ///< 0.002 to 0.3
  double emissivity_1 = 0.9;
  double emissivity_2 = 0.9;
  double mean_temperature_C = 10.0;
  double difference_K = 5.0;  ///< over 5 K the other branch applies
  HeatFlow direction = HeatFlow::horizontal;
};
double unventilated_air_layer_m2K_W(const AirLayer& layer);

/// ISO 6946:2017 6.9.3 and 6.9.4. openings_mm2_per_m: area of openings to OUTDOORS per metre of length for
/// vertical layers. Up to 500 unventilated, 500-1500 interpolated on the total resistance, above 1500 well
/// ventilated (which side the limit itself belongs to is from memory; the resistance is the same on both).
/// Openings to the room are not meant: they never take the old glass out of the sum.
enum class LayerVentilation { unventilated, slightly_ventilated, well_ventilated };
LayerVentilation layer_ventilation(double openings_mm2_per_m);
/// Total resistance from the two limits: unventilated and well ventilated (the layer and all outside it
/// dropped, a still external film equal to Rsi). 0.001 to 100 m2 K/W, the well ventilated one not the larger.
double ventilated_total_resistance_m2K_W(double openings_mm2_per_m, double total_unventilated_m2K_W,
                                         double total_well_ventilated_m2K_W);

/// Frame of one material as a plain slab: 1 / (Rsi + d/lambda + Rse). thickness 5 to 200 mm (mean of sash and
/// frame), conductivity 0.01 to 400 W/(m K). Metal without a thermal break is limited by its films, to
/// 5.9 W/(m2 K) of developed area. Leaves out rebates, hollows and corners: for timber 70 mm thick it reads
/// 15 % (hardwood) to 22 % (softwood) below the figure of ISO 10077-1 Annex D, as remembered. Where a
/// certificate needs it, give the standard's value.
double frame_u_value_W_m2K(FrameKind kind, double thickness_m);
double frame_u_value_W_m2K(double conductivity_W_mK, double thickness_m);

}  // namespace dewgap
