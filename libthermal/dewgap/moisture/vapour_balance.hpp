// The steady vapour balance of a mixed gap whose coldest face may be wet.
#pragma once

namespace dewgap {

/// Inflows carry their own vapour; diffusion acts on vapour pressure; a wet face takes what the mass transfer
/// coefficient allows. All vapour pressures in Pa, 0 to 20000; temperatures -60 to 80 C.
///
/// Inflows are volumes at the gap's temperature and pressure, as GapFlows gives them; as much leaves. Air
/// that is warmed or cooled on its way in at constant pressure keeps its vapour pressure, so it brings vapour
/// pressure / (R_v T_gap) per m3 and takes gap vapour pressure / (R_v T_gap) out: a gap fed from one side
/// only settles at exactly that side's vapour pressure, whatever the flow. Leaves out the vapour's own share
/// of the flow (under 2 %).
struct VapourBalanceInput {
  double from_room_m3_s = 0.0;      ///< at gap temperature, 0 to 10
  double from_outdoors_m3_s = 0.0;  ///< the same
  double room_vapour_Pa = 0.0;
  double room_temperature_C = 20.0;  ///< states the case; the balance does not depend on it (see above)
  double outdoor_vapour_Pa = 0.0;
  double outdoor_temperature_C = 0.0;  ///< the same
  double gap_temperature_C = 10.0;
  double diffusion_to_room_kg_sPa = 0.0;  ///< sheet, tape and breaks
  double diffusion_to_outdoors_kg_sPa = 0.0;
  double source_kg_s = 0.0;   ///< damp timber, >= 0
  double face_area_m2 = 0.0;  ///< of the coldest face
  double face_temperature_C = 0.0;
  double face_mass_transfer_m_s = 0.0;  ///< gap air to that face, on vapour density
};

struct VapourBalance {
  double potential_vapour_Pa = 0.0;    ///< sinks off
  double potential_dew_point_C = 0.0;  ///< frost point below zero (Murphy and Koop)
  double vapour_Pa = 0.0;              ///< with the sink
  double dew_point_C = 0.0;
  double face_saturation_Pa = 0.0;  ///< over ice below zero
  double condensation_kg_s = 0.0;   ///< >= 0
  /// All that enters: with inflowing air, from the source, and by diffusion from a side that is damper than
  /// the gap.
  double vapour_in_kg_s = 0.0;
  /// All that leaves: with outflowing air, and by diffusion to a side that is drier than the gap. Diffusion
  /// counts net of both directions, each side by itself.
  double vapour_out_kg_s = 0.0;
  /// No exchange at all by air or diffusion: no steady state (with a source the gap would fill without end).
  /// Vapours and dew points are then outdoors', and every flow is 0.
  bool undetermined = false;
};

/// Closed form (piecewise linear). in = out + condensation to rounding. The face takes
/// h_m A (e_gap - e_face) / (R_v T), T the mean of gap and face, once the potential vapour pressure is above
/// the face's saturation over ice (below 0 C) or water, by Murphy and Koop. Steady: a dry face gives nothing
/// back. Throws InvalidInput, and when there is no dew point between -80 and 100 C (vapour near zero, or a
/// source beyond what so little exchange can carry off).
VapourBalance solve_vapour_balance(const VapourBalanceInput& input);

/// Condensation per area, g/(m2 h). Area 1e-6 to 1000 m2.
double condensation_g_m2h(double condensation_kg_s, double face_area_m2);

}  // namespace dewgap
