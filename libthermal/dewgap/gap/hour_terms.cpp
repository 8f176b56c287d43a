// What a step puts into its balances: air that passes, stored heat, wet surfaces, timber.
#include <algorithm>
#include <cmath>

#include "dewgap/airflow/pumping.hpp"
#include "dewgap/gap/hour_kernel.hpp"
#include "dewgap/moisture/transfer.hpp"

namespace dewgap::gap_kernel {
namespace {

/// Mass transfer on vapour pressure from convection at a face, by the Lewis relation (transfer.hpp is linear
/// in convection and in the reciprocal of heat capacity).
double transfer_kg_m2sPa(double convection_W_m2K, double heat_capacity_J_m3K, double mean_K) {
  static const double per_ratio = mass_transfer_m_s(1.0, 1000.0) * 1000.0;
  return convection_W_m2K * per_ratio / (heat_capacity_J_m3K * constants::gas_constant_water_J_kgK * mean_K);
}

}  // namespace

template <std::size_t Panes>
PassingAir GapHours<Panes>::passing_air(const HourConditions& given, double flow_gap_C) {
  const double room_kg_m3 = humid_air_density_kg_m3(given.room_C, given.room_vapour_Pa);
  const AirDensities densities{
      .outdoor_kg_m3 = humid_air_density_kg_m3(given.outdoors.air_temperature_C, given.outdoor_vapour_Pa),
      .gap_kg_m3 = Panes == 2 ? humid_air_density_kg_m3(flow_gap_C, store_.vapour_Pa) : room_kg_m3,
      .room_kg_m3 = room_kg_m3};
  PassingAir air{.network = flows_.at(densities, given.pressure)};
  air.from_room_m3_s = air.network.from_room_m3_s;
  air.from_outdoors_m3_s = air.network.from_outdoors_m3_s;
  if (breathes_) {
    // Exchange without mean pressure: the gap's air shrinks as it cools, gusts flex the sheet.
    const double volume_m3 = design_.area_m2 * design_.stack.gaps[0].width_m;
    const double breathed =
        breathed_in_m3_s(volume_m3, past_.gap_before_C - past_.gap_C, past_.gap_C, given.duration_s);
    const double pumped =
        pumped_m3_s(pumped_volume_m3_Pa_, given.pressure.standard_deviation_Pa, design_.gusts_per_s);
    air.from_room_m3_s += room_share_ * (breathed + pumped);
    air.from_outdoors_m3_s += (1.0 - room_share_) * (breathed + pumped);
  }
  return air;
}

template <std::size_t Panes>
StepTerms<Panes> GapHours<Panes>::terms_for(const HourConditions& given) {
  Terms terms;
  terms.saturation = saturation_;
  terms.duration_s = given.duration_s;
  terms.outdoor_C = given.outdoors.air_temperature_C;
  terms.sill_factor = design_.edge_temperature_factor;
  if (past_known_) {  // else the panes start as the weather has them
    for (std::size_t f = 0; f < 2 * Panes; ++f) {
      terms.temperature_before_K[f] = constants::kelvin(past_.face_C[f]);
      terms.capacity_W_m2K[f] = 0.5 * design_.pane_heat_capacity_J_m2K[f / 2] / given.duration_s;
      terms.films[f].latent_before = film_latent_heat(past_.face_C[f]);
    }
    if constexpr (Panes == 2) {
      terms.films[1].held_kg_m2 = film_kg_m2(store_.pane);
      terms.films[2].held_kg_m2 = film_kg_m2(store_.sheet);
    }
    terms.films[Terms::room_face].held_kg_m2 = film_kg_m2(store_.room_face);
  }
  const double room_K = constants::kelvin(given.room_C);
  const double face_K = past_known_ ? constants::kelvin(past_.face_C[Terms::room_face]) : room_K;
  terms.room = {.transfer_kg_m2sPa =
                    design_.room_face_transfer_factor *
                    transfer_kg_m2sPa(past_.room_convection_W_m2K,
                                      volumetric_heat_capacity_J_m3K(given.room_C, given.room_vapour_Pa),
                                      0.5 * (room_K + face_K)),
                .room_vapour_Pa = given.room_vapour_Pa,
                .limit_kg_m2s = film_kg_m2(store_.room_face) / given.duration_s};
  return terms;
}

template <std::size_t Panes>
void GapHours<Panes>::add_surfaces(const HourConditions& given, Terms& terms) const {
  const double gap_K = constants::kelvin(past_.gap_C);
  const double capacity_J_m3K = volumetric_heat_capacity_J_m3K(past_.gap_C, store_.vapour_Pa);
  const double pane_K = past_known_ ? constants::kelvin(past_.face_C[1]) : gap_K;
  const double sheet_K = past_known_ ? constants::kelvin(past_.face_C[2 * Panes - 2]) : gap_K;
  const double sill_K = constants::kelvin(terms.sill_C(celsius(pane_K)));
  // One wet face to the mixed gap: twice the face-to-face coefficient.
  const double convection = 2.0 * past_.gap_convection_W_m2K;
  terms.vapour.transfer_kg_m2sPa = {
      transfer_kg_m2sPa(convection, capacity_J_m3K, 0.5 * (gap_K + pane_K)),
      transfer_kg_m2sPa(convection, capacity_J_m3K, 0.5 * (gap_K + sheet_K)),
      design_.film.sill_area_ratio * transfer_kg_m2sPa(convection, capacity_J_m3K, 0.5 * (gap_K + sill_K))};
  terms.vapour.limit_kg_m2s = {film_kg_m2(store_.pane) / given.duration_s,
                               film_kg_m2(store_.sheet) / given.duration_s,
                               store_.pane.sill_kg_m2 / given.duration_s};
}

template <std::size_t Panes>
void GapHours<Panes>::linearise_timber(const HourConditions& given, const Terms& terms, const Guess& guess) {
  if (!timber_) {
    return;
  }
  // The rest lies between pane and sheet, as warm as the gap; the bottom rail halfway from there to its cold
  // edge.
  const std::array<double, 2> temperature_C{0.5 * (terms.sill_C(guess.pane_C) + guess.gap_C), guess.gap_C};
  for (std::size_t i = 0; i < 2; ++i) {
    auto& node = (*timber_)[i];
    node.from_vapour_Pa = guess.vapour_Pa;
    node.step =
        moisture_kernel::step_prepared_layer(node.layer, node.moisture_kg_kg, node.step.relative_humidity,
                                             {.duration_s = given.duration_s,
                                              .temperature_C = temperature_C[i],
                                              .air_vapour_Pa = guess.vapour_Pa,
                                              .transfer_kg_m2sPa = design_.timber_transfer_kg_m2sPa},
                                             *saturation_);
    if (node.moisture_kg_kg >= fullest_timber_kg_kg && node.step.given_kg < 0.0) {
      node.step.given_kg = 0.0;  // full: vapour that would still come stays in the air
      node.step.response_kg_sPa = 0.0;
    }
  }
}

template <std::size_t Panes>
void GapHours<Panes>::set_air(const HourConditions& given, const PassingAir& air, Terms& terms) {
  // Air that passes brings its own vapour pressure at the gap's temperature; diffusion acts on pressure.
  const double per_m3_kg_Pa = 1.0 / (constants::gas_constant_water_J_kgK * constants::kelvin(past_.gap_C));
  const double with_room = air.from_room_m3_s * per_m3_kg_Pa + design_.diffusion_to_room_kg_sPa;
  const double with_outdoors = air.from_outdoors_m3_s * per_m3_kg_Pa + design_.diffusion_to_outdoors_kg_sPa;
  const double stored = air_store_kg_Pa_ / given.duration_s;
  double conductance = stored + with_room + with_outdoors;
  double offered =
      stored * store_.vapour_Pa + with_room * given.room_vapour_Pa + with_outdoors * given.outdoor_vapour_Pa;
  if (timber_) {
    for (const auto& node : *timber_) {
      conductance += node.step.response_kg_sPa;
      offered += node.step.given_kg / given.duration_s + node.step.response_kg_sPa * node.from_vapour_Pa;
    }
  }
  terms.vapour.conductance_kg_m2sPa = conductance / design_.area_m2;
  terms.vapour.offered_kg_m2s = offered / design_.area_m2;
  set_stream(given, air);
}

template <std::size_t Panes>
void GapHours<Panes>::set_stream(const HourConditions& given, const PassingAir& air) {
  GapAirStream stream;
  if (const double total = air.total_m3_s(); total > 0.0) {
    const double capacity_J_m3K = volumetric_heat_capacity_J_m3K(past_.gap_C, store_.vapour_Pa);
    stream = {.heat_capacity_flow_W_m2K = total * capacity_J_m3K / design_.area_m2,
              .inlet_temperature_C = air.inlet_C(given)};
  }
  if (drawn_) {
    night_->set_stream(stream);
  } else {
    day_.set_stream(stream);
  }
}

#define DEWGAP_INSTANTIATE(panes)                                                                     \
  template PassingAir GapHours<panes>::passing_air(const HourConditions&, double);                    \
  template StepTerms<panes> GapHours<panes>::terms_for(const HourConditions&);                        \
  template void GapHours<panes>::add_surfaces(const HourConditions&, Terms&) const;                   \
  template void GapHours<panes>::linearise_timber(const HourConditions&, const Terms&, const Guess&); \
  template void GapHours<panes>::set_air(const HourConditions&, const PassingAir&, Terms&);           \
  template void GapHours<panes>::set_stream(const HourConditions&, const PassingAir&);
DEWGAP_INSTANTIATE(1)
DEWGAP_INSTANTIATE(2)
#undef DEWGAP_INSTANTIATE

}  // namespace dewgap::gap_kernel
