#include "dewgap/airflow/gap_network.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "dewgap/air/constants.hpp"
#include "dewgap/airflow/flow_kernel.hpp"
#include "dewgap/airflow/gauss_hermite_kernel.hpp"
#include "dewgap/airflow/network_checks_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr double first_pass_balance = 1e-9;
constexpr double second_pass_balance = 1e-13;
constexpr double converged_balance = 1e-12;
constexpr int max_iterations = 200;

/// One side as the gap feels it: the gap pressure at which an opening at height z passes nothing is
/// level + gradient (z - reference height).
struct Side {
  const std::vector<PlacedOpening>& openings;
  double level_Pa = 0.0;
  double gradient_Pa_m = 0.0;
};

struct Sides {
  Side room;
  Side outdoors;
  double reference_height_m = 0.0;
};

/// Pressures inside this file are relative to the mean of room and outdoors at the reference height, so that
/// mirrored networks calculate with the same numbers. Hydrostatic columns: p_side(z) - p_gap(z) = level - gap
/// pressure + (rho_gap - rho_side) g (z - z_ref).
Sides sides_of(const GapNetwork& network, const AirDensities& densities, double pressure_Pa) {
  constexpr double g = constants::standard_gravity_m_s2;
  return {.room = {network.to_room, 0.5 * pressure_Pa, (densities.gap_kg_m3 - densities.room_kg_m3) * g},
          .outdoors = {network.to_outdoors, -0.5 * pressure_Pa,
                       (densities.gap_kg_m3 - densities.outdoor_kg_m3) * g},
          .reference_height_m = network.reference_height_m};
}

/// Calls visit(opening, pressure at which it passes nothing) for every opening of a side that is not shut.
template <class Visit>
void visit_side(const Side& side, double reference_height_m, Visit&& visit) {
  for (const auto& opening : side.openings) {
    if (!opening.resistance.shut()) {
      visit(opening.resistance, side.level_Pa + side.gradient_Pa_m * (opening.height_m - reference_height_m));
    }
  }
}

template <class Visit>
void visit_all(const Sides& sides, Visit&& visit) {
  visit_side(sides.room, sides.reference_height_m, visit);
  visit_side(sides.outdoors, sides.reference_height_m, visit);
}

/// Where the gap's pressure can lie, and a first guess: exact when every opening is laminar.
struct PressureRange {
  double low_Pa = std::numeric_limits<double>::infinity();
  double high_Pa = -std::numeric_limits<double>::infinity();
  double guess_Pa = 0.0;
  bool open() const { return low_Pa <= high_Pa; }
};

PressureRange pressure_range(const Sides& sides) {
  PressureRange range;
  visit_all(sides, [&](const FlowResistance&, double still_Pa) {
    range.low_Pa = std::min(range.low_Pa, still_Pa);
    range.high_Pa = std::max(range.high_Pa, still_Pa);
  });
  if (!(range.low_Pa < range.high_Pa)) {
    range.guess_Pa = range.low_Pa;
    return range;
  }
  double conductance = 0.0;
  double moment = 0.0;
  const double scale_Pa = range.high_Pa - range.low_Pa;
  visit_all(sides, [&](const FlowResistance& opening, double still_Pa) {
    const double slope = airflow_kernel::flow_and_slope(opening, scale_Pa).slope_m3_s_Pa;
    conductance += slope;
    moment += slope * (still_Pa - range.low_Pa);
  });
  range.guess_Pa = range.low_Pa + moment / conductance;
  return range;
}

/// Sums over the openings at one gap pressure, given as an offset from an origin.
struct Balance {
  double net_m3_s = 0.0;    ///< into the gap
  double gross_m3_s = 0.0;  ///< sum of magnitudes
  double slope_m3_s_Pa = 0.0;
  bool within(double share) const { return std::abs(net_m3_s) <= share * gross_m3_s; }
};

Balance balance_at(const Sides& sides, double origin_Pa, double offset_Pa) {
  Balance sum;
  visit_all(sides, [&](const FlowResistance& opening, double still_Pa) {
    const auto [flow, slope] = airflow_kernel::flow_and_slope(opening, (still_Pa - origin_Pa) - offset_Pa);
    sum.net_m3_s += flow;
    sum.gross_m3_s += std::abs(flow);
    sum.slope_m3_s_Pa += slope;
  });
  return sum;
}

/// Next offset inside the bracket, by how many steps ago the imbalance last halved (0, 1, 2 ...): Newton;
/// half the Newton step, which is Newton's on net |net| and suits an opening that dominates by its
/// square-root law, where Newton's own steps may turn to and fro for ever; the middle. A step out of the
/// bracket gives way to the next.
double next_offset(double offset, const Balance& balance, double low, double high, int stalled) {
  const double step = balance.net_m3_s / balance.slope_m3_s_Pa;
  const std::array candidates{offset + step, offset + 0.5 * step};
  for (auto i = static_cast<std::size_t>(stalled % 3); i < candidates.size(); ++i) {
    if (candidates[i] > low && candidates[i] < high) {
      return candidates[i];
    }
  }
  return low + 0.5 * (high - low);
}

struct Root {
  double offset_Pa = 0.0;
  Balance balance;
};

/// The offset that balances the flows to `share` of their magnitudes, or the best that numbers can tell
/// apart.
Root find_offset(const Sides& sides, double origin_Pa, PressureRange range, double share) {
  double low = range.low_Pa - origin_Pa;
  double high = range.high_Pa - origin_Pa;
  Root root{.offset_Pa = std::clamp(range.guess_Pa - origin_Pa, low, high), .balance = {}};
  double halved_m3_s = std::numeric_limits<double>::infinity();
  int stalled = 0;
  for (int i = 0; i < max_iterations; ++i) {
    root.balance = balance_at(sides, origin_Pa, root.offset_Pa);
    if (root.balance.within(share)) {
      return root;
    }
    (root.balance.net_m3_s > 0.0 ? low : high) = root.offset_Pa;
    stalled = std::abs(root.balance.net_m3_s) <= 0.5 * halved_m3_s ? 0 : stalled + 1;
    halved_m3_s = stalled == 0 ? std::abs(root.balance.net_m3_s) : halved_m3_s;
    const double next = next_offset(root.offset_Pa, root.balance, low, high, stalled);
    if (!(next > low && next < high)) {
      return root;
    }
    root.offset_Pa = next;
  }
  return root;
}

/// The still pressure nearest to a gap pressure. Measured from there the smallest difference keeps all its
/// digits.
double nearest_still_pressure(const Sides& sides, double pressure_Pa) {
  double nearest_Pa = 0.0;
  double distance_Pa = std::numeric_limits<double>::infinity();
  visit_all(sides, [&](const FlowResistance&, double still_Pa) {
    if (std::abs(still_Pa - pressure_Pa) < distance_Pa) {
      distance_Pa = std::abs(still_Pa - pressure_Pa);
      nearest_Pa = still_Pa;
    }
  });
  return nearest_Pa;
}

struct InOut {
  double in_m3_s = 0.0;
  double out_m3_s = 0.0;
  double net_in_m3_s() const { return in_m3_s - out_m3_s; }
};

InOut flows_of_side(const Side& side, double reference_height_m, double origin_Pa, double offset_Pa) {
  InOut sum;
  visit_side(side, reference_height_m, [&](const FlowResistance& opening, double still_Pa) {
    const double flow = airflow_kernel::flow_and_slope(opening, (still_Pa - origin_Pa) - offset_Pa).flow_m3_s;
    (flow > 0.0 ? sum.in_m3_s : sum.out_m3_s) += std::abs(flow);
  });
  return sum;
}

bool has_opening(const Side& side) {
  return std::any_of(side.openings.begin(), side.openings.end(),
                     [](const PlacedOpening& opening) { return !opening.resistance.shut(); });
}

GapFlows solve_checked(const GapNetwork& network, const AirDensities& densities, double pressure_Pa) {
  const Sides sides = sides_of(network, densities, pressure_Pa);
  PressureRange range = pressure_range(sides);
  GapFlows flows;
  if (!range.open()) {
    return flows;
  }
  // The first pass measures pressures from that mean, the second from the nearest opening, to keep digits.
  range.guess_Pa = find_offset(sides, 0.0, range, first_pass_balance).offset_Pa;
  const double origin_Pa = nearest_still_pressure(sides, range.guess_Pa);
  const Root root = find_offset(sides, origin_Pa, range, second_pass_balance);
  const InOut room = flows_of_side(sides.room, sides.reference_height_m, origin_Pa, root.offset_Pa);
  const InOut outdoors = flows_of_side(sides.outdoors, sides.reference_height_m, origin_Pa, root.offset_Pa);
  flows.from_room_m3_s = room.in_m3_s;
  flows.to_room_m3_s = room.out_m3_s;
  flows.from_outdoors_m3_s = outdoors.in_m3_s;
  flows.to_outdoors_m3_s = outdoors.out_m3_s;
  const bool passable = has_opening(sides.room) && has_opening(sides.outdoors);
  flows.net_outwards_m3_s = passable ? 0.5 * (room.net_in_m3_s() - outdoors.net_in_m3_s()) : 0.0;
  flows.share_of_hour_inwards = flows.net_outwards_m3_s < 0.0 ? 1.0 : 0.0;
  flows.gap_pressure_Pa = (origin_Pa - sides.outdoors.level_Pa) + root.offset_Pa;
  flows.status =
      root.balance.within(converged_balance) ? SolveStatus::converged : SolveStatus::iteration_limit;
  return flows;
}

}  // namespace

GapFlows flows_at_pressure(const GapNetwork& network, const AirDensities& densities, double pressure_Pa) {
  airflow_kernel::require_valid(network);
  airflow_kernel::require_valid(densities);
  require_in_range(pressure_Pa, {-1e4, 1e4}, "pressure_Pa", "Pa");
  return solve_checked(network, densities, pressure_Pa);
}

GapFlows flows_within_hour(const GapNetwork& network, const AirDensities& densities,
                           const PressureWithinHour& pressure, int points) {
  airflow_kernel::require_valid(network);
  airflow_kernel::require_valid(densities);
  airflow_kernel::require_valid(pressure);
  const auto rule = airflow_kernel::normal_points(points);
  GapFlows mean = solve_checked(network, densities, pressure.mean_Pa);
  if (pressure.standard_deviation_Pa <= 0.0) {
    return mean;
  }
  const auto add = [](GapFlows sum, const GapFlows& part, double weight) {
    sum.from_room_m3_s += weight * part.from_room_m3_s;
    sum.from_outdoors_m3_s += weight * part.from_outdoors_m3_s;
    sum.to_room_m3_s += weight * part.to_room_m3_s;
    sum.to_outdoors_m3_s += weight * part.to_outdoors_m3_s;
    sum.net_outwards_m3_s += weight * part.net_outwards_m3_s;
    sum.share_of_hour_inwards += weight * part.share_of_hour_inwards;
    sum.status = sum.status == SolveStatus::converged ? part.status : sum.status;
    return sum;
  };
  GapFlows sum{.gap_pressure_Pa = mean.gap_pressure_Pa, .status = mean.status};
  for (const auto& point : rule) {
    const double deviation_Pa = point.deviate * pressure.standard_deviation_Pa;
    const bool is_mean = point.deviate == 0.0;
    sum = add(sum, is_mean ? mean : solve_checked(network, densities, pressure.mean_Pa + deviation_Pa),
              point.weight);
  }
  return sum;
}

}  // namespace dewgap
