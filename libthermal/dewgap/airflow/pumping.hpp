// Air that the gap draws in without a steady flow: by a sheet that flexes under gusts, and by air that cools.
#pragma once

#include "dewgap/airflow/gap_network.hpp"

namespace dewgap {

/// A rectangular sheet, simply supported along its edges (they turn freely and do not move out of plane).
struct FlexingSheet {
  double width_m = 0.8;              ///< 0.05 to 5
  double height_m = 1.2;             ///< 0.05 to 5
  double thickness_m = 0.004;        ///< 1e-5 to 0.05
  double youngs_modulus_Pa = 3.2e9;  ///< 1e8 to 3e11
  double poisson_ratio = 0.37;       ///< 0 to 0.5
};

/// Volume that the sheet sweeps, and the deflection of its centre, for each pascal of uniform pressure across
/// it: thin plate, small deflections, Levy's series, which sums Navier's double one along the long side
/// (Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, sections 28 and 30, from memory), to 1e-9.
/// Valid while the centre moves less than half the thickness, that is below plate_valid_to_Pa. Beyond that
/// the sheet stiffens as a membrane (thin films do from the start), and an edge that is held fast lets it
/// move a third to a fifth as far: the volume is an upper bound in both cases.
double plate_volume_per_pressure_m3_Pa(const FlexingSheet& sheet);
double plate_volume_per_pressure_m3_Pa(double width_m, double height_m, double thickness_m,
                                       double youngs_modulus_Pa, double poisson_ratio);
double plate_deflection_per_pressure_m_Pa(const FlexingSheet& sheet);

/// Pressure across the sheet at which its centre has moved by half its thickness.
double plate_valid_to_Pa(const FlexingSheet& sheet);

/// Air drawn into the gap by the flexing sheet, mean over the time, m3/s. Gusts: a normal pressure across the
/// sheet with this standard deviation (0 to 1000 Pa) that rises through its mean cycles_per_s times a second
/// (0 to 10). The mean rise per second of such a pressure is sqrt(2 pi) sigma cycles_per_s, whatever its
/// spectrum (Rice, Bell System Tech. J. 23 (1944) and 24 (1945), from memory); for a narrow band it is twice
/// the mean amplitude sigma sqrt(pi / 2) a cycle. Upper bound: it takes the sheet to follow each gust, so
/// that openings to the side of the gust are too small to fill the gap, and every breath to be mixed. No
/// source was found for cycles_per_s: our convention is 1/30 to 1/3. volume_per_pressure_m3_Pa 0 to 0.1.
double pumped_m3_s(double volume_per_pressure_m3_Pa, double pressure_standard_deviation_Pa,
                   double cycles_per_s);

/// Part of a gust's pressure that flexes the sheet, 0 to 1: the gap follows outdoors through its outer
/// openings and the room through its inner ones, so that the sheet feels outer conductance / (inner + outer)
/// of it; and a gap that fills too slowly through both feels less: 1 / sqrt(1 + (2 pi f tau)^2), tau = volume
/// per Pa / (inner + outer conductance). Conductances are those at 1 Pa. 0 with both sides shut, and with the
/// outer side shut. To be multiplied into the volume that pumped_m3_s takes.
double flexing_response(const GapNetwork& network, double volume_per_pressure_m3_Pa, double cycles_per_s);

/// Air drawn in while the gap's air cools by cooling_K (-100 to 100) in duration_s (1 to 1e7), m3/s averaged
/// over it: ideal gas at constant pressure, volume x cooling / mean absolute temperature. 0 when it warms:
/// air leaves then. Volume 0 to 100 m3, mean temperature -60 to 80 C.
double breathed_in_m3_s(double gap_volume_m3, double cooling_K, double mean_temperature_C, double duration_s);

/// Share of what is breathed and pumped that comes from the room, 0 to 1: the room side's part of the flow
/// that all openings pass at 1 Pa. With both sides shut nothing is drawn in and the share is 0; see
/// open_to_either_side.
double room_share_of_conductance(const GapNetwork& network);

/// Whether any opening lets the gap breathe; without one, breathed and pumped air must be left out.
bool open_to_either_side(const GapNetwork& network);

}  // namespace dewgap
