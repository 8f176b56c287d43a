#include "dewgap/assessment/summary_kernel.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/glazing/declared.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

/// What an option loses against sealed: heat through the sheet and the gap, and draught that it lets pass.
double heat_penalty_kWh(const SampleFigures& figures, std::size_t option) {
  const auto& chosen = figures.options[option];
  const auto& sealed = figures.options[0];
  return (chosen.air_loss_W_K - sealed.air_loss_W_K) * figures.degree_hours_factor_kKh +
         (chosen.draught_after_m3_h - sealed.draught_after_m3_h) * figures.draught_factor_kWh_m3_h;
}

VentOutcome outcome_of(const WeightedRuns& runs, std::size_t i) {
  const auto spread = [&](auto figure) {
    return spread_over(runs, [&](const SampleFigures& f) { return figure(f.options[i]); });
  };
  const auto share = [&](auto holds) {
    return share_over(runs, [&](const SampleFigures& f) { return holds(f.options[i]); });
  };
  const auto way_share = [&](AirWay way) {
    return share([way](const OptionFigures& o) { return o.month.way == way; });
  };
  const double hours = runs.frost_night_hours;
  VentOutcome outcome;
  outcome.option = vent_options[i];
  outcome.dry_share = share(is_dry);
  outcome.acceptable_share = share([hours](const OptionFigures& o) { return is_acceptable(o, hours); });
  outcome.month_margin_K = spread([](const OptionFigures& o) { return o.month.margin_K; });
  outcome.frost_night_margin_K = spread([](const OptionFigures& o) { return o.frost.margin_K; });
  outcome.month_condensation_g_m2h =
      spread([](const OptionFigures& o) { return o.month.condensation_g_m2h; });
  outcome.frost_night_condensation_g_m2h =
      spread([](const OptionFigures& o) { return o.frost.condensation_g_m2h; });
  outcome.frost_night_film_g_m2 =
      spread([hours](const OptionFigures& o) { return hours * o.frost.condensation_g_m2h; });
  outcome.air_through_gap_m3_h = spread([](const OptionFigures& o) { return o.month.air_m3_h; });
  outcome.heat_penalty_kWh =
      spread_over(runs, [i](const SampleFigures& f) { return heat_penalty_kWh(f, i); });
  outcome.share_inwards = way_share(AirWay::inwards);
  outcome.share_outwards = way_share(AirWay::outwards);
  outcome.share_both_ways = way_share(AirWay::both_ways);
  outcome.share_room_side = way_share(AirWay::room_side);
  outcome.share_still = way_share(AirWay::still);
  return outcome;
}

DeclaredGlazing declared_glazing(const Setting& setting, std::size_t panes) {
  const auto& window = setting.window;
  const bool coated = setting.survey->window.glass_coated.value_or(false);
  const double glass = prior_of(Unknown::glass_emissivity, coated ? "coated" : "").p50;
  DeclaredGlazing glazing;
  glazing.room_emissivity = glass;
  glazing.panes = {{.thickness_m = window.glass_thickness_m, .conductivity_W_mK = 1.0}};
  if (panes == 2) {
    glazing.panes.push_back({.thickness_m = std::max(window.sheet_thickness_m, 0.00005),
                             .conductivity_W_mK = window.sheet.conductivity_W_mK.best});
    const double sheet = setting.survey->expert.sheet_emissivity.value_or(window.sheet.emissivity.best);
    glazing.gaps = {{.width_m = window.gap_width_m, .emissivity_outer = glass, .emissivity_inner = sheet}};
    glazing.room_emissivity = sheet;
  }
  return glazing;
}

/// Room humidity at which the chosen option is just dry, 0..1.
double dry_up_to(const SampleFigures& f, double room_C, std::size_t option) {
  return relative_humidity(room_C, f.options[option].month.highest_dry_room_vapour_Pa);
}

void add_heat_spreads(const Setting& setting, const WeightedRuns& runs, VentOption chosen, SideBySide& side) {
  side.heat_saved_kWh =
      spread_over(runs, [&](const SampleFigures& f) { return heat_saved_kWh(f, chosen, *setting.survey); });
  side.saved_glass_kWh = spread_over(runs, [](const SampleFigures& f) { return f.saved.glass_kWh; });
  side.saved_frame_kWh = spread_over(runs, [](const SampleFigures& f) { return f.saved.frame_kWh; });
  side.saved_air_kWh = spread_over(runs, [](const SampleFigures& f) { return f.saved.air_kWh; });
  side.sun_lost_kWh = spread_over(runs, [](const SampleFigures& f) { return f.saved.sun_lost_kWh; });
}

/// The room face on a frost night, and its temperature factor and humidity in the coldest month.
void add_room_faces(const WeightedRuns& runs, std::size_t option, SideBySide& side) {
  side.room_face_before_C = spread_over(runs, [](const SampleFigures& f) { return f.frost_face_before_C; });
  side.room_face_after_C =
      spread_over(runs, [option](const SampleFigures& f) { return f.options[option].frost_room_face_C; });
  side.room_face_factor_before =
      spread_over(runs, [](const SampleFigures& f) { return f.month_face_factor_before; });
  side.room_face_factor_after = spread_over(
      runs, [option](const SampleFigures& f) { return f.options[option].month_room_face_factor; });
  side.room_face_humidity_before =
      spread_over(runs, [](const SampleFigures& f) { return f.month_face_humidity_before; });
  side.room_face_humidity_after = spread_over(
      runs, [option](const SampleFigures& f) { return f.options[option].month_room_face_humidity; });
}

}  // namespace

VentOption nearest_steady(VentOption option) {
  switch (option) {
    case VentOption::breaks_bottom:
    case VentOption::breaks_bottom_longer:
      return VentOption::breaks_bottom;
    case VentOption::breaks_bottom_and_top:
      return VentOption::breaks_bottom_and_top;
    case VentOption::sealed:
    case VentOption::weep_to_outdoors:
    case VentOption::joints_stripped:
    case VentOption::off_in_summer:
      return VentOption::sealed;
  }
  return VentOption::sealed;
}

std::size_t index_of(VentOption option) {
  const auto* const place = std::find(vent_options.begin(), vent_options.end(), nearest_steady(option));
  return static_cast<std::size_t>(std::distance(vent_options.begin(), place));
}

double heat_saved_kWh(const SampleFigures& figures, VentOption option, const Survey& survey) {
  const double saved = figures.saved.total_kWh() - heat_penalty_kWh(figures, index_of(option));
  return survey.building.bill_kWh ? std::min(saved, *survey.building.bill_kWh) : saved;
}

Spread spread_over(const WeightedRuns& runs, const std::function<double(const SampleFigures&)>& figure) {
  std::vector<double> values;
  values.reserve(runs.figures.size());
  for (const auto& f : runs.figures) {
    values.push_back(figure(f));
  }
  return numerics::weighted_spread(values, runs.weights);
}

double share_over(const WeightedRuns& runs, const std::function<bool(const SampleFigures&)>& holds) {
  double share = 0.0;
  for (std::size_t i = 0; i < runs.figures.size(); ++i) {
    share += holds(runs.figures[i]) ? runs.weights[i] : 0.0;
  }
  return share;
}

double losing_share(const WeightedRuns& runs, VentOption option, const Survey& survey) {
  return share_over(runs, [&](const SampleFigures& f) { return heat_saved_kWh(f, option, survey) <= 0.0; });
}

std::vector<VentOutcome> vent_outcomes(const WeightedRuns& runs) {
  std::vector<VentOutcome> outcomes;
  for (std::size_t i = 0; i < vent_options.size(); ++i) {
    outcomes.push_back(outcome_of(runs, i));
  }
  return outcomes;
}

SideBySide side_by_side(const Setting& setting, const WeightedRuns& runs, VentOption chosen) {
  const std::size_t option = index_of(chosen);
  SideBySide side;
  side.declared_glass_before_W_m2K = declared_u_value(declared_glazing(setting, 1)).u_value_W_m2K;
  side.declared_glass_after_W_m2K = declared_u_value(declared_glazing(setting, 2)).u_value_W_m2K;
  side.glass_u_before_W_m2K = spread_over(runs, [](const SampleFigures& f) { return f.glass_u_before; });
  side.glass_u_after_W_m2K = spread_over(runs, [](const SampleFigures& f) { return f.glass_u_after; });
  side.window_u_before_W_m2K = spread_over(runs, [](const SampleFigures& f) { return f.window_u_before; });
  side.window_u_after_W_m2K = spread_over(runs, [](const SampleFigures& f) { return f.window_u_after; });
  add_room_faces(runs, option, side);
  side.draught_before_m3_h = spread_over(runs, [](const SampleFigures& f) { return f.draught_before_m3_h; });
  side.draught_after_m3_h =
      spread_over(runs, [option](const SampleFigures& f) { return f.options[option].draught_after_m3_h; });
  side.room_humidity = spread_over(runs, [](const SampleFigures& f) { return f.month_room_humidity; });
  std::vector<double> dry;
  for (std::size_t i = 0; i < runs.figures.size(); ++i) {
    dry.push_back(dry_up_to(runs.figures[i], runs.samples[i][Unknown::room_temperature], option));
  }
  side.dry_up_to_room_humidity = numerics::weighted_spread(dry, runs.weights);
  side.verdict_turns_at_room_humidity = numerics::weighted_quantile(dry, runs.weights, 1.0 - enough_share);
  add_heat_spreads(setting, runs, chosen, side);
  return side;
}

}  // namespace dewgap
