#include "dewgap/assessment/sample_run_kernel.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/assessment/edge_of_window_kernel.hpp"
#include "dewgap/dwelling/room_humidity.hpp"
#include "dewgap/energy/sun_cut.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/moisture/criteria.hpp"
#include "dewgap/moisture/vapour_balance.hpp"
#include "dewgap/window/cover.hpp"

namespace dewgap {
namespace {

/// Of the stack's faces from outdoors: the sheet's on the room side, before any curtain.
constexpr std::size_t sheet_room_face = 3;

/// Raised when a sample's balance does not settle; run_sample reports it as a status.
struct NotSettled : CalculationFailed {
  explicit NotSettled(SolveStatus how) : CalculationFailed(explain(how)), status(how) {}
  SolveStatus status;
};

GapState settled_gap(const GapCase& gap_case) {
  auto state = solve_gap(gap_case);
  if (state.status != SolveStatus::converged) {
    throw NotSettled{state.status};
  }
  return state;
}

StackSolution settled_stack(const Stack& stack, const OutdoorClimate& outdoors, const RoomClimate& room) {
  auto solution = solve_stack(stack, outdoors, room);
  if (solution.status != SolveStatus::converged) {
    throw NotSettled{solution.status};
  }
  return solution;
}

/// With the flows as they are, the gap's potential vapour pressure is linear in the room's: where it meets
/// saturation at the coldest face.
double highest_dry_room_vapour_Pa(const GapCase& c, const GapState& state) {
  constexpr double probe_Pa = 100.0;
  VapourBalanceInput input{.from_room_m3_s = state.flows.from_room_m3_s,
                           .from_outdoors_m3_s = state.flows.from_outdoors_m3_s,
                           .room_vapour_Pa = c.room_vapour_Pa + probe_Pa,
                           .room_temperature_C = c.room.air_temperature_C,
                           .outdoor_vapour_Pa = c.outdoor_vapour_Pa,
                           .outdoor_temperature_C = c.outdoors.air_temperature_C,
                           .gap_temperature_C = state.heat.gap_air_temperature_C[c.gap_index],
                           .diffusion_to_room_kg_sPa = c.diffusion_to_room_kg_sPa,
                           .diffusion_to_outdoors_kg_sPa = c.diffusion_to_outdoors_kg_sPa,
                           .face_area_m2 = c.gap_area_m2,
                           .face_temperature_C = state.coldest_face_C};
  const double room_share =
      (solve_vapour_balance(input).potential_vapour_Pa - state.vapour.potential_vapour_Pa) / probe_Pa;
  const double outdoor_part = state.vapour.potential_vapour_Pa - room_share * c.room_vapour_Pa;
  const double saturation = saturation_pressure_Pa(state.coldest_face_C);
  const double room_saturation = saturation_pressure_Pa(c.room.air_temperature_C);
  return room_share > 1e-9 ? std::clamp((saturation - outdoor_part) / room_share, 0.0, room_saturation)
                           : room_saturation;
}

GapFigures figures_of(const GapCase& c, const GapState& state) {
  return {.margin_K = state.margin_K,
          .condensation_g_m2h = state.condensation_g_m2h,
          .way = state.way,
          .air_m3_h = 3600.0 * (state.flows.from_room_m3_s + state.flows.from_outdoors_m3_s),
          .highest_dry_room_vapour_Pa = highest_dry_room_vapour_Pa(c, state)};
}

/// Heat the room loses through sheet and gap per kelvin: conduction at the sheet, room air that the gap cools
/// and gives back, less what the gap gives to outdoor air on its way in (its draught is charged from
/// outdoors).
double glass_loss_W_K(const GapCase& c, const GapState& state) {
  const double difference_K = c.room.air_temperature_C - c.outdoors.air_temperature_C;
  if (std::abs(difference_K) < 0.5) {
    throw NotSettled{SolveStatus::singular};  // no heating season: a loss per kelvin has no meaning
  }
  const double exchanged_m3_s = std::min(state.flows.from_room_m3_s, state.flows.to_room_m3_s);
  const double cooled_K = c.room.air_temperature_C - state.heat.gap_air_temperature_C[c.gap_index];
  const double inwards_m3_s = std::min(state.flows.from_outdoors_m3_s, state.flows.to_room_m3_s);
  const double warmed_K = state.heat.gap_air_temperature_C[c.gap_index] - c.outdoors.air_temperature_C;
  const double capacity =
      volumetric_heat_capacity_J_m3K(state.heat.gap_air_temperature_C[c.gap_index], state.vapour.vapour_Pa);
  const double loss_W = state.heat.room_flux_W_m2 * c.gap_area_m2 + capacity * exchanged_m3_s * cooled_K -
                        capacity * inwards_m3_s * warmed_K;
  return loss_W / difference_K;
}

struct WinterFigures {
  double draught_after_m3_h = 0.0;
  double loss_W_K = 0.0;
  double closed_loss_W_K = 0.0;  ///< were the gap closed
};

WinterFigures winter_figures(const Setting& setting, const UnknownValues& sample, const Moment& winter,
                             VentOption vent, TapeFault fault) {
  const auto c = gap_case_for(setting, sample, winter, vent, CurtainState::open, fault);
  const auto state = settled_gap(c);
  const double draught_m3_h =
      draught_through_gap_m3_h(state) + draught_past_the_sheet_m3_h(setting, sample, winter);
  const auto closed = settled_stack(c.stack, c.outdoors, c.room);
  return {.draught_after_m3_h = draught_m3_h,
          .loss_W_K = glass_loss_W_K(c, state),
          .closed_loss_W_K = closed.u_value_W_m2K * c.gap_area_m2};
}

/// Half a day with the curtain open and half with it drawn: our convention.
double over_the_day(double open, double drawn) {
  return 0.5 * (open + drawn);
}

/// U of the glass over the day, with the curtain if there is one.
double glass_u(const Setting& setting, const UnknownValues& sample, const Moment& winter,
               Stack (*stack_for)(const Setting&, const UnknownValues&, CurtainState), ValidityFlags& flags) {
  const auto outdoors = outdoors_at(setting, sample, winter);
  const auto room = room_at(sample, winter);
  const auto open = settled_stack(stack_for(setting, sample, CurtainState::open), outdoors, room);
  flags.raise(open.flags);
  if (!has_curtain(setting)) {
    return open.u_value_W_m2K;
  }
  const auto drawn = settled_stack(stack_for(setting, sample, CurtainState::drawn), outdoors, room);
  return over_the_day(open.u_value_W_m2K, drawn.u_value_W_m2K);
}

WindowTransmittances transmittances(const Setting& setting, const UnknownValues& sample,
                                    const SampleFigures& figures) {
  return {.glass_before_W_m2K = figures.glass_u_before,
          .glass_after_W_m2K = figures.glass_u_after,
          .sash_W_m2K = setting.window.frame_u_W_m2K * sample[Unknown::frame_u_factor],
          .frame_W_m2K = setting.window.frame_u_W_m2K * sample[Unknown::frame_u_factor],
          .edge_W_mK = edge_psi_W_mK(setting),
          .added_resistance_m2K_W = 1.0 / figures.glass_u_after - 1.0 / figures.glass_u_before};
}

/// Share of the sun behind the glass that reaches the room: what the sheet lets through, and of what it
/// absorbs the part that flows inwards, 1 - U / 8 (the room-side film's share of the resistance).
double sun_passed_by_sheet(const Setting& setting, const UnknownValues& sample, double glass_u_W_m2K) {
  constexpr double room_film_W_m2K = 8.0;
  const double inwards = std::max(0.0, 1.0 - glass_u_W_m2K / room_film_W_m2K);
  const double passed = setting.sheet_solar_transmittance * sample[Unknown::sun_transmitted] +
                        inwards * setting.window.sheet.solar_absorptance.best;
  return std::min(1.0, passed);
}

/// Annual heat: conduction by part, draught counted once, sun lost.
void add_heat(const Setting& setting, const UnknownValues& sample, SampleFigures& figures) {
  const auto u = transmittances(setting, sample, figures);
  const auto before = conductance_before(setting.window.areas, u);
  const auto after = conductance_with_sheet(setting, u);
  const double opening_m2 = setting.window.width_m * setting.window.height_m;
  figures.window_u_before = before.total_W_K() / opening_m2;
  figures.window_u_after = after.total_W_K() / opening_m2;
  const double base_C = sample[Unknown::base_temperature];
  const double station_base_C = base_C - sample[Unknown::climate_offset];
  const HeatSavedInput input{
      .degree_days_Kd = degree_days_Kd(setting.place, station_base_C, DegreeDayMethod::schoenau_kehrig),
      .heating_days = heating_days(setting.place, station_base_C),
      .room_C = std::max(base_C, sample[Unknown::room_temperature]),
      .base_C = base_C,
      .heated_share_of_day = sample[Unknown::heated_share],
      .glass_conductance_cut_W_K = before.glass_W_K - after.glass_W_K - figures.options[0].air_loss_W_K,
      .frame_conductance_cut_W_K = before.frame_W_K + before.edge_W_K - after.frame_W_K - after.edge_W_K,
      .draught_cut_m3_h = figures.draught_before_m3_h - figures.options[0].draught_after_m3_h,
      .draught_needed_share = sample[Unknown::draught_needed],
      .sun_cut_kWh_day =
          sun_cut_kWh_day(setting.sun, setting.window.areas.glass_m2, setting.glass_solar_transmittance,
                          sun_passed_by_sheet(setting, sample, figures.glass_u_after)),
      .sun_used_share = setting.sun_seen_share * sample[Unknown::sun_used] * sample[Unknown::heated_share]};
  figures.saved = heat_saved(input);
  HeatSavedInput per_unit = input;
  per_unit.glass_conductance_cut_W_K = 1.0;
  per_unit.draught_cut_m3_h = 1.0;
  figures.degree_hours_factor_kKh = heat_saved(per_unit).glass_kWh;
  figures.draught_factor_kWh_m3_h = heat_saved(per_unit).air_kWh;
}

double single_pane_face_C(const Setting& setting, const UnknownValues& sample, const Moment& moment,
                          CurtainState curtain) {
  return settled_stack(single_stack(setting, sample, curtain), outdoors_at(setting, sample, moment),
                       room_at(sample, moment))
      .face_temperature_C[1];
}

double sheet_face_humidity(const GapCase& c) {
  return surface_relative_humidity(c.room_vapour_Pa, settled_gap(c).heat.face_temperature_C[sheet_room_face]);
}

/// The old pane as it is, under both design conditions.
void add_old_pane(const Setting& setting, const UnknownValues& sample, SampleFigures& figures) {
  const Moment frost = frost_moment(setting, sample, 1.0);
  figures.frost_face_before_C = single_pane_face_C(setting, sample, frost, CurtainState::drawn);
  const Moment month = month_moment(setting, sample, 1.0);
  const double face_C = single_pane_face_C(setting, sample, month, CurtainState::open);
  figures.month_face_factor_before = temperature_factor(face_C, month.room_C, month.outdoor_C);
  const double drawn_face_C =
      has_curtain(setting) ? single_pane_face_C(setting, sample, month, CurtainState::drawn) : face_C;
  figures.month_face_humidity_before =
      over_the_day(surface_relative_humidity(month.room_vapour_Pa, face_C),
                   surface_relative_humidity(month.room_vapour_Pa, drawn_face_C));
  figures.month_room_humidity = relative_humidity(month.room_C, month.room_vapour_Pa);
}

}  // namespace

double sealing_factor(const UnknownValues& sample, double before_m3_h, double after_m3_h) {
  const double background = sample[Unknown::background_airflow];
  return (background + before_m3_h) / (background + after_m3_h);
}

OldWinter old_winter(const Setting& setting, const UnknownValues& sample) {
  const Moment winter = winter_moment(setting, sample);
  return {.moment = winter, .draught_m3_h = draught_before_m3_h(setting, sample, winter)};
}

OptionFigures run_option(const Setting& setting, const UnknownValues& sample, VentOption vent,
                         TapeFault fault, double excess_scale, const OldWinter& winter) {
  OptionFigures figures;
  const auto season = winter_figures(setting, sample, winter.moment, vent, fault);
  figures.draught_after_m3_h = season.draught_after_m3_h;
  figures.air_loss_W_K = season.loss_W_K - season.closed_loss_W_K;
  figures.excess_factor =
      excess_scale * sealing_factor(sample, winter.draught_m3_h, season.draught_after_m3_h);

  const auto month = gap_case_for(setting, sample, month_moment(setting, sample, figures.excess_factor), vent,
                                  CurtainState::open, fault);
  const auto month_state = settled_gap(month);
  figures.month = figures_of(month, month_state);
  figures.month_room_face_factor = month_state.room_face_temperature_factor;
  const auto evening = gap_case_for(setting, sample, month_moment(setting, sample, figures.excess_factor),
                                    vent, CurtainState::drawn, fault);
  figures.month_room_face_humidity =
      over_the_day(month_state.room_face_humidity,
                   has_curtain(setting) ? sheet_face_humidity(evening) : month_state.room_face_humidity);
  figures.month_room_side_humidity = std::max(
      figures.month_room_face_humidity,
      edge_spot_humidity(setting, month_moment(setting, sample, figures.excess_factor)).value_or(0.0));
  const auto frost = gap_case_for(setting, sample, frost_moment(setting, sample, figures.excess_factor), vent,
                                  CurtainState::drawn, fault);
  const auto frost_state = settled_gap(frost);
  figures.frost = figures_of(frost, frost_state);
  figures.frost_room_face_C = frost_state.heat.face_temperature_C[sheet_room_face];
  return figures;
}

SampleFigures run_sample(const Setting& setting, const UnknownValues& sample) {
  SampleFigures figures;
  try {
    const auto old = old_winter(setting, sample);
    const Moment& winter = old.moment;
    figures.draught_before_m3_h = old.draught_m3_h;
    for (std::size_t i = 0; i < vent_options.size(); ++i) {
      figures.options[i] = run_option(setting, sample, vent_options[i], TapeFault::none, 1.0, old);
    }
    figures.lifted = run_option(setting, sample, VentOption::sealed, TapeFault::lifted_200_mm, 1.0, old);
    figures.glass_u_before = glass_u(setting, sample, winter, single_stack, figures.flags);
    figures.glass_u_after = glass_u(setting, sample, winter, double_stack, figures.flags);
    add_old_pane(setting, sample, figures);
    add_heat(setting, sample, figures);
  } catch (const NotSettled& not_settled) {
    figures.status = not_settled.status;
  }
  return figures;
}

bool is_dry(const OptionFigures& figures) {
  return figures.month.margin_K >= 0.0;
}

bool is_acceptable(const OptionFigures& figures, double frost_night_hours) {
  const double film_g_m2 = figures.frost.condensation_g_m2h * frost_night_hours;
  const bool month_clear = figures.month.condensation_g_m2h <= 0.0;
  return month_clear && film_band(film_g_m2) <= FilmBand::mist;
}

}  // namespace dewgap
