// The flow network of one gap: one unknown pressure, openings at heights on both sides, gusts within the hour.
#pragma once

#include <vector>

#include "dewgap/airflow/openings.hpp"
#include "dewgap/validity.hpp"

namespace dewgap {

/// An opening at a height above the sill of the gap.
struct PlacedOpening {
  FlowResistance resistance;
  double height_m = 0.0;
};

/// Mean pressure and its spread within the hour. p = p_room - p_outdoor at `reference_height_m` of the gap; positive
/// drives air outwards.
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

/// Flows averaged over the hour, m3/s, none negative. In steady state what enters leaves (volumes at gap density).
struct GapFlows {
  double from_room_m3_s = 0.0;
  double from_outdoors_m3_s = 0.0;
  double to_room_m3_s = 0.0;
  double to_outdoors_m3_s = 0.0;
  double net_outwards_m3_s = 0.0;       ///< mean of room -> gap -> outdoors minus the other way
  double share_of_hour_inwards = 0.0;   ///< weight of quadrature points whose net flow is inwards
  double gap_pressure_Pa = 0.0;         ///< relative to outdoors at the reference height, at the mean pressure
  SolveStatus status = SolveStatus::converged;
};

/// Flow at one pressure (no gusts).
GapFlows flows_at_pressure(const GapNetwork& network, const AirDensities& densities, double pressure_Pa);

/// Averages flows_at_pressure over the hour by Gauss-Hermite quadrature with `points` (1, 3, 5, 7 or 9) points.
GapFlows flows_within_hour(const GapNetwork& network, const AirDensities& densities,
                           const PressureWithinHour& pressure, int points = 7);

/// Spreads a joint of `total` resistance-free conductance over a height: `count` equal openings at the midpoints.
std::vector<PlacedOpening> spread_over_height(const SlotShape& whole, double low_m, double high_m, int count);
/// The same for a joint given per metre, of `length_m` in all.
std::vector<PlacedOpening> spread_joint_over_height(double coefficient_m3_h_m, double exponent, double length_m,
                                                    double low_m, double high_m, int count);

/// Exchange without mean pressure or buoyancy: thermal breathing of the gap's air as its temperature swings, m3/s
/// averaged over a day, entering from the side whose openings are larger by conductance share.
double thermal_breathing_m3_s(double gap_volume_m3, double daily_swing_K, double mean_temperature_C);

}  // namespace dewgap
