// What a step leaves of water: films, pool, timber, room-side face, and the ledger.
#include <algorithm>
#include <cmath>

#include "dewgap/gap/hour_kernel.hpp"
#include "dewgap/moisture/film_kernel.hpp"

namespace dewgap::gap_kernel {
namespace {

/// The sheet's film has no sill of its own: what runs off it joins the pool below the pane.
FilmSurface without_sill(FilmSurface surface) {
  surface.sill_area_ratio = 0.0;
  surface.weep = SillWeep::none;
  return surface;
}

/// Vapour that the step's balance took from a face beyond what the face could give, because the rest had run
/// off within the step; kg/m2.
double owed_kg_m2(const FilmStep& step, double rate_kg_m2s, double duration_s) {
  const double short_of = -rate_kg_m2s * duration_s - (step.evaporated_kg_m2 + step.sublimated_kg_m2);
  return std::clamp(short_of, 0.0, step.run_off_kg_m2);
}

/// Part of the step in which a film that dries out does so: what it held over what it would lose at the end's
/// vapour pressure, were it wet throughout.
double drying_part(double transfer_kg_m2sPa, double below_saturation_Pa, double limit_kg_m2s) {
  const double wanted_kg_m2s = transfer_kg_m2sPa * below_saturation_Pa;
  return wanted_kg_m2s > limit_kg_m2s ? limit_kg_m2s / wanted_kg_m2s : 1.0;
}

}  // namespace

template <std::size_t Panes>
double GapHours<Panes>::held_kg() const {
  const double faces_kg_m2 = film_kg_m2(store_.pane) + film_kg_m2(store_.sheet) + store_.pane.sill_kg_m2;
  const double timber_kg = timber_ ? (*timber_)[0].held_kg() + (*timber_)[1].held_kg() : 0.0;
  return design_.area_m2 * faces_kg_m2 + air_store_kg_Pa_ * store_.vapour_Pa + timber_kg;
}

template <std::size_t Panes>
void GapHours<Panes>::step_films(const HourConditions& given, const VapourAtEnd& vapour,
                                 const StepHeat<Panes>& heat, double sill_C, HourState& state) {
  const double duration_s = given.duration_s;
  const auto sheet =
      moisture_kernel::step_film_at_rates(store_.sheet, without_sill(design_.film),
                                          {.duration_s = duration_s,
                                           .face_rate_kg_m2s = vapour.rate_kg_m2s[on_sheet],
                                           .face_temperature_C = celsius(heat.face_K[2 * Panes - 2]),
                                           .sill_rate_kg_m2s = 0.0,
                                           .sill_temperature_C = sill_C});
  FilmState before = store_.pane;
  before.sill_kg_m2 += sheet.state.sill_kg_m2;
  const auto pane = moisture_kernel::step_film_at_rates(before, design_.film,
                                                        {.duration_s = duration_s,
                                                         .face_rate_kg_m2s = vapour.rate_kg_m2s[on_pane],
                                                         .face_temperature_C = celsius(heat.face_K[1]),
                                                         .sill_rate_kg_m2s = vapour.rate_kg_m2s[on_sill],
                                                         .sill_temperature_C = sill_C});
  store_.sheet = sheet.state;
  store_.sheet.sill_kg_m2 = 0.0;
  store_.pane = pane.state;
  // What a face owes comes from the water that has just run off it.
  const double owed = owed_kg_m2(sheet, vapour.rate_kg_m2s[on_sheet], duration_s) +
                      owed_kg_m2(pane, vapour.rate_kg_m2s[on_pane], duration_s);
  const double from_pool = std::min(owed, store_.pane.sill_kg_m2);
  store_.pane.sill_kg_m2 -= from_pool;
  state.drained_kg_m2 = pane.drained_kg_m2 - (owed - from_pool);
  state.run_off_kg_m2 = pane.run_off_kg_m2 + sheet.run_off_kg_m2;
}

template <std::size_t Panes>
void GapHours<Panes>::step_timber(const HourConditions& given, double vapour_Pa, double sill_C) {
  if (!timber_) {
    return;
  }
  for (auto& node : *timber_) {
    node.moisture_kg_kg -= node.given_kg(vapour_Pa, given.duration_s) / node.layer.dry_mass_kg;
  }
  auto& bottom = (*timber_)[0];
  if (design_.soak_time_s > 0.0 && sill_C >= moisture_kernel::freezing_C &&
      bottom.moisture_kg_kg < fullest_timber_kg_kg) {
    // A pool soaks into the wood below it with a time constant (our convention), up to what the wood can
    // take.
    const double offered = -store_.pane.sill_kg_m2 * std::expm1(-given.duration_s / design_.soak_time_s);
    const double room_left =
        (fullest_timber_kg_kg - bottom.moisture_kg_kg) * bottom.layer.dry_mass_kg / design_.area_m2;
    const double soaked = std::min(offered, room_left);
    store_.pane.sill_kg_m2 -= soaked;
    bottom.moisture_kg_kg += soaked * design_.area_m2 / bottom.layer.dry_mass_kg;
  }
}

/// The ledger, from the same flows as the balance, each side by itself.
template <std::size_t Panes>
void GapHours<Panes>::account(const HourConditions& given, const PassingAir& air, double vapour_Pa,
                              HourState& state) const {
  auto& ledger = state.ledger;
  const double per_m3_kg_Pa =
      given.duration_s / (constants::gas_constant_water_J_kgK * constants::kelvin(past_.gap_C));
  ledger.with_air_in_kg = per_m3_kg_Pa * (air.from_room_m3_s * given.room_vapour_Pa +
                                          air.from_outdoors_m3_s * given.outdoor_vapour_Pa);
  ledger.with_air_out_kg = per_m3_kg_Pa * air.total_m3_s() * vapour_Pa;
  for (const double diffused :
       {design_.diffusion_to_room_kg_sPa * (given.room_vapour_Pa - vapour_Pa),
        design_.diffusion_to_outdoors_kg_sPa * (given.outdoor_vapour_Pa - vapour_Pa)}) {
    ledger.diffused_in_kg += given.duration_s * std::max(0.0, diffused);
    ledger.diffused_out_kg += given.duration_s * std::max(0.0, -diffused);
  }
  ledger.drained_kg = design_.area_m2 * state.drained_kg_m2;
}

template <std::size_t Panes>
void GapHours<Panes>::settle_vapour(const HourConditions& given, const Pass& pass, HourState& state) {
  const auto& terms = pass.terms;
  const auto& heat = pass.heat;
  const auto& vapour = pass.vapour;
  const double pane_C = celsius(heat.face_K[1]);
  const double sheet_C = celsius(heat.face_K[2 * Panes - 2]);
  state.sill_C = terms.sill_C(pane_C);
  state.vapour_Pa = vapour.vapour_Pa;
  state.latent_heat_W_m2 = terms.latent_heat_W_m2(1, pane_C, vapour.rate_kg_m2s[on_pane]) +
                           terms.latent_heat_W_m2(2, sheet_C, vapour.rate_kg_m2s[on_sheet]);
  const auto& limits = terms.vapour.limit_kg_m2s;
  const auto& transfers = terms.vapour.transfer_kg_m2sPa;
  state.pane_drying_part = drying_part(
      transfers[on_pane], saturation_->at(pane_C).pressure_Pa - vapour.vapour_Pa, limits[on_pane]);
  state.sheet_drying_part = drying_part(
      transfers[on_sheet], saturation_->at(sheet_C).pressure_Pa - vapour.vapour_Pa, limits[on_sheet]);
  step_films(given, vapour, heat, state.sill_C, state);
  step_timber(given, vapour.vapour_Pa, state.sill_C);
  store_.vapour_Pa = vapour.vapour_Pa;

  account(given, pass.air, vapour.vapour_Pa, state);

  state.pane_film_kg_m2 = film_kg_m2(store_.pane);
  state.sheet_film_kg_m2 = film_kg_m2(store_.sheet);
  state.frost_kg_m2 = store_.pane.frost_kg_m2 + store_.sheet.frost_kg_m2;
  state.pool_kg_m2 = store_.pane.sill_kg_m2;
  if (timber_) {
    state.timber_kg_kg = (*timber_)[0].moisture_kg_kg;
    state.side_timber_kg_kg = (*timber_)[1].moisture_kg_kg;
  }
}

template <std::size_t Panes>
void GapHours<Panes>::step_room_face(const HourConditions& given, const Terms& terms,
                                     const StepHeat<Panes>& heat, HourState& state) {
  const double face_C = celsius(heat.face_K[Terms::room_face]);
  const double rate = terms.room_face_rate_kg_m2s(saturation_->at(face_C).pressure_Pa);
  state.latent_heat_W_m2 += terms.latent_heat_W_m2(Terms::room_face, face_C, rate);
  const auto step = moisture_kernel::step_film_at_rates(store_.room_face, without_sill(design_.film),
                                                        {.duration_s = given.duration_s,
                                                         .face_rate_kg_m2s = rate,
                                                         .face_temperature_C = face_C,
                                                         .sill_rate_kg_m2s = 0.0,
                                                         .sill_temperature_C = face_C});
  store_.room_face = step.state;
  store_.room_face.sill_kg_m2 = 0.0;  // runs down to the room's sill, out of this account
  state.room_face_film_kg_m2 = film_kg_m2(store_.room_face);
}

#define DEWGAP_INSTANTIATE(panes)                                                                            \
  template double GapHours<panes>::held_kg() const;                                                          \
  template void GapHours<panes>::step_films(const HourConditions&, const VapourAtEnd&,                       \
                                            const StepHeat<panes>&, double, HourState&);                     \
  template void GapHours<panes>::account(const HourConditions&, const PassingAir&, double, HourState&)       \
      const;                                                                                                 \
  template void GapHours<panes>::step_timber(const HourConditions&, double, double);                         \
  template void GapHours<panes>::settle_vapour(const HourConditions&, const Pass&, HourState&);              \
  template void GapHours<panes>::step_room_face(const HourConditions&, const Terms&, const StepHeat<panes>&, \
                                                HourState&);
DEWGAP_INSTANTIATE(1)
DEWGAP_INSTANTIATE(2)
#undef DEWGAP_INSTANTIATE

}  // namespace dewgap::gap_kernel
