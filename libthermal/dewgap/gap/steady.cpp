#include "dewgap/gap/steady.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/gap/latent_heat_kernel.hpp"
#include "dewgap/moisture/criteria.hpp"
#include "dewgap/moisture/transfer.hpp"

namespace dewgap {
namespace {

constexpr double still_flow_m3_s = 1e-3 / 3600.0;  // one litre an hour
constexpr double one_way_share = 0.9;

void require_valid(const GapCase& c) {
  if (c.stack.layer_count < 2 || c.gap_index + 1 >= c.stack.layer_count) {
    throw InvalidInput("gap_index", "no such gap: the stack needs a layer on both sides of it");
  }
  require_in_range(c.outdoor_vapour_Pa, {0.0, 20000.0}, "outdoor_vapour_Pa", "Pa");
  require_in_range(c.room_vapour_Pa, {0.0, 20000.0}, "room_vapour_Pa", "Pa");
  require_in_range(c.gap_area_m2, {0.01, 50.0}, "gap_area_m2", "m2");
  require_in_range(c.diffusion_to_room_kg_sPa, {0.0, 1e-6}, "diffusion_to_room_kg_sPa", "kg/(s Pa)");
  require_in_range(c.diffusion_to_outdoors_kg_sPa, {0.0, 1e-6}, "diffusion_to_outdoors_kg_sPa", "kg/(s Pa)");
  require_in_range(c.timber_source_kg_s, {0.0, 1e-3}, "timber_source_kg_s", "kg/s");
  require_in_range(c.edge_temperature_factor, {0.3, 1.2}, "edge_temperature_factor", "");
}

/// Faces of the gap: the one of the layer towards outdoors, and the one of the layer towards the room.
std::size_t outer_face(const GapCase& c) {
  return 2 * c.gap_index + 1;
}
std::size_t inner_face(const GapCase& c) {
  return 2 * c.gap_index + 2;
}

std::size_t colder_face(const GapCase& c, const StackSolution& heat) {
  const bool outer_is_colder =
      heat.face_temperature_C[outer_face(c)] <= heat.face_temperature_C[inner_face(c)];
  return outer_is_colder ? outer_face(c) : inner_face(c);
}

AirDensities densities_of(const GapCase& c, double gap_C, double gap_vapour_Pa) {
  return {.outdoor_kg_m3 = humid_air_density_kg_m3(c.outdoors.air_temperature_C, c.outdoor_vapour_Pa),
          .gap_kg_m3 = humid_air_density_kg_m3(gap_C, gap_vapour_Pa),
          .room_kg_m3 = humid_air_density_kg_m3(c.room.air_temperature_C, c.room_vapour_Pa)};
}

/// What the air that passes carries into the gap's heat balance. Flows are volumes at the gap's density.
GapAirStream air_stream_of(const GapCase& c, const GapFlows& flows, double gap_C, double gap_vapour_Pa) {
  const double volumes = flows.from_room_m3_s + flows.from_outdoors_m3_s;
  if (volumes <= 0.0) {
    return {};
  }
  const double inlet_C = (flows.from_room_m3_s * c.room.air_temperature_C +
                          flows.from_outdoors_m3_s * c.outdoors.air_temperature_C) /
                         volumes;
  const double capacity_W_K = volumes * volumetric_heat_capacity_J_m3K(gap_C, gap_vapour_Pa);
  return {.heat_capacity_flow_W_m2K = capacity_W_K / c.gap_area_m2, .inlet_temperature_C = inlet_C};
}

VapourBalance vapour_of(const GapCase& c, const GapFlows& flows, const StackSolution& heat,
                        double gap_vapour_Pa) {
  const double gap_C = heat.gap_air_temperature_C[c.gap_index];
  // One wet face to the mixed gap: twice the face-to-face coefficient.
  const double face_convection = 2.0 * heat.gap_convection_W_m2K[c.gap_index];
  return solve_vapour_balance({.from_room_m3_s = flows.from_room_m3_s,
                               .from_outdoors_m3_s = flows.from_outdoors_m3_s,
                               .room_vapour_Pa = c.room_vapour_Pa,
                               .room_temperature_C = c.room.air_temperature_C,
                               .outdoor_vapour_Pa = c.outdoor_vapour_Pa,
                               .outdoor_temperature_C = c.outdoors.air_temperature_C,
                               .gap_temperature_C = gap_C,
                               .diffusion_to_room_kg_sPa = c.diffusion_to_room_kg_sPa,
                               .diffusion_to_outdoors_kg_sPa = c.diffusion_to_outdoors_kg_sPa,
                               .source_kg_s = c.timber_source_kg_s,
                               .face_area_m2 = c.gap_area_m2,
                               .face_temperature_C = heat.face_temperature_C[colder_face(c, heat)],
                               .face_mass_transfer_m_s = mass_transfer_m_s(
                                   face_convection, volumetric_heat_capacity_J_m3K(gap_C, gap_vapour_Pa))});
}

/// The stack with the heat that condensing vapour sets free at the colder face.
Stack with_latent_heat(const GapCase& c, const Stack& stack, const StackSolution& heat,
                       double condensation_kg_s) {
  Stack warmed = stack;
  const std::size_t face = colder_face(c, heat);
  const double latent_W_m2 = condensation_kg_s *
                             gap_kernel::film_latent_heat(heat.face_temperature_C[face]).value_J_kg /
                             c.gap_area_m2;
  const bool is_outer = face == outer_face(c);
  auto& layer = warmed.layers[is_outer ? c.gap_index : c.gap_index + 1];
  (is_outer ? layer.inner_face_heat_W_m2 : layer.outer_face_heat_W_m2) += latent_W_m2;
  return warmed;
}

/// Everything that is read off a settled pair of networks.
void read_off(const GapCase& c, GapState& state) {
  state.way = way_of(state.flows);
  const double outdoor_C = c.outdoors.air_temperature_C;
  state.centre_face_C = state.heat.face_temperature_C[colder_face(c, state.heat)];
  const double edge_C = outdoor_C + c.edge_temperature_factor * (state.centre_face_C - outdoor_C);
  state.coldest_face_C = std::min(state.centre_face_C, edge_C);
  state.potential_dew_point_C = state.vapour.potential_dew_point_C;
  state.actual_dew_point_C = state.vapour.dew_point_C;
  state.margin_K = state.coldest_face_C - state.potential_dew_point_C;
  state.condensation_g_m2h = condensation_g_m2h(state.vapour.condensation_kg_s, c.gap_area_m2);
  state.room_face_C = state.heat.face_temperature_C[2 * state.heat.layer_count - 1];
  state.room_face_humidity = surface_relative_humidity(c.room_vapour_Pa, state.room_face_C);
  if (std::abs(c.room.air_temperature_C - outdoor_C) >= 0.1) {
    state.room_face_temperature_factor =
        temperature_factor(state.room_face_C, c.room.air_temperature_C, outdoor_C);
  }
}

/// Near balanced columns a small change of temperature turns the flow, and plain repetition can swing between
/// two states: later passes take a part of each step.
double step_share(int iteration) {
  constexpr int plain_passes = 15;
  constexpr int half_passes = 60;
  if (iteration <= plain_passes) {
    return 1.0;
  }
  return iteration <= half_passes ? 0.5 : 0.2;
}

/// The gap's air as the next pass takes it.
struct GapAir {
  double temperature_C = 0.0;
  double vapour_Pa = 0.0;
};

/// One pass: flows from the gap's air, vapour from the flows, heat from both.
void update(const GapCase& c, const GapOptions& options, const GapAir& air, Stack& stack, GapState& state) {
  state.flows = flows_within_hour(c.network, densities_of(c, air.temperature_C, air.vapour_Pa), c.pressure,
                                  options.gust_points);
  state.vapour = vapour_of(c, state.flows, state.heat, air.vapour_Pa);
  stack.gaps[c.gap_index].air_stream = air_stream_of(c, state.flows, air.temperature_C, air.vapour_Pa);
  state.heat =
      solve_stack(with_latent_heat(c, stack, state.heat, state.vapour.condensation_kg_s), c.outdoors, c.room);
}

}  // namespace

GapState solve_gap(const GapCase& gap_case, GapOptions options) {
  require_valid(gap_case);
  GapState state;
  Stack stack = gap_case.stack;
  state.heat = solve_stack(stack, gap_case.outdoors, gap_case.room);
  GapAir air{.temperature_C = state.heat.gap_air_temperature_C[gap_case.gap_index],
             .vapour_Pa = 0.5 * (gap_case.outdoor_vapour_Pa + gap_case.room_vapour_Pa)};
  for (int i = 1; i <= options.max_iterations; ++i) {
    if (state.heat.status != SolveStatus::converged || state.flows.status != SolveStatus::converged) {
      state.status = state.heat.status != SolveStatus::converged ? state.heat.status : state.flows.status;
      return state;
    }
    const double latent_before = state.vapour.condensation_kg_s;
    update(gap_case, options, air, stack, state);
    const double change_K = state.heat.gap_air_temperature_C[gap_case.gap_index] - air.temperature_C;
    const double latent_change = std::abs(state.vapour.condensation_kg_s - latent_before);
    state.iterations = i;
    state.change_at_end_K = std::abs(change_K);
    air.temperature_C += step_share(i) * change_K;
    air.vapour_Pa += step_share(i) * (state.vapour.vapour_Pa - air.vapour_Pa);
    const bool latent_settled = latent_change <= 1e-12 + 1e-9 * state.vapour.condensation_kg_s;
    if (state.change_at_end_K <= options.temperature_tolerance_K && latent_settled) {
      state.status = SolveStatus::converged;
      read_off(gap_case, state);
      return state;
    }
  }
  state.status = SolveStatus::iteration_limit;
  return state;
}

AirWay way_of(const GapFlows& flows) {
  const double passing = flows.from_room_m3_s + flows.from_outdoors_m3_s;
  if (passing < still_flow_m3_s) {
    return AirWay::still;
  }
  if (flows.from_room_m3_s >= one_way_share * passing) {
    return flows.to_outdoors_m3_s < (1.0 - one_way_share) * flows.from_room_m3_s ? AirWay::room_side
                                                                                 : AirWay::outwards;
  }
  return flows.from_outdoors_m3_s >= one_way_share * passing ? AirWay::inwards : AirWay::both_ways;
}

std::string_view name_of(AirWay way) {
  switch (way) {
    case AirWay::still:
      return "still";
    case AirWay::outwards:
      return "outwards";
    case AirWay::inwards:
      return "inwards";
    case AirWay::both_ways:
      return "both ways";
    case AirWay::room_side:
      return "to and from the room";
  }
  return "unknown";
}

}  // namespace dewgap
