#include "dewgap/air/humid_air.hpp"
#include "dewgap/assessment/year_tally_kernel.hpp"

namespace dewgap {
namespace {

constexpr double hour_s = 3600.0;
constexpr double grams = 1000.0;
constexpr std::size_t sheet_room_face = 3;

}  // namespace

double last_drying_part(const HourState& state) {
  const double pane = state.pane_drying_part;
  const double sheet = state.sheet_drying_part;
  return pane < 1.0 && sheet < 1.0 ? std::max(pane, sheet) : std::min(pane, sheet);
}

bool ends_in_the_morning(std::size_t hour_of_day) {
  constexpr std::size_t morning_h = 8;
  return hour_of_day + 1 == morning_h;
}

ClearWay clear_way(const HourState& state) {
  constexpr double clear_share = 0.5;  // net flow over what enters: our convention
  const double net = state.net_outwards_m3_s;
  if (std::abs(net) < clear_share * (state.from_room_m3_s + state.from_outdoors_m3_s) || net == 0.0) {
    return ClearWay::none;
  }
  return net > 0.0 ? ClearWay::outwards : ClearWay::inwards;
}

YearTally::YearTally(const TallyTerms& terms)
    : terms_(terms),
      saturation_(air_kernel::saturation_table()),
      wet_(wet_from_g_m2),
      frosted_(wet_from_g_m2),
      pool_(wet_from_g_m2),
      timber_(timber_caution_kg_kg),
      timber_kg_kg_(terms.start_timber_kg_kg),
      peak_timber_kg_kg_(terms.start_timber_kg_kg) {}

bool YearTally::settled(const HourState& state) {
  const bool converged = state.status == SolveStatus::converged;
  unsettled_hours_ += converged ? 0 : 1;
  return converged;
}

void YearTally::add_film(const SampleHour& now, const Film& film) {
  wet_.step(film_.held_g_m2, film.held_g_m2, film.falls_in_h);
  frosted_.step(film_.frost_g_m2, film.frost_g_m2, 1.0);
  peak_film_g_m2_ = std::max(peak_film_g_m2_, film.water_g_m2);
  misty_mornings_ += ends_in_the_morning(now.hour_of_day) && film.held_g_m2 > wet_from_g_m2 ? 1 : 0;
  film_ = film;
}

void YearTally::add_pool(const HourState& state) {
  const double pool_g_m2 = grams * state.pool_kg_m2;
  pool_.step(pool_g_m2_, pool_g_m2, 1.0);
  pool_g_m2_ = pool_g_m2;
  peak_pool_g_m2_ = std::max(peak_pool_g_m2_, pool_g_m2);
  run_off_g_m2_ += grams * state.run_off_kg_m2;
  drained_g_m2_ += grams * state.drained_kg_m2;
}

void YearTally::add_timber(double timber_kg_kg) {
  timber_.step(timber_kg_kg_, timber_kg_kg, 1.0);
  timber_kg_kg_ = timber_kg_kg;
  peak_timber_kg_kg_ = std::max(peak_timber_kg_kg_, timber_kg_kg);
}

/// The edge as GapDesign has it: outdoors + edge factor x (face - outdoors).
double YearTally::edge_C(const TallyContext& at, double face_C) const {
  const double outdoor_C = at.now.given.outdoors.air_temperature_C;
  return outdoor_C + terms_.edge_factor * (face_C - outdoor_C);
}

/// The coldest place that the room's air reaches.
double YearTally::room_spot_C(const TallyContext& at, const HourState& state, std::size_t room_face) const {
  if (!terms_.room_factors) {
    return edge_C(at, state.face_C[room_face]);
  }
  const double factor = room_face == sheet_room_face ? terms_.room_factors->with_sheet
                                                     : terms_.room_factors->without_sheet;
  const double outdoor_C = at.now.given.outdoors.air_temperature_C;
  return outdoor_C + factor * (at.now.given.room_C - outdoor_C);
}

void YearTally::add_room_face(const TallyContext& at, const HourState& state, std::size_t room_face) {
  // ISO 13788: vapour pressure of the room over saturation at the surface (from memory).
  face_humidity_sum_[at.now.month] +=
      at.room_vapour_Pa / saturation_.at(room_spot_C(at, state, room_face)).pressure_Pa;
  ++face_hours_[at.now.month];
}

void YearTally::add_heat(const TallyContext& at, const HourState& state) {
  if (!at.now.heating) {
    return;
  }
  // Ventilation takes over its share of what was stopped: through + needed (before - through).
  const double air_m3_s =
      (1.0 - terms_.draught_needed) * state.through_air_m3_s + terms_.draught_needed * at.through_before_m3_s;
  const auto& given = at.now.given;
  const double capacity = volumetric_heat_capacity_J_m3K(given.room_C, given.room_vapour_Pa);
  heat_J_ +=
      hour_s * (state.heat_W + capacity * air_m3_s * (given.room_C - given.outdoors.air_temperature_C));
}

void YearTally::add_way(const SampleHour& now, const HourState& state) {
  if (now.cold_half) {
    const ClearWay way = clear_way(state);
    outwards_hours_ += way == ClearWay::outwards ? 1 : 0;
    inwards_hours_ += way == ClearWay::inwards ? 1 : 0;
    ++cold_hours_;
    cold_from_room_m3_s_ += state.from_room_m3_s;
    cold_from_outdoors_m3_s_ += state.from_outdoors_m3_s;
    cold_to_outdoors_m3_s_ += std::max(0.0, state.from_outdoors_m3_s + state.net_outwards_m3_s);
  }
}

void YearTally::add_with_sheet(const TallyContext& at, const HourState& state) {
  if (!settled(state)) {
    return;
  }
  // Below 0 C all that a face holds is frost.
  const double pane_water = state.face_C[1] < 0.0 ? 0.0 : state.pane_film_kg_m2;
  const double sheet_water = state.face_C[2] < 0.0 ? 0.0 : state.sheet_film_kg_m2;
  const double held = std::max(state.pane_film_kg_m2, state.sheet_film_kg_m2);
  // Both faces dried out: the one that took longer had the film that counts.
  const double falls_in_h = held > 0.0 ? 1.0 : last_drying_part(state);
  add_film(at.now, {.held_g_m2 = grams * held,
                    .water_g_m2 = grams * std::max(pane_water, sheet_water),
                    .frost_g_m2 = grams * state.frost_kg_m2,
                    .falls_in_h = falls_in_h});
  add_pool(state);
  add_timber(state.timber_kg_kg);
  edge_mist_hours_ += state.vapour_Pa >= saturation_.at(state.sill_C).pressure_Pa ? 1 : 0;
  add_room_face(at, state, sheet_room_face);
  add_heat(at, state);
  add_way(at.now, state);
}

void YearTally::add_old_window(const TallyContext& at, const HourState& state, double timber_kg_kg) {
  if (!settled(state)) {
    return;
  }
  const double held = grams * state.room_face_film_kg_m2;
  const bool freezes = state.face_C[1] < 0.0;
  add_film(at.now,
           {.held_g_m2 = held, .water_g_m2 = freezes ? 0.0 : held, .frost_g_m2 = freezes ? held : 0.0});
  edge_mist_hours_ += at.room_vapour_Pa >= saturation_.at(edge_C(at, state.face_C[1])).pressure_Pa ? 1 : 0;
  add_timber(timber_kg_kg);
  add_room_face(at, state, 1);
  add_heat(at, state);
  add_way(at.now, state);
}

void YearTally::add_without_sheet(const TallyContext& at, const HourState& state, double timber_kg_kg) {
  if (!settled(state)) {
    return;
  }
  add_timber(timber_kg_kg);
  add_room_face(at, state, 1);
  add_heat(at, state);
}

void YearTally::wipe() {
  film_ = {};
  pool_g_m2_ = 0.0;
  wet_.step(0.0, 0.0, 0.0);
  frosted_.step(0.0, 0.0, 0.0);
  pool_.step(0.0, 0.0, 0.0);
}

DampYear YearTally::damp_year() const {
  const bool wet = film_.held_g_m2 > wet_from_g_m2 || pool_g_m2_ > wet_from_g_m2;
  return {.hours_wet = wet_.total_h(),
          .longest_wet_run_h = wet_.longest_h(),
          .peak_film_g_m2 = peak_film_g_m2_,
          .run_off_kg_m2 = run_off_g_m2_ / grams,
          .pool_hours = pool_.total_h(),
          .longest_pool_run_h = pool_.longest_h(),
          .timber_hours_above_caution = timber_.total_h(),
          .longest_timber_run_h = timber_.longest_h(),
          .after_summer = wet ? AfterSummer::still_wet : AfterSummer::dried};
}

OptionYear YearTally::year(double timber_run_as_it_is_h) const {
  const auto damp = damp_year();
  double peak_month = 0.0;
  for (std::size_t m = 0; m < 12; ++m) {
    peak_month = std::max(peak_month, face_hours_[m] > 0 ? face_humidity_sum_[m] / face_hours_[m] : 0.0);
  }
  const double ways = std::max(1, inwards_hours_ + outwards_hours_);
  const double cold_hours = std::max(1, cold_hours_);
  const auto brief = [](double value) { return static_cast<float>(value); };
  OptionYear year;
  year.hours_wet = brief(damp.hours_wet);
  year.longest_wet_run_h = brief(damp.longest_wet_run_h);
  year.peak_film_g_m2 = brief(damp.peak_film_g_m2);
  year.run_off_g_m2 = brief(run_off_g_m2_);
  year.drained_g_m2 = brief(drained_g_m2_);
  year.peak_pool_g_m2 = brief(peak_pool_g_m2_);
  year.pool_hours = brief(damp.pool_hours);
  year.longest_pool_run_h = brief(damp.longest_pool_run_h);
  year.frost_hours = brief(frosted_.total_h());
  year.misty_mornings = brief(misty_mornings_);
  year.edge_mist_hours = brief(edge_mist_hours_);
  year.peak_timber = brief(peak_timber_kg_kg_);
  year.timber_hours_above_caution = brief(damp.timber_hours_above_caution);
  year.longest_timber_run_h = brief(damp.longest_timber_run_h);
  year.room_face_peak_month_humidity = brief(peak_month);
  year.heat_kWh = brief(terms_.heated_share * heat_J_ / 3.6e6);
  year.inwards_share = brief(inwards_hours_ / ways);
  year.outwards_share = brief(outwards_hours_ / ways);
  year.cold_from_room_m3_s = brief(cold_from_room_m3_s_ / cold_hours);
  year.cold_from_outdoors_m3_s = brief(cold_from_outdoors_m3_s_ / cold_hours);
  year.cold_to_outdoors_m3_s = brief(cold_to_outdoors_m3_s_ / cold_hours);
  year.unsettled_hours = brief(unsettled_hours_);
  year.band = year_band(damp, timber_run_as_it_is_h);
  year.wet_after_summer = damp.after_summer == AfterSummer::still_wet;
  return year;
}

}  // namespace dewgap
