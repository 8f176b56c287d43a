// The flow network of one gap: one unknown pressure, openings at heights on both sides, gusts in the hour.
#pragma once

#include <vector>

#include "dewgap/airflow/openings.hpp"
#include "dewgap/validity.hpp"

namespace dewgap {

/// An opening at a height above the sill of the gap, -1 to 50 m.
struct PlacedOpening {
  FlowResistance resistance;
  double height_m = 0.0;
};

/// Mean pressure and its spread within the hour. p = p_room - p_outdoor at `reference_height_m` of the gap;
/// positive drives air outwards.
struct PressureWithinHour {
  double mean_Pa = 0.0;
  double standard_deviation_Pa = 0.0;  ///< gusts, normal within the hour
};

struct GapNetwork {
  std::vector<PlacedOpening> to_room;      ///< breaks, inner seal
  std::vector<PlacedOpening> to_outdoors;  ///< old joints in series with the gap, weep holes
  double reference_height_m = 0.5;         ///< where the pressure is given: mid-height of the window
};

struct AirDensities {
  double outdoor_kg_m3 = 1.29;
  double gap_kg_m3 = 1.25;
  double room_kg_m3 = 1.20;
};

/// Flows averaged over the hour, m3/s, none negative. In steady state what enters leaves (volumes at gap
/// density), so a volume times the gap's density is the mass of air, and a volume of air from the room brings
/// its vapour pressure, not its vapour density.
struct GapFlows {
  double from_room_m3_s = 0.0;
  double from_outdoors_m3_s = 0.0;
  double to_room_m3_s = 0.0;
  double to_outdoors_m3_s = 0.0;
  double net_outwards_m3_s = 0.0;      ///< mean of room -> gap -> outdoors minus the other way
  double share_of_hour_inwards = 0.0;  ///< weight of quadrature points whose net flow is inwards
  double gap_pressure_Pa = 0.0;  ///< relative to outdoors at the reference height, at the mean pressure;
                                 ///< 0 when both sides are shut
  SolveStatus status = SolveStatus::converged;
};

/// Flow at one pressure (no gusts), -1e4 to 1e4 Pa; densities 0.5 to 2 kg/m3.
///
/// Each side is a hydrostatic column of its own density: at height z above the reference height
///   p_outdoors = -rho_outdoor g z,  p_gap = gap_pressure - rho_gap g z,  p_room = pressure - rho_room g z,
/// and every opening passes flow_m3_s of the difference at its height. The gap's pressure balances the flows;
/// their sum falls strictly with it, so there is always exactly one. Safeguarded Newton, balanced to 1e-12 of
/// what enters; a status other than converged would hold no answer. With the outer side shut the gap
/// exchanges air with the room between heights only and nothing passes; with both sides shut all flows are
/// zero. Leaves out: mixing inside one opening (each opening flows one way at a time), inertia and
/// compressibility, and the difference of density between the sides (at most 8 %) in the openings'
/// resistance: it counts in the columns only.
GapFlows flows_at_pressure(const GapNetwork& network, const AirDensities& densities, double pressure_Pa);

/// Averages flows_at_pressure over the hour by Gauss-Hermite quadrature with `points` (1, 3, 5, 7 or 9)
/// points. mean -1000 to 1000 Pa, standard deviation 0 to 1000 Pa. The flow turns round between
/// points, so the share of the hour is as coarse as the weights (7 points: 0.0005, 0.031, 0.271, 0.729 ...).
/// Gusts round a mean of nothing, without buoyancy, bring in less than they should: by 12 % (laminar) to 25 %
/// (square root) with 7 points, 9 to 21 % with 9. From a mean of a quarter of the standard deviation up, what
/// enters on the leading side is within 8 %; the other side's small share may be off by half of itself.
GapFlows flows_within_hour(const GapNetwork& network, const AirDensities& densities,
                           const PressureWithinHour& pressure, int points = 7);

/// Spreads a slot over a height: `count` (1 to 1000) equal openings at the midpoints of as many equal parts
/// of low to high, which share the slot's length.
std::vector<PlacedOpening> spread_over_height(const SlotShape& whole, double low_m, double high_m, int count);
/// The same for a joint given per metre, of `length_m` in all.
std::vector<PlacedOpening> spread_joint_over_height(double coefficient_m3_h_m, double exponent,
                                                    double length_m, double low_m, double high_m, int count);

}  // namespace dewgap
