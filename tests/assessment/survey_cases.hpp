// Invented surveys shared by the tests of the assessment.
#pragma once

#include "dewgap/assessment/assess.hpp"

namespace dewgap::test {

inline SettleFirst all_settled() {
  return {.answered_by = "the fitter (invented)",
          .way_out = WayOut::not_a_way_out,
          .burning = Burning::nothing,
          .fresh_air = FreshAir::other_way_to_breathe,
          .protection = Protection::unprotected,
          .old_glass = OldGlassKind::plain};
}

/// A worn sash in a bedroom, sheet on the frame. Invented.
inline Survey worn_sash_survey() {
  Survey survey;
  survey.name = "Back bedroom (invented)";
  survey.place = {.nearest = "london", .distance_km = 12.0};
  survey.settle_first = all_settled();
  survey.window.kind = WindowKind::sliding_sash;
  survey.window.opening_widths_m = {0.902, 0.900, 0.899};
  survey.window.opening_heights_m = {1.402, 1.400, 1.401};
  survey.window.glass_to_fixing_face_m = {0.075, 0.035};
  survey.window.fixing_face_m = 0.045;
  survey.window.screw_depth_m = 0.035;
  survey.room.use = RoomUse::bedroom;
  survey.room.temperature_C = 18.0;
  survey.building = {.floor = 1, .floors = 2, .open_stairwell = true};
  return survey;
}

/// Fewer samples, and no year of hours: the laws that are tested with it do not hang on either.
inline AssessOptions quick_options() {
  return {.samples = 64, .width_checks = false, .most_window_hours = 0};
}

}  // namespace dewgap::test
