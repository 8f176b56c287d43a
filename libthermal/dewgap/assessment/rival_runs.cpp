#include <algorithm>
#include <cmath>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/assessment/rivals_kernel.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/numerics/split_mix.hpp"

namespace dewgap {
namespace {

// Hung or shut at night before the old window: our convention, no source. A shutter is as a curtain that lets
// half as much of the room's air pass.
constexpr double curtain_from_glass_m = 0.10;
constexpr double shutter_from_glass_m = 0.06;
constexpr StackLayer shutter_layer{
    .thickness_m = 0.015, .conductivity_W_mK = 0.13, .emissivity_outer = 0.9, .emissivity_inner = 0.9};
constexpr double shutter_leak_W_m2K = 1.0;
constexpr double share_of_day_shut = 0.5;  // of the day's heating, as a curtain's in assess

StackSolution settled(const Stack& stack, const Setting& setting, const UnknownValues& sample,
                      const Moment& moment) {
  auto solution = solve_stack(stack, outdoors_at(setting, sample, moment), room_at(sample, moment));
  if (solution.status != SolveStatus::converged) {
    throw CalculationFailed(explain(solution.status));
  }
  return solution;
}

/// One sample with what all its rivals share.
class SampleRivals {
 public:
  SampleRivals(const Setting& setting, const UnknownValues& sample, const SampleFigures& figures,
               const SheetAsFitted& sheet)
      : setting_(setting),
        sample_(sample),
        figures_(figures),
        sheet_(sheet),
        winter_(old_winter(setting, sample)) {}

  RivalFigures nothing() const { return old_window(1.0); }

  /// Stripped joints stop draught, and with it vapour that left the room.
  RivalFigures stripped(const UnknownValues& made_tight) const {
    const double draught_m3_h = draught_before_m3_h(setting_, made_tight, winter_.moment);
    auto rival = old_window(sealing_factor(sample_, winter_.draught_m3_h, draught_m3_h));
    rival.draught_m3_h = draught_m3_h;
    rival.heat_saved_kWh = capped((winter_.draught_m3_h - draught_m3_h) * figures_.draught_factor_kWh_m3_h);
    return rival;
  }

  /// Something shut at night before the old window.
  RivalFigures shut_at_night(const Stack& shut) const {
    RivalFigures rival;
    const Moment frost = frost_moment(setting_, sample_, 1.0);
    const auto cold = settled(shut, setting_, sample_, frost);
    rival.frost_pane_C = cold.face_temperature_C[1];
    rival.frost_room_face_C = cold.face_temperature_C[3];
    rival.frost_margin_K = margin_K(frost, rival.frost_pane_C);
    const Moment month = month_moment(setting_, sample_, 1.0);
    rival.month_margin_K = margin_K(month, settled(shut, setting_, sample_, month).face_temperature_C[1]);
    rival.draught_m3_h = winter_.draught_m3_h;
    rival.heat_saved_kWh =
        capped(share_of_day_shut * cut_while_shut_W_K(shut) * figures_.degree_hours_factor_kKh);
    return rival;
  }

  RivalFigures with_sheet(VentOption vent, double costs_kWh) const {
    SampleFigures moved = figures_;
    moved.saved.glass_kWh -= costs_kWh;
    auto rival = of_option(figures_.options[index_of(vent)], sample_, nearest_steady(vent));
    rival.heat_saved_kWh = dewgap::heat_saved_kWh(moved, vent, *setting_.survey);
    return rival;
  }

  RivalFigures sheet_and_stripped(const UnknownValues& made_tight) const {
    const auto vent = nearest_steady(sheet_.vent);
    const auto option = run_option(setting_, made_tight, vent, TapeFault::none, 1.0, winter_);
    auto rival = of_option(option, made_tight, vent);
    const auto& sealed = figures_.options[0];
    const double penalty_kWh =
        (option.air_loss_W_K - sealed.air_loss_W_K) * figures_.degree_hours_factor_kKh +
        (option.draught_after_m3_h - sealed.draught_after_m3_h) * figures_.draught_factor_kWh_m3_h;
    rival.heat_saved_kWh = capped(figures_.saved.total_kWh() - penalty_kWh - sheet_.costs_kWh);
    return rival;
  }

 private:
  double capped(double saved_kWh) const {
    const auto& bill_kWh = setting_.survey->building.bill_kWh;
    return bill_kWh ? std::min(saved_kWh, *bill_kWh) : saved_kWh;
  }

  /// The old pane's edge less the room's dew point.
  double margin_K(const Moment& moment, double pane_C) const {
    const double edge_C = moment.outdoor_C + sample_[Unknown::edge_factor] * (pane_C - moment.outdoor_C);
    return edge_C - dew_point_C(moment.room_vapour_Pa);
  }

  RivalFigures old_window(double excess_factor) const {
    RivalFigures rival;
    const Moment frost = frost_moment(setting_, sample_, excess_factor);
    rival.frost_pane_C = figures_.frost_face_before_C;
    rival.frost_room_face_C = rival.frost_pane_C;
    rival.frost_margin_K = margin_K(frost, rival.frost_pane_C);
    const Moment month = month_moment(setting_, sample_, excess_factor);
    const auto open = settled(single_stack(setting_, sample_, CurtainState::open), setting_, sample_, month);
    rival.month_margin_K = margin_K(month, open.face_temperature_C[1]);
    rival.draught_m3_h = winter_.draught_m3_h;
    return rival;
  }

  /// W/K that glass and frame lose less while something is shut before both.
  double cut_while_shut_W_K(const Stack& shut) const {
    const auto open = single_stack(setting_, sample_, CurtainState::open);
    const double open_u = settled(open, setting_, sample_, winter_.moment).u_value_W_m2K;
    const double shut_u = settled(shut, setting_, sample_, winter_.moment).u_value_W_m2K;
    const double frame_u = setting_.window.frame_u_W_m2K * sample_[Unknown::frame_u_factor];
    const WindowTransmittances u{.glass_before_W_m2K = open_u,
                                 .glass_after_W_m2K = shut_u,
                                 .sash_W_m2K = frame_u,
                                 .frame_W_m2K = frame_u,
                                 .added_resistance_m2K_W = std::max(0.0, 1.0 / shut_u - 1.0 / open_u)};
    return conductance_before(setting_.window.areas, u).total_W_K() -
           conductance_after(setting_.window.areas, u, Cover::reveal).total_W_K();
  }

  RivalFigures of_option(const OptionFigures& option, const UnknownValues& sample, VentOption vent) const {
    const auto frost = gap_case_for(setting_, sample, frost_moment(setting_, sample, option.excess_factor),
                                    vent, CurtainState::drawn, TapeFault::none);
    const auto gap = solve_gap(frost);
    if (gap.status != SolveStatus::converged) {
      throw CalculationFailed(explain(gap.status));
    }
    return {.heat_saved_kWh = 0.0,
            .frost_room_face_C = option.frost_room_face_C,
            .frost_pane_C = gap.heat.face_temperature_C[1],
            .draught_m3_h = option.draught_after_m3_h,
            .month_margin_K = option.month.margin_K,
            .frost_margin_K = option.frost.margin_K};
  }

  const Setting& setting_;
  const UnknownValues& sample_;
  const SampleFigures& figures_;
  const SheetAsFitted& sheet_;
  OldWinter winter_;
};

/// The old pane behind a curtain as assess has it.
Stack curtain_stack(const Setting& setting, const UnknownValues& sample) {
  Survey survey = *setting.survey;
  survey.sheet.curtain_gap_m = curtain_from_glass_m;
  Setting hung = setting;
  hung.survey = &survey;
  return single_stack(hung, sample, CurtainState::drawn);
}

Stack shutter_stack(const Setting& setting, const UnknownValues& sample) {
  auto stack = single_stack(setting, sample, CurtainState::open);
  stack.layers[1] = shutter_layer;
  stack.gaps[0].width_m = shutter_from_glass_m;
  stack.gaps[0].air_stream = {.heat_capacity_flow_W_m2K = shutter_leak_W_m2K,
                              .inlet_temperature_C = sample[Unknown::room_temperature]};
  stack.layer_count = 2;
  return stack;
}

bool joints_can_be_stripped(const Survey& survey) {
  return survey.window.kind != WindowKind::fixed_light && !survey.window.painted_shut &&
         !survey.joints.weather_stripped.value_or(false);
}

}  // namespace

std::vector<RivalKind> offered_rivals(const Survey& survey, VentOption vent) {
  const bool strips = joints_can_be_stripped(survey);
  const bool covers = !survey.sheet.curtain_gap_m.has_value();
  std::vector<RivalKind> kinds{RivalKind::do_nothing};
  const auto add = [&](RivalKind kind, bool can_be) {
    if (can_be) {
      kinds.push_back(kind);
    }
  };
  add(RivalKind::repair_and_strip, strips);
  add(RivalKind::lined_curtains, covers);
  add(RivalKind::shutters, covers);
  add(RivalKind::sheet, true);
  add(RivalKind::sheet_off_in_summer, vent != VentOption::off_in_summer);
  add(RivalKind::sheet_and_strip, strips && vent != VentOption::joints_stripped);
  return kinds;
}

UnknownValues with_stripped_joints(const UnknownValues& sample, std::size_t place, std::uint64_t seed) {
  constexpr std::uint64_t stream = 0x7374726970ull;  // apart from that of the draw
  numerics::SplitMix64 random((seed ^ stream) + 0x9e3779b97f4a7c15ull * (place + 1));
  const auto& prior = prior_of(Unknown::joint_leakage, "weather_stripped");
  auto stripped = sample;
  auto& leakage = stripped[Unknown::joint_leakage];
  leakage = std::min(leakage, prior.at(random.inside_unit_interval()));
  return stripped;
}

std::vector<RivalFigures> rivals_of_sample(const Setting& setting, const UnknownValues& sample,
                                           const SampleFigures& figures, const SheetAsFitted& sheet,
                                           const std::vector<RivalKind>& kinds, std::size_t place,
                                           std::uint64_t seed) {
  const SampleRivals run(setting, sample, figures, sheet);
  const auto tight = with_stripped_joints(sample, place, seed);
  const auto figures_of = [&](RivalKind kind) {
    switch (kind) {
      case RivalKind::do_nothing:
        return run.nothing();
      case RivalKind::repair_and_strip:
        return run.stripped(tight);
      case RivalKind::lined_curtains:
        return run.shut_at_night(curtain_stack(setting, sample));
      case RivalKind::shutters:
        return run.shut_at_night(shutter_stack(setting, sample));
      case RivalKind::sheet:
        return run.with_sheet(sheet.vent, sheet.costs_kWh);
      case RivalKind::sheet_off_in_summer:
        return run.with_sheet(VentOption::off_in_summer, sheet.off_costs_kWh);
      case RivalKind::sheet_and_strip:
        return run.sheet_and_stripped(tight);
    }
    throw InvalidInput("rival", "is not one");
  };
  std::vector<RivalFigures> all;
  std::transform(kinds.begin(), kinds.end(), std::back_inserter(all), figures_of);
  return all;
}

}  // namespace dewgap
