#include "dewgap/assessment/sun_on_sheet.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/errors.hpp"
#include "dewgap/glazing/stack.hpp"

namespace dewgap {
namespace {

constexpr double blind_thickness_m = 0.0005;     // cloth
constexpr double blind_conductivity_W_mK = 0.1;  // our convention
constexpr double blind_emissivity = 0.9;

/// What a layer passes and keeps of the sun, shares of what falls on it.
struct SunShares {
  double passed;
  double kept;
};

void validate(const SunOnSheetInput& input) {
  require_in_range(input.glass_thickness_m, {0.0015, 0.025}, "glass_thickness_m", "m");
  require_in_range(input.gap_m, {0.002, 0.25}, "gap_m", "m");
  require_in_range(input.height_m, {0.1, 5.0}, "height_m", "m");
  require_in_range(input.irradiance_W_m2, {0.0, 1200.0}, "irradiance_W_m2", "W/m2");
  require_in_range(input.outdoor_C, {-30.0, 50.0}, "outdoor_C", "C");
  require_in_range(input.room_C, {0.0, 50.0}, "room_C", "C");
  require_in_range(input.outdoor_convection_W_m2K, {1.0, 50.0}, "outdoor_convection_W_m2K", "W/(m2 K)");
  require_in_range(input.blind_absorptance, {0.0, 1.0}, "blind_absorptance", "");
  require_in_range(input.blind_to_sheet_m, {0.003, 0.25}, "blind_to_sheet_m", "m");
  if (input.sheet_thickness_m) {
    require_in_range(*input.sheet_thickness_m, {1e-5, 0.05}, "sheet_thickness_m", "m");
  }
}

/// Shares at another thickness than the usual: Bouguer's law within the sheet, reflection unchanged.
SunShares sun_shares(const SheetProperties& sheet, double thickness_m) {
  const double passed = sheet.solar_transmittance.best;
  const double entering = passed + sheet.solar_absorptance.best;
  const double passed_now = entering * std::pow(passed / entering, thickness_m / sheet.usual_thickness_m);
  return {passed_now, entering - passed_now};
}

StackLayer layer_of(const SheetProperties& properties, double thickness_m, double absorbed_W_m2) {
  return {.thickness_m = thickness_m,
          .conductivity_W_mK = properties.conductivity_W_mK.best,
          .emissivity_outer = properties.emissivity.best,
          .emissivity_inner = properties.emissivity.best,
          .long_wave_transmittance = properties.long_wave_transmittance.best,
          .absorbed_sun_W_m2 = absorbed_W_m2};
}

StackLayer blind_of(double absorbed_W_m2) {
  return {.thickness_m = blind_thickness_m,
          .conductivity_W_mK = blind_conductivity_W_mK,
          .emissivity_outer = blind_emissivity,
          .emissivity_inner = blind_emissivity,
          .absorbed_sun_W_m2 = absorbed_W_m2};
}

/// The layers from outdoors inwards, and where sheet and blind are among them.
struct SunStack {
  Stack stack;
  std::size_t sheet = 1;
  std::size_t blind = 0;  ///< 0: none
};

void add(Stack& stack, const StackLayer& layer, double gap_before_m) {
  stack.gaps[stack.layer_count - 1].width_m = gap_before_m;
  stack.layers[stack.layer_count] = layer;
  ++stack.layer_count;
}

SunStack sun_stack(const SunOnSheetInput& input) {
  const auto glass = glass_properties();
  const auto sheet = sheet_properties(input.sheet);
  const double thick_m = input.sheet_thickness_m.value_or(sheet.usual_thickness_m);
  const SunShares through_glass = sun_shares(glass, input.glass_thickness_m);
  const SunShares through_sheet = sun_shares(sheet, thick_m);
  double sun_W_m2 = input.irradiance_W_m2;

  SunStack built;
  built.stack.height_m = input.height_m;
  built.stack.layers[0] = layer_of(glass, input.glass_thickness_m, through_glass.kept * sun_W_m2);
  sun_W_m2 *= through_glass.passed;
  double gap_m = input.gap_m;
  if (input.blind == SunBlind::in_gap) {
    gap_m = std::max(0.5 * input.gap_m, 0.002);
    add(built.stack, blind_of(input.blind_absorptance * sun_W_m2), gap_m);
    built.blind = 1;
    sun_W_m2 = 0.0;
  }
  built.sheet = built.stack.layer_count;
  add(built.stack, layer_of(sheet, thick_m, through_sheet.kept * sun_W_m2), gap_m);
  if (input.blind == SunBlind::room_side) {
    built.blind = built.stack.layer_count;
    add(built.stack, blind_of(input.blind_absorptance * through_sheet.passed * sun_W_m2),
        input.blind_to_sheet_m);
  }
  return built;
}

double hotter_face_C(const StackSolution& solution, std::size_t layer) {
  return std::max(solution.face_temperature_C[2 * layer], solution.face_temperature_C[2 * layer + 1]);
}

}  // namespace

SunOnSheet sun_on_sheet(const SunOnSheetInput& input) {
  validate(input);
  const auto built = sun_stack(input);
  const OutdoorClimate outdoors{.air_temperature_C = input.outdoor_C,
                                .sky_temperature_C = input.outdoor_C,
                                .ground_temperature_C = input.outdoor_C,
                                .convection_W_m2K = input.outdoor_convection_W_m2K};
  const RoomClimate room{.air_temperature_C = input.room_C, .radiant_temperature_C = input.room_C};
  const auto solution = solve_stack(built.stack, outdoors, room);
  if (solution.status != SolveStatus::converged) {
    throw CalculationFailed("the sheet's temperature in the sun did not settle");
  }
  SunOnSheet answer;
  answer.sheet_C = hotter_face_C(solution, built.sheet);
  answer.room_face_C = solution.face_temperature_C[2 * built.sheet + 1];
  answer.absorbed_W_m2 = built.stack.layers[built.sheet].absorbed_sun_W_m2;
  if (built.blind > 0) {
    answer.blind_C = hotter_face_C(solution, built.blind);
  }
  answer.finding = sun_finding(answer.sheet_C, input.sheet, input.grade);
  return answer;
}

SunOnSheet hottest_sun_on_sheet(SunOnSheetInput input) {
  SunOnSheet hottest;
  bool first = true;
  for (const SunBlind blind : {SunBlind::none, SunBlind::room_side, SunBlind::in_gap}) {
    input.blind = blind;
    const auto answer = sun_on_sheet(input);
    if (first || answer.sheet_C > hottest.sheet_C) {
      hottest = answer;
      first = false;
    }
  }
  return hottest;
}

}  // namespace dewgap
