#include "dewgap/assessment/scenario_kernel.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/assessment/edge_of_window_kernel.hpp"
#include "dewgap/assessment/window_openings_kernel.hpp"
#include "dewgap/glazing/emissivity.hpp"

namespace dewgap {
namespace {

// A lined curtain, open to the room round its edges: our convention.
constexpr StackLayer curtain_layer{
    .thickness_m = 0.002, .conductivity_W_mK = 0.06, .emissivity_outer = 0.85, .emissivity_inner = 0.85};
constexpr double curtain_leak_W_m2K = 2.0;

double wall_pressure_coefficient(const PressureCoefficients& shelter, double wind_side) {
  return wind_side >= 0.0 ? shelter.side + wind_side * (shelter.windward - shelter.side)
                          : shelter.side - wind_side * (shelter.leeward - shelter.side);
}

/// Draught through openings of the old window alone, m3/h, each direction counted half. No gap: the room
/// itself stands behind them, through one wide opening at the reference height.
double draught_through_m3_h(const Setting& setting, const UnknownValues& sample, const Moment& moment,
                            const std::vector<PlacedOpening>& openings) {
  const auto network = old_window_network(setting, openings);
  const double room_kg_m3 = humid_air_density_kg_m3(moment.room_C, moment.room_vapour_Pa);
  const AirDensities densities{
      .outdoor_kg_m3 = humid_air_density_kg_m3(moment.outdoor_C, moment.outdoor_vapour_Pa),
      .gap_kg_m3 = room_kg_m3,
      .room_kg_m3 = room_kg_m3};
  const auto flows = flows_within_hour(network, densities, pressure_at(setting, sample, moment));
  return 3600.0 * 0.5 * (flows.from_outdoors_m3_s + flows.to_outdoors_m3_s);
}

void add_curtain(const Setting& setting, Stack& stack, double room_C, CurtainState curtain) {
  const auto& gap_m = setting.survey->sheet.curtain_gap_m;
  if (curtain == CurtainState::open || !gap_m) {
    return;
  }
  stack.layers[stack.layer_count] = curtain_layer;
  stack.gaps[stack.layer_count - 1] = {
      .width_m = *gap_m,
      .air_stream = {.heat_capacity_flow_W_m2K = curtain_leak_W_m2K, .inlet_temperature_C = room_C}};
  ++stack.layer_count;
}

StackLayer glass_layer(const Setting& setting, const UnknownValues& sample) {
  return {.thickness_m = setting.window.glass_thickness_m,
          .conductivity_W_mK = glass_properties().conductivity_W_mK.best,
          .emissivity_outer = uncoated_glass_emissivity,
          .emissivity_inner = sample[Unknown::glass_emissivity]};
}

StackLayer sheet_layer(const Setting& setting, const UnknownValues& sample) {
  const auto& sheet = setting.window.sheet;
  const double emissivity = sample[Unknown::sheet_emissivity];
  return {.thickness_m = setting.window.sheet_thickness_m,
          .conductivity_W_mK =
              setting.survey->expert.sheet_conductivity_W_mK.value_or(sheet.conductivity_W_mK.best),
          .emissivity_outer = emissivity,
          .emissivity_inner = emissivity,
          .long_wave_transmittance = sheet.long_wave_transmittance.best};
}

}  // namespace

double wind_ratio_at_window(const Setting& setting, const UnknownValues& sample) {
  return setting.shelter.wind_ratio * sample[Unknown::wind_ratio];
}

double sky_view_of(const Setting& setting) {
  const bool faces_wall = setting.survey->building.outlook == Shelter::facing_wall;
  return sky_view_factor(90.0) * (faces_wall ? 0.5 : 1.0);
}

PressureWithinHour pressure_under(const Setting& setting, const UnknownValues& sample, const Moment& moment,
                                  double facade_coefficient) {
  const auto pressure =
      dwelling_pressure({.room_temperature_C = moment.room_C,
                         .outdoor_temperature_C = moment.outdoor_C,
                         .window_height_m = setting.window_above_ground_m,
                         .neutral_level_m = setting.neutral_level_m + sample[Unknown::neutral_level_offset],
                         .station_wind_m_s = moment.station_wind_m_s,
                         .wind_ratio = wind_ratio_at_window(setting, sample),
                         .pressure_coefficient = facade_coefficient,
                         .gust_intensity = sample[Unknown::gust_intensity],
                         .extract_Pa = sample[Unknown::extract_depression]});
  auto within_hour = pressure.within_hour;
  if (setting.survey->expert.mean_pressure_Pa) {
    within_hour.mean_Pa = *setting.survey->expert.mean_pressure_Pa;
  }
  return within_hour;
}

PressureWithinHour pressure_at(const Setting& setting, const UnknownValues& sample, const Moment& moment) {
  return pressure_under(setting, sample, moment,
                        wall_pressure_coefficient(setting.shelter, sample[Unknown::wind_pressure]));
}

OutdoorClimate outdoors_at(const Setting& setting, const UnknownValues& sample, const Moment& moment) {
  // Saturated air's dew point may exceed its temperature by rounding.
  const double dew_C = std::min(
      moment.outdoor_C, dew_point_C(moment.outdoor_vapour_Pa, SaturationFormula::murphy_koop, Phase::water));
  return {.air_temperature_C = moment.outdoor_C,
          .sky_temperature_C = sky_temperature_C(moment.outdoor_C, dew_C, moment.cloud_cover),
          .ground_temperature_C = moment.outdoor_C,
          .sky_view_factor = sky_view_of(setting),
          .convection_W_m2K =
              outdoor_convection_W_m2K(moment.station_wind_m_s * wind_ratio_at_window(setting, sample)) *
              sample[Unknown::outdoor_convection]};
}

RoomClimate room_at(const UnknownValues& sample, const Moment& moment) {
  return {.air_temperature_C = moment.room_C,
          .radiant_temperature_C = moment.room_C,
          .film_factor = sample[Unknown::room_film]};
}

Stack single_stack(const Setting& setting, const UnknownValues& sample, CurtainState curtain) {
  Stack stack;
  stack.layers[0] = glass_layer(setting, sample);
  stack.layer_count = 1;
  stack.height_m = setting.window.glass_height_m;
  add_curtain(setting, stack, sample[Unknown::room_temperature], curtain);
  return stack;
}

GapCorrelation correlation_of(const UnknownValues& sample) {
  const double third = sample[Unknown::gap_correlation];
  if (third < 1.0) {
    return GapCorrelation::wright;
  }
  return third < 2.0 ? GapCorrelation::elsherbiny : GapCorrelation::en_673;
}

Stack double_stack(const Setting& setting, const UnknownValues& sample, CurtainState curtain) {
  Stack stack;
  stack.layers[0] = glass_layer(setting, sample);
  stack.layers[1] = sheet_layer(setting, sample);
  stack.gaps[0] = {.width_m = setting.window.gap_width_m,
                   .convection_factor = sample[Unknown::gap_convection]};
  stack.layer_count = 2;
  stack.correlation = correlation_of(sample);
  stack.height_m = setting.window.glass_height_m;
  add_curtain(setting, stack, sample[Unknown::room_temperature], curtain);
  return stack;
}

GapCase gap_case_for(const Setting& setting, const UnknownValues& sample, const Moment& moment,
                     VentOption vent, CurtainState curtain, TapeFault fault) {
  const double middle_C = 0.5 * (moment.room_C + moment.outdoor_C);
  return {.stack = double_stack(setting, sample, curtain),
          .gap_index = 0,
          .outdoors = outdoors_at(setting, sample, moment),
          .room = room_at(sample, moment),
          .outdoor_vapour_Pa = moment.outdoor_vapour_Pa,
          .room_vapour_Pa = moment.room_vapour_Pa,
          .gap_area_m2 = setting.window.areas.glass_m2,
          .network = network_for(setting, sample, vent, fault),
          .pressure = pressure_at(setting, sample, moment),
          .diffusion_to_room_kg_sPa = diffusion_to_room_kg_sPa(setting, sample, vent, middle_C),
          .edge_temperature_factor = gap_edge_factor(setting, sample)};
}

double draught_before_m3_h(const Setting& setting, const UnknownValues& sample, const Moment& moment) {
  auto openings = putty_lines(setting, sample);
  const auto joints = sash_joints(setting, sample);
  openings.insert(openings.end(), joints.begin(), joints.end());
  return draught_through_m3_h(setting, sample, moment, openings);
}

double draught_past_the_sheet_m3_h(const Setting& setting, const UnknownValues& sample,
                                   const Moment& moment) {
  return setting.window.joints_in_series
             ? 0.0
             : draught_through_m3_h(setting, sample, moment, sash_joints(setting, sample));
}

double draught_through_gap_m3_h(const GapState& gap) {
  const auto& flows = gap.flows;
  const double inwards = std::min(flows.from_outdoors_m3_s, flows.to_room_m3_s);
  const double outwards = std::min(flows.from_room_m3_s, flows.to_outdoors_m3_s);
  return 3600.0 * 0.5 * (inwards + outwards);
}

}  // namespace dewgap
