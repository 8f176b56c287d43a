// The steady vapour balance of a mixed gap whose coldest face may be wet.
#pragma once

namespace dewgap {

/// Inflows carry their own vapour; diffusion acts on vapour pressure; a wet face takes what the mass transfer
/// coefficient allows. All vapour pressures in Pa.
struct VapourBalanceInput {
  double from_room_m3_s = 0.0;
  double from_outdoors_m3_s = 0.0;
  double room_vapour_Pa = 0.0;
  double room_temperature_C = 20.0;
  double outdoor_vapour_Pa = 0.0;
  double outdoor_temperature_C = 0.0;
  double gap_temperature_C = 10.0;
  double diffusion_to_room_kg_sPa = 0.0;      ///< sheet, tape and breaks
  double diffusion_to_outdoors_kg_sPa = 0.0;
  double source_kg_s = 0.0;                   ///< damp timber, >= 0
  double face_area_m2 = 0.0;                  ///< of the coldest face
  double face_temperature_C = 0.0;
  double face_mass_transfer_m_s = 0.0;        ///< gap air to that face, on vapour density
};

struct VapourBalance {
  double potential_vapour_Pa = 0.0;  ///< sinks off
  double potential_dew_point_C = 0.0;  ///< frost point below zero
  double vapour_Pa = 0.0;            ///< with the sink
  double dew_point_C = 0.0;
  double face_saturation_Pa = 0.0;   ///< over ice below zero
  double condensation_kg_s = 0.0;    ///< >= 0
  double vapour_in_kg_s = 0.0;       ///< all that enters, by air, diffusion and source
  double vapour_out_kg_s = 0.0;      ///< all that leaves by air and diffusion
  bool undetermined = false;         ///< no exchange at all: the gap keeps whatever it held; vapours are outdoors'
};

/// Closed form (piecewise linear). in = out + condensation to rounding.
VapourBalance solve_vapour_balance(const VapourBalanceInput& input);

/// Condensation per area, g/(m2 h).
double condensation_g_m2h(double condensation_kg_s, double face_area_m2);

}  // namespace dewgap
