#include "dewgap/assessment/sheet_in_sun.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "dewgap/assessment/window_model_kernel.hpp"

namespace dewgap {
namespace {

constexpr double nearest_blind_m = 0.003;
constexpr double farthest_blind_m = 0.25;

BlindThere blind_there(const WindowSurvey& window) {
  using There = HungPart::There;
  if (window.blind.there == There::yes || window.shutter.there == There::yes) {
    return BlindThere::yes;
  }
  const bool none = window.blind.there == There::no && window.shutter.there == There::no;
  return none ? BlindThere::no : BlindThere::not_known;
}

/// From the nearer of blind and shutter to the sheet's room side.
std::optional<double> clearance_m(const WindowSurvey& window, double sheet_stands_out_m) {
  const auto& [blind_m, shutter_m] = std::pair{window.blind.clearance_m, window.shutter.clearance_m};
  if (!blind_m && !shutter_m) {
    return std::nullopt;
  }
  const double nearest_m = std::min(blind_m.value_or(farthest_blind_m + sheet_stands_out_m),
                                    shutter_m.value_or(farthest_blind_m + sheet_stands_out_m));
  return std::clamp(nearest_m - sheet_stands_out_m, nearest_blind_m, farthest_blind_m);
}

SunOnSheetInput input_for(const Survey& survey, const std::optional<double>& planned_thickness_m) {
  const auto window = window_model(survey);
  SunOnSheetInput input;
  input.sheet = survey.sheet.material;
  input.grade = survey.sheet.grade;
  input.sheet_thickness_m = planned_thickness_m.value_or(window.sheet_thickness_m);
  input.glass_thickness_m = window.glass_thickness_m;
  input.gap_m = window.gap_width_m;
  input.height_m = window.height_m;
  const double stands_out_m = window.tape_thickness_m + *input.sheet_thickness_m;
  input.blind_to_sheet_m = clearance_m(survey.window, stands_out_m).value_or(input.blind_to_sheet_m);
  return input;
}

std::string degrees(double temperature_C) {
  return std::to_string(std::lround(temperature_C)) + " C";
}

/// "In full sun the sheet reaches about 62 C behind a dark blind, it bears 70 C: ..."
std::string sentence_of(const SheetInSun& sun) {
  const std::string bears = ", it bears " + degrees(sun.limit_C);
  const std::string reaches = "In full sun the sheet reaches about " + degrees(sun.sheet_C);
  if (sun.blind == BlindThere::yes) {
    const std::string behind = reaches + " behind a dark blind" + bears;
    switch (sun.severity) {
      case FitSeverity::blocks:
        return behind + ": take another material, or no blind that can be dark.";
      case FitSeverity::mind:
        return behind + ": keep blinds open in the sun, and radiators off it.";
      case FitSeverity::look:
      case FitSeverity::fine:
        return behind + ".";
    }
  }
  if (sun.severity == FitSeverity::blocks) {
    return reaches + bears + ": take another material.";
  }
  if (sun.severity == FitSeverity::mind) {
    return reaches + ", behind a dark blind " + degrees(sun.behind_dark_blind_C) + bears +
           ": keep blinds and radiators off it.";
  }
  return reaches + bears + ".";
}

}  // namespace

SheetInSun sheet_in_sun(const Survey& survey, const std::optional<double>& planned_thickness_m) {
  auto input = input_for(survey, planned_thickness_m);
  const auto bare = sun_on_sheet(input);
  input.blind = SunBlind::room_side;
  const auto shaded = sun_on_sheet(input);

  SheetInSun sun;
  sun.blind = blind_there(survey.window);
  const auto& as_it_is = sun.blind == BlindThere::yes && shaded.sheet_C > bare.sheet_C ? shaded : bare;
  sun.severity = as_it_is.finding.severity;
  sun.sheet_C = as_it_is.sheet_C;
  sun.limit_C = as_it_is.finding.limit_C;
  sun.margin_K = as_it_is.finding.margin_K;
  sun.without_blind_C = bare.sheet_C;
  sun.behind_dark_blind_C = shaded.sheet_C;
  if (sun.blind == BlindThere::not_known && sun.severity == FitSeverity::fine &&
      shaded.finding.severity != FitSeverity::fine) {
    sun.severity = FitSeverity::mind;
  }
  sun.sentence = sentence_of(sun);
  return sun;
}

}  // namespace dewgap
