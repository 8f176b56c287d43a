#include "dewgap/gap/hour_kernel.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/airflow/pumping.hpp"

namespace dewgap::gap_kernel {
namespace {

constexpr double air_store_temperature_K = 283.15;  // the gap's air is taken to hold vapour as at 10 C

RoomClimate room_of(const HourConditions& given) {
  return {.air_temperature_C = given.room_C,
          .radiant_temperature_C = given.room_C,
          .film_factor = given.room_film_factor};
}

}  // namespace

template <std::size_t Panes>
GapHours<Panes>::GapHours(const GapDesign& design, const GapStore& start, const HourOptions& options)
    : design_(design),
      options_(options),
      newton_{.max_iterations = options.max_iterations,
              .relative_tolerance = 0.0,
              .absolute_tolerance = options.closure_W_m2},
      saturation_(&air_kernel::saturation_table()),
      flows_(design.network, options.gust_points),
      day_(design.stack) {
  if (design.drawn_stack) {
    night_.emplace(*design.drawn_stack);
  }
  if (Panes == 2 && design.timber.area_m2 > 0.0) {
    auto bottom = design.timber;
    auto rest = design.timber;
    bottom.area_m2 *= design.sill_timber_share;
    rest.area_m2 *= 1.0 - design.sill_timber_share;
    timber_ = {TimberNode{.layer = moisture_kernel::prepared(bottom)},
               TimberNode{.layer = moisture_kernel::prepared(rest)}};
  }
  if (Panes == 2) {
    const double volume_m3 = design.area_m2 * design.stack.gaps[0].width_m;
    air_store_kg_Pa_ = volume_m3 / (constants::gas_constant_water_J_kgK * air_store_temperature_K);
    breathes_ = open_to_either_side(design.network);
    room_share_ = room_share_of_conductance(design.network);
    pumped_volume_m3_Pa_ = design.pumped_volume_m3_Pa *
                           flexing_response(design.network, design.pumped_volume_m3_Pa, design.gusts_per_s);
  }
  set_store(start);
}

template <std::size_t Panes>
GapStore GapHours<Panes>::store() const {
  GapStore store = store_;
  if (timber_) {
    store.timber_kg_kg = (*timber_)[0].moisture_kg_kg;
    store.side_timber_kg_kg = (*timber_)[1].moisture_kg_kg;
  }
  store.past = past_known_ ? std::optional(past_) : std::nullopt;
  return store;
}

template <std::size_t Panes>
void GapHours<Panes>::set_store(const GapStore& store) {
  store_ = store;
  past_known_ = store.past.has_value();
  past_ = store.past.value_or(GapPast{});
  if (timber_) {
    (*timber_)[0].moisture_kg_kg = store.timber_kg_kg;
    (*timber_)[1].moisture_kg_kg = store.side_timber_kg_kg.value_or(store.timber_kg_kg);
  }
  forget();
}

template <std::size_t Panes>
void GapHours<Panes>::forget() {
  day_.forget();
  if (night_) {
    night_->forget();
  }
}

template <std::size_t Panes>
void GapHours<Panes>::take_weather(const HourConditions& given) {
  const bool drawn = given.curtain_drawn && night_.has_value();
  if (drawn != drawn_) {
    forget();
    drawn_ = drawn;
  }
  const auto hand_over = [&](auto& solver) {
    solver.set_weather(given.outdoors, room_of(given));
    solver.set_sun(given.absorbed_sun_W_m2);
  };
  if (drawn) {
    hand_over(*night_);
    night_->set_curtain_inlet(given.room_C);
  } else {
    hand_over(day_);
  }
}

template <std::size_t Panes>
void GapHours<Panes>::read_heat(const HourConditions& given, const PassingAir& air,
                                const StepHeat<Panes>& heat, HourState& state) const {
  for (std::size_t f = 0; f < 2 * Panes; ++f) {
    state.face_C[f] = celsius(heat.face_K[f]);
  }
  state.room_flux_W_m2 = heat.room_flux_W_m2;
  state.outdoor_flux_W_m2 = heat.outdoor_flux_W_m2;
  state.closure_W_m2 = heat.closure_W_m2;
  state.flags = heat.flags;
  state.heat_W = heat.room_flux_W_m2 * design_.area_m2;
  const auto& flow = air.network;
  state.from_room_m3_s = air.from_room_m3_s;
  state.from_outdoors_m3_s = air.from_outdoors_m3_s;
  state.net_outwards_m3_s = flow.net_outwards_m3_s;
  if constexpr (Panes == 1) {
    state.through_air_m3_s = 0.5 * (flow.from_outdoors_m3_s + flow.to_outdoors_m3_s);
    return;
  }
  state.gap_C = celsius(heat.gap_air_K);
  // What the gap gives to either side is its mixture: so much of it came from the room.
  const double entered = flow.from_room_m3_s + flow.from_outdoors_m3_s;
  const double room_part = entered > 0.0 ? flow.from_room_m3_s / entered : 0.0;
  const double returned = room_part * flow.to_room_m3_s;
  const double inwards = (1.0 - room_part) * flow.to_room_m3_s;
  state.through_air_m3_s = 0.5 * (inwards + std::max(0.0, flow.from_room_m3_s - returned));
  const double breathed = air.from_room_m3_s - flow.from_room_m3_s;
  const double capacity = volumetric_heat_capacity_J_m3K(state.gap_C, store_.vapour_Pa);
  // Room air that the gap cools and gives back, less what the gap gives to outdoor air on its way in.
  state.heat_W += capacity * (returned + breathed) * (given.room_C - state.gap_C) -
                  capacity * inwards * (state.gap_C - given.outdoors.air_temperature_C);
  const double total = air.total_m3_s();
  if (total > 0.0) {
    const double stream =
        total * volumetric_heat_capacity_J_m3K(past_.gap_C, store_.vapour_Pa) / design_.area_m2;
    state.air_heat_W_m2 = stream * (state.gap_C - air.inlet_C(given));
  }
}

template <std::size_t Panes>
HourState GapHours<Panes>::step(const HourConditions& given) {
  HourState state;
  state.ledger.held_before_kg = held_kg();
  take_weather(given);
  if (!past_known_) {
    past_.gap_C = past_.gap_before_C = 0.5 * (given.room_C + given.outdoors.air_temperature_C);
  }
  const auto pass = solve_passes(given);
  const auto& heat = pass.heat;
  state.status = pass.air.network.status != SolveStatus::converged ? pass.air.network.status : heat.status;
  state.newton_steps = heat.newton_steps;
  if (state.status != SolveStatus::converged) {
    state.ledger.held_after_kg = state.ledger.held_before_kg;
    return state;
  }
  if (drawn_) {
    night_->accept();
  } else {
    day_.accept();
  }
  air_before_ = pass.air;
  guess_ = pass.guess;
  read_heat(given, pass.air, heat, state);
  if constexpr (Panes == 2) {
    settle_vapour(given, pass, state);
    past_.gap_before_C = past_known_ ? past_.gap_C : state.gap_C;
    past_.gap_C = state.gap_C;
    past_.gap_convection_W_m2K = heat.gap_convection_W_m2K;
  }
  step_room_face(given, pass.terms, heat, state);
  past_.room_convection_W_m2K = heat.room_convection_W_m2K;
  std::copy_n(state.face_C.begin(), 2 * Panes, past_.face_C.begin());
  past_known_ = true;
  state.ledger.held_after_kg = held_kg();
  return state;
}

#define DEWGAP_INSTANTIATE(panes)                                                            \
  template GapHours<panes>::GapHours(const GapDesign&, const GapStore&, const HourOptions&); \
  template GapStore GapHours<panes>::store() const;                                          \
  template void GapHours<panes>::set_store(const GapStore&);                                 \
  template void GapHours<panes>::forget();                                                   \
  template HourState GapHours<panes>::step(const HourConditions&);
DEWGAP_INSTANTIATE(1)
DEWGAP_INSTANTIATE(2)
#undef DEWGAP_INSTANTIATE

}  // namespace dewgap::gap_kernel
