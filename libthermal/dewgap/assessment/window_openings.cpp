#include "dewgap/assessment/window_openings_kernel.hpp"

#include <algorithm>
#include <utility>

#include "dewgap/assessment/setting_out_kernel.hpp"
#include "dewgap/moisture/transfer.hpp"

namespace dewgap {
namespace {

constexpr double lifted_length_m = 0.200;  // the standing what-if of USERS: one lifted length of tape
constexpr double lifted_width_m = 0.001;   // our convention
constexpr double joint_exponent = 2.0 / 3.0;
// Two holes through the bottom rail, common practice, no source.
constexpr int weep_holes = 2;
constexpr double weep_diameter_m = 0.006;
constexpr double usual_rail_depth_m = 0.060;  // our convention

/// A joint round the opening, cut into lengths at five heights: bottom rail, sides in three, top rail.
std::vector<PlacedOpening> around(const WindowModel& window, double coefficient_m3_h_m,
                                  double extra_at_middle_m, double length_scale) {
  const double side_m = length_scale * 2.0 * window.height_m / 3.0;
  const double rail_m = length_scale * window.width_m;
  const double h = window.height_m;
  const auto joint = [&](double length_m, double height_m) {
    return PlacedOpening{joint_resistance(coefficient_m3_h_m, joint_exponent, length_m), height_m};
  };
  return {joint(rail_m, 0.0), joint(side_m, h / 6.0), joint(side_m + extra_at_middle_m, h / 2.0),
          joint(side_m, 5.0 * h / 6.0), joint(rail_m, h)};
}

/// Of all breaks along one member.
double length_m(const BreaksWanted& breaks) {
  return breaks.count * breaks.length_m;
}

PlacedOpening tape_break(const WindowModel& window, const BreaksWanted& breaks) {
  const SlotShape slot{
      .width_m = window.tape_thickness_m, .length_m = length_m(breaks), .depth_m = window.tape_width_m};
  return {slot_resistance(slot), breaks.member == Member::top ? window.height_m : 0.0};
}

void append(std::vector<PlacedOpening>& to, const std::vector<PlacedOpening>& from) {
  to.insert(to.end(), from.begin(), from.end());
}

/// Draught-stripping never makes a joint leakier than it was.
double stripped_leakage_m3_h_m(const UnknownValues& sample) {
  return std::min(sample[Unknown::joint_leakage], joint_leakage(JointState::weather_stripped).best_m3_h_m);
}

PlacedOpening weeps(const Setting& setting) {
  const double depth_m = setting.survey->window.frame_thickness_m.value_or(usual_rail_depth_m);
  return {weep_resistance(weep_diameter_m, depth_m, weep_holes), 0.0};
}

/// Openings to the room: the tape, its breaks, a lifted length.
std::vector<PlacedOpening> to_room(const Setting& setting, const UnknownValues& sample, VentOption vent,
                                   TapeFault fault) {
  const auto& window = setting.window;
  const double tape_scale = window.areas.sheet_perimeter_m / (2.0 * (window.width_m + window.height_m));
  auto openings = around(window, sample[Unknown::seal_leakage], 0.0, tape_scale);
  for (const auto& breaks : breaks_wanted(vent)) {
    openings.push_back(tape_break(window, breaks));
  }
  if (fault == TapeFault::lifted_200_mm) {
    const SlotShape lifted{
        .width_m = lifted_width_m, .length_m = lifted_length_m, .depth_m = window.tape_width_m};
    openings.push_back({slot_resistance(lifted), 0.5 * window.height_m});
  }
  return openings;
}

}  // namespace

std::vector<PlacedOpening> putty_lines(const Setting& setting, const UnknownValues& sample) {
  const auto& window = setting.window;
  const double scale = window.putty_length_m / (2.0 * (window.width_m + window.height_m));
  return around(window, sample[Unknown::putty_leakage], 0.0, scale);
}

std::vector<PlacedOpening> sash_joints(const Setting& setting, const UnknownValues& sample) {
  const auto& window = setting.window;
  return window.joint_length_m > 0.0
             ? around(window, sample[Unknown::joint_leakage], window.meeting_rail_m, 1.0)
             : std::vector<PlacedOpening>{};
}

std::vector<PlacedOpening> covered_openings(const Setting& setting, const UnknownValues& sample) {
  auto openings = putty_lines(setting, sample);
  if (setting.window.joints_in_series) {
    append(openings, sash_joints(setting, sample));
  }
  return openings;
}

GapNetwork old_window_network(const Setting& setting, std::vector<PlacedOpening> to_outdoors) {
  GapNetwork network;
  network.reference_height_m = 0.5 * setting.window.height_m;
  network.to_room = {{FlowResistance{.laminar_Pa_s_m3 = 1e-3}, network.reference_height_m}};
  network.to_outdoors = std::move(to_outdoors);
  return network;
}

GapNetwork network_for(const Setting& setting, const UnknownValues& sample, VentOption vent,
                       TapeFault fault) {
  UnknownValues as_made = sample;
  if (vent == VentOption::joints_stripped) {
    as_made[Unknown::joint_leakage] = stripped_leakage_m3_h_m(sample);
  }
  GapNetwork network;
  network.reference_height_m = 0.5 * setting.window.height_m;
  network.to_room = to_room(setting, as_made, vent, fault);
  network.to_outdoors = covered_openings(setting, as_made);
  if (vent == VentOption::weep_to_outdoors) {
    network.to_outdoors.push_back(weeps(setting));
  }
  return network;
}

double diffusion_to_room_kg_sPa(const Setting& setting, const UnknownValues& sample, VentOption vent,
                                double mean_C) {
  const auto& window = setting.window;
  const double sheet = sheet_vapour_conductance_kg_sPa(window.areas.sheet_m2, window.sheet_thickness_m,
                                                       window.sheet.vapour_resistance_factor.best, mean_C);
  const double tape =
      tape_vapour_conductance_kg_sPa(window.areas.sheet_perimeter_m, window.tape_thickness_m,
                                     window.tape_width_m, sample[Unknown::tape_vapour_resistance], mean_C);
  double breaks_m = 0.0;
  for (const auto& row : breaks_wanted(vent)) {
    breaks_m += length_m(row);
  }
  const double break_area_m2 = breaks_m * window.tape_thickness_m;
  const double breaks = break_area_m2 > 0.0
                            ? opening_vapour_conductance_kg_sPa(break_area_m2, window.tape_width_m, mean_C)
                            : 0.0;
  return sheet + tape + breaks;
}

}  // namespace dewgap
