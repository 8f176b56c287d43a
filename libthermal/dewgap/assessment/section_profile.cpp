#include "dewgap/assessment/section_profile.hpp"

#include <algorithm>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/assessment/vent_cases_kernel.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/moisture/criteria.hpp"

namespace dewgap {
namespace {

/// What all cuts share.
struct Cut {
  const Setting& setting;
  const UnknownValues& sample;
  SectionCondition condition;
  Moment moment;
  CurtainState curtain;
};

/// A curtain is drawn on the frost night, as assess has it. `excess_factor` of the room's vapour by sealing.
Cut cut_for(const Setting& setting, const UnknownValues& sample, SectionCondition condition,
            double excess_factor) {
  const bool frost = condition == SectionCondition::frost_night;
  return {.setting = setting,
          .sample = sample,
          .condition = condition,
          .moment = frost ? frost_moment(setting, sample, excess_factor)
                          : month_moment(setting, sample, excess_factor),
          .curtain = frost ? CurtainState::drawn : CurtainState::open};
}

SectionLayer solid(const Cut& cut, SectionPart part, const StackLayer& layer) {
  SectionLayer named;
  named.part = part;
  named.name = name_of(part);
  named.thickness_m = layer.thickness_m;
  switch (part) {
    case SectionPart::old_glass:
      named.material = "glass";
      break;
    case SectionPart::sheet:
      named.material = name_of(cut.setting.survey->sheet.material);
      break;
    case SectionPart::gap:
    case SectionPart::curtain_air:
    case SectionPart::curtain:
      named.material = "lined cloth";
      break;
  }
  return named;
}

/// The solved stack as layers with the air between them.
std::vector<SectionLayer> layers_of(const Cut& cut, const Stack& stack, const StackSolution& heat,
                                    const std::vector<SectionPart>& solids) {
  std::vector<SectionLayer> layers;
  for (std::size_t i = 0; i < stack.layer_count; ++i) {
    if (i > 0) {
      const auto part = solids[i] == SectionPart::curtain ? SectionPart::curtain_air : SectionPart::gap;
      layers.push_back({.part = part,
                        .name = std::string(name_of(part)),
                        .material = "air",
                        .thickness_m = stack.gaps[i - 1].width_m,
                        .outer_face_C = heat.face_temperature_C[2 * i - 1],
                        .inner_face_C = heat.face_temperature_C[2 * i]});
    }
    auto layer = solid(cut, solids[i], stack.layers[i]);
    layer.outer_face_C = heat.face_temperature_C[2 * i];
    layer.inner_face_C = heat.face_temperature_C[2 * i + 1];
    layers.push_back(layer);
  }
  return layers;
}

SectionState climates_of(const Cut& cut) {
  const auto& moment = cut.moment;
  SectionState state;
  state.condition = cut.condition;
  state.outdoor_C = moment.outdoor_C;
  state.outdoor_dew_point_C = dew_point_C(moment.outdoor_vapour_Pa);
  state.room_C = moment.room_C;
  state.room_dew_point_C = dew_point_C(moment.room_vapour_Pa);
  state.room_humidity = relative_humidity(moment.room_C, moment.room_vapour_Pa);
  return state;
}

void add_mist(SectionState& state) {
  state.margin_K = state.edge_face_C - state.decisive_dew_point_C;
  const bool centre = state.centre_face_C < state.decisive_dew_point_C;
  const bool edge = state.margin_K < 0.0;
  state.mist = centre ? SectionMist::all_over : edge ? SectionMist::edges : SectionMist::none;
  state.is_frost = (centre ? state.centre_face_C : state.edge_face_C) < 0.0;
}

void add_room_face(const Cut& cut, double face_C, SectionState& state) {
  state.room_face_C = face_C;
  state.room_face_humidity = surface_relative_humidity(cut.moment.room_vapour_Pa, face_C);
}

SectionState without_sheet(const Cut& cut, ValidityFlags& flags) {
  const auto stack = single_stack(cut.setting, cut.sample, cut.curtain);
  const auto heat =
      solve_stack(stack, outdoors_at(cut.setting, cut.sample, cut.moment), room_at(cut.sample, cut.moment));
  if (heat.status != SolveStatus::converged) {
    throw CalculationFailed(explain(heat.status));
  }
  flags.raise(heat.flags);
  auto state = climates_of(cut);
  state.layers = layers_of(cut, stack, heat, {SectionPart::old_glass, SectionPart::curtain});
  state.centre_face_C = heat.face_temperature_C[1];
  state.edge_face_C =
      state.outdoor_C + cut.sample[Unknown::edge_factor] * (state.centre_face_C - state.outdoor_C);
  state.decisive_dew_point_C = state.room_dew_point_C;
  add_room_face(cut, state.centre_face_C, state);
  add_mist(state);
  return state;
}

SectionState with_sheet(const Cut& cut, VentOption option, ValidityFlags& flags) {
  const auto gap_case =
      gap_case_for(cut.setting, cut.sample, cut.moment, option, cut.curtain, TapeFault::none);
  const auto gap = solve_gap(gap_case);
  if (gap.status != SolveStatus::converged) {
    throw CalculationFailed(explain(gap.status));
  }
  flags.raise(gap.heat.flags);
  auto state = climates_of(cut);
  state.layers = layers_of(cut, gap_case.stack, gap.heat,
                           {SectionPart::old_glass, SectionPart::sheet, SectionPart::curtain});
  state.gap_air_C = gap.heat.gap_air_temperature_C[gap_case.gap_index];
  state.gap_dew_point_C = gap.actual_dew_point_C;
  state.gap_potential_dew_point_C = gap.potential_dew_point_C;
  state.centre_face_C = gap.centre_face_C;
  state.edge_face_C = gap.coldest_face_C;
  state.decisive_dew_point_C = gap.potential_dew_point_C;
  add_room_face(cut, gap.heat.face_temperature_C[3], state);
  add_mist(state);
  return state;
}

UnknownValues middle_of(const Setting& setting) {
  return middle_case(draw_cases(setting, {}, {}));
}

}  // namespace

std::string_view name_of(SectionPart part) {
  switch (part) {
    case SectionPart::old_glass:
      return "old glass";
    case SectionPart::gap:
      return "gap";
    case SectionPart::sheet:
      return "sheet";
    case SectionPart::curtain_air:
      return "air behind the curtain";
    case SectionPart::curtain:
      return "curtain";
  }
  throw InvalidInput("part", "is not a layer of the window");
}

SectionProfile section_profile(const Survey& survey, VentOption option) {
  validate(survey);
  if (!is_offered(option, survey)) {
    throw InvalidInput("option", std::string(name_of(option)) + ": cannot be offered for this window");
  }
  const Setting setting = setting_for(survey);
  const auto sample = middle_of(setting);
  const double sealing = excess_factor_of(setting, sample, option);
  const auto cut = [&](SectionCondition condition, double excess_factor) {
    return cut_for(setting, sample, condition, excess_factor);
  };
  SectionProfile profile;
  profile.option = option;
  profile.month_without = without_sheet(cut(SectionCondition::coldest_month, 1.0), profile.flags);
  profile.month_with = with_sheet(cut(SectionCondition::coldest_month, sealing), option, profile.flags);
  profile.frost_without = without_sheet(cut(SectionCondition::frost_night, 1.0), profile.flags);
  profile.frost_with = with_sheet(cut(SectionCondition::frost_night, sealing), option, profile.flags);
  profile.glass_height_m = setting.window.glass_height_m;
  profile.gap_width_m = setting.window.gap_width_m;
  profile.tape_thickness_m = setting.window.tape_thickness_m;
  return profile;
}

std::string mist_sentence(const SectionState& state) {
  const std::string when = state.condition == SectionCondition::frost_night ? "On a frost night "
                                                                            : "In the coldest month's means ";
  const std::string what = state.is_frost ? "frost" : "mist";
  const std::string pane = state.gap_air_C ? "the glass in the gap" : "the old glass";
  switch (state.mist) {
    case SectionMist::none:
      return when + pane + " stays clear.";
    case SectionMist::edges:
      return when + what + " forms at the edges of " + pane + ".";
    case SectionMist::all_over:
      return when + what + " covers " + pane + ".";
  }
  throw InvalidInput("mist", "is not a kind of mist");
}

}  // namespace dewgap
