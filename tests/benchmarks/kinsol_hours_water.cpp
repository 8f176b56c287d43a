// What an hour solved by KINSOL leaves of water: the library's own film and timber, on KINSOL's rates.
#include <cmath>

#include "dewgap/moisture/film_kernel.hpp"
#include "kinsol_hours.hpp"

namespace dewgap::bench {
namespace {

double celsius(double temperature_K) {
  return temperature_K - constants::celsius_zero_K;
}

double film_kg_m2(const FilmState& film) {
  return film.water_kg_m2 + film.frost_kg_m2;
}

FilmSurface without_sill(FilmSurface surface) {
  surface.sill_area_ratio = 0.0;
  surface.weep = SillWeep::none;
  return surface;
}

double owed_kg_m2(const FilmStep& step, double rate_kg_m2s, double duration_s) {
  return std::max(0.0, -rate_kg_m2s * duration_s - (step.evaporated_kg_m2 + step.sublimated_kg_m2));
}

}  // namespace

template <Flows flows, class Correlations>
void KinsolHours<flows, Correlations>::settle_films(const HourConditions& given, HourState& state) {
  const auto& rate = equations_.rate_kg_m2s();
  const double duration_s = given.duration_s;
  const auto sheet = moisture_kernel::step_film_at_rates(store_.sheet, without_sill(design_.film),
                                                         {.duration_s = duration_s,
                                                          .face_rate_kg_m2s = rate[1],
                                                          .face_temperature_C = celsius(now_[2]),
                                                          .sill_rate_kg_m2s = 0.0,
                                                          .sill_temperature_C = state.sill_C});
  FilmState before = store_.pane;
  before.sill_kg_m2 += sheet.state.sill_kg_m2;
  const auto pane = moisture_kernel::step_film_at_rates(before, design_.film,
                                                        {.duration_s = duration_s,
                                                         .face_rate_kg_m2s = rate[0],
                                                         .face_temperature_C = celsius(now_[1]),
                                                         .sill_rate_kg_m2s = rate[2],
                                                         .sill_temperature_C = state.sill_C});
  store_.sheet = sheet.state;
  store_.sheet.sill_kg_m2 = 0.0;
  store_.pane = pane.state;
  const double owed = owed_kg_m2(sheet, rate[1], duration_s) + owed_kg_m2(pane, rate[0], duration_s);
  const double from_pool = std::min(owed, store_.pane.sill_kg_m2);
  store_.pane.sill_kg_m2 -= from_pool;
  state.drained_kg_m2 = pane.drained_kg_m2 - (owed - from_pool);
  state.run_off_kg_m2 = pane.run_off_kg_m2 + sheet.run_off_kg_m2;
  const auto room = moisture_kernel::step_film_at_rates(store_.room_face, without_sill(design_.film),
                                                        {.duration_s = duration_s,
                                                         .face_rate_kg_m2s = equations_.room_rate_kg_m2s(),
                                                         .face_temperature_C = celsius(now_[3]),
                                                         .sill_rate_kg_m2s = 0.0,
                                                         .sill_temperature_C = celsius(now_[3])});
  store_.room_face = room.state;
  store_.room_face.sill_kg_m2 = 0.0;
}

template <Flows flows, class Correlations>
void KinsolHours<flows, Correlations>::settle_timber(const HourConditions& given, double sill_C) {
  for (auto& node : timber_) {
    node.moisture_kg_kg -= node.given_kg(now_[4], given.duration_s) / node.layer.dry_mass_kg;
  }
  auto& bottom = timber_[0];
  if (design_.soak_time_s > 0.0 && sill_C >= moisture_kernel::freezing_C &&
      bottom.moisture_kg_kg < gap_kernel::fullest_timber_kg_kg) {
    const double offered = -store_.pane.sill_kg_m2 * std::expm1(-given.duration_s / design_.soak_time_s);
    const double room_left = (gap_kernel::fullest_timber_kg_kg - bottom.moisture_kg_kg) *
                             bottom.layer.dry_mass_kg / design_.area_m2;
    const double soaked = std::min(offered, room_left);
    store_.pane.sill_kg_m2 -= soaked;
    bottom.moisture_kg_kg += soaked * design_.area_m2 / bottom.layer.dry_mass_kg;
  }
}

template <Flows flows, class Correlations>
void KinsolHours<flows, Correlations>::settle(const HourConditions& given, HourState& state) {
  for (std::size_t f = 0; f < 4; ++f) {
    state.face_C[f] = celsius(now_[f]);
  }
  state.sill_C = sill_C(given, state.face_C[1]);
  state.gap_C = celsius(equations_.gap_air_K());
  state.vapour_Pa = now_[4];
  state.from_room_m3_s = equations_.from_room_m3_s();
  state.from_outdoors_m3_s = equations_.from_outdoors_m3_s();
  settle_films(given, state);
  settle_timber(given, state.sill_C);
  store_.vapour_Pa = now_[4];
  state.pane_film_kg_m2 = film_kg_m2(store_.pane);
  state.sheet_film_kg_m2 = film_kg_m2(store_.sheet);
  state.room_face_film_kg_m2 = film_kg_m2(store_.room_face);
  state.frost_kg_m2 = store_.pane.frost_kg_m2 + store_.sheet.frost_kg_m2;
  state.pool_kg_m2 = store_.pane.sill_kg_m2;
  state.timber_kg_kg = timber_[0].moisture_kg_kg;
  state.side_timber_kg_kg = timber_[1].moisture_kg_kg;
  // What the next hour takes from this one.
  gap_C_before_ = faces_known_ ? gap_C_ : state.gap_C;
  gap_C_ = state.gap_C;
  gap_convection_W_m2K_ = equations_.gap_convection_W_m2K();
  room_convection_W_m2K_ = equations_.room_convection_W_m2K();
  faces_known_ = true;
}

#define DEWGAP_INSTANTIATE(flows, correlations)                                                    \
  template void KinsolHours<flows, correlations>::settle(const HourConditions&, HourState&);       \
  template void KinsolHours<flows, correlations>::settle_films(const HourConditions&, HourState&); \
  template void KinsolHours<flows, correlations>::settle_timber(const HourConditions&, double);
DEWGAP_INSTANTIATE(Flows::unknown, PreparedCorrelations)
DEWGAP_INSTANTIATE(Flows::given, PreparedCorrelations)
DEWGAP_INSTANTIATE(Flows::unknown, CalledCorrelations)
#undef DEWGAP_INSTANTIATE

}  // namespace dewgap::bench
