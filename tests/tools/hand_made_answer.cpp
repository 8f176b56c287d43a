#include "hand_made_answer.hpp"

namespace dewgap::test {
namespace {

SheetPlan hand_made_plan() {
  SheetPlan plan;
  plan.width_mm = 943;
  plan.height_mm = 1543;
  plan.thickness_mm = 4;
  plan.weight_kg = 6.9;
  plan.movement_mm = 3.2;
  plan.fixing = FixingKind::screws;
  plan.fixings_per_width = 3;
  plan.fixings_per_height = 4;
  plan.fixing_count = 14;
  plan.width_marks_mm = {50, 471, 893};
  plan.height_marks_mm = {50, 531, 1012, 1493};
  plan.fixing_offset_mm = 12.0;
  plan.hole_diameter_mm = 7.5;
  plan.fixed_mark_mm = 471;
  plan.pilot_diameter_mm = 3.0;
  plan.pilot_depth_mm = 30.0;
  plan.screw_length_mm = 39.0;
  plan.tape_length_m = 4.92;
  plan.notes = {"Width: largest of three, 903 mm, plus 20 mm a side.",
                "Height: largest of three, 1503 mm, plus 20 mm a side.",
                "Tight screw only at 471 mm on the bottom edge; leave the others free to slide.",
                "Pilot holes no deeper than 30 mm: the timber ends there."};
  plan.reasons = {"Farthest hole moves 2.6 mm, a 5 mm hole allows 0.8: drill 7.5 mm, with washers."};
  return plan;
}

SideBySide hand_made_sides() {
  SideBySide side;
  side.declared_glass_before_W_m2K = 5.8;
  side.declared_glass_after_W_m2K = 2.8;
  side.glass_u_before_W_m2K = {4.62, 4.94, 5.24};
  side.glass_u_after_W_m2K = {2.11, 2.43, 2.78};
  side.window_u_before_W_m2K = {4.1, 4.4, 4.7};
  side.window_u_after_W_m2K = {2.0, 2.3, 2.6};
  side.room_face_before_C = {-12.54, -10.21, -10.04};
  side.room_face_after_C = {9.8, 11.2, 12.5};
  side.draught_before_m3_h = {4.0, 11.0, 31.0};
  side.draught_after_m3_h = {0.1, 0.4, 1.9};
  side.heat_saved_kWh = {81.2, 132.7, 201.9};
  side.saved_glass_kWh = {60, 90, 120};
  side.saved_frame_kWh = {5, 10, 15};
  side.saved_air_kWh = {20, 45, 90};
  side.sun_lost_kWh = {5, 12, 20};
  side.room_face_humidity_before = {0.92, 0.97, 1.09};
  side.room_face_humidity_after = {0.70, 0.74, 0.79};
  side.room_humidity = {0.42, 0.5, 0.58};
  side.dry_up_to_room_humidity = {0.48, 0.55, 0.61};
  return side;
}

VentOutcome hand_made_outcome(VentOption option) {
  VentOutcome outcome;
  outcome.option = option;
  outcome.dry_share = 0.7;
  outcome.acceptable_share = 0.82;
  outcome.month_margin_K = {-0.5, 0.8, 2.1};
  outcome.share_outwards = 1.0;
  return outcome;
}

Assessment::Figures hand_made_figures() {
  Assessment::Figures figures;
  figures.vent_reason =
      "Room air is drawn out through the gap: every break would feed it more damp room air.";
  figures.flip = "A room above 55 % (48 % to 61 %) in the coldest month would change this.";
  figures.vents = {hand_made_outcome(VentOption::sealed), hand_made_outcome(VentOption::breaks_bottom)};
  figures.agree_share = 0.82;
  figures.lifted_tape_acceptable_share = 0.64;
  figures.now_and_with = hand_made_sides();
  figures.money =
      MoneySpread{{9.1, 15.3, 23.2}, Spread{15, 26, 40}, Spread{6.0, 9.2, 15.4}, 0.02, Spread{-20, 43, 130}};
  figures.influences = {
      {Unknown::vapour_excess, "how damp the room is", "A hygrometer for a few days", true, 0.1, 0.6}};
  figures.settle_first = {"A hygrometer morning and evening for a few days"};
  figures.guessed = {"how damp the room is", "which way the house draws air"};
  figures.evidence = {{"tissue.top", "out", false, "less than 10 K colder outside", 1.0}};
  figures.inputs = {{"window.width", 0.9013, "m", Basis::measured, "job"}};
  figures.width_checks = {{0.5, Headline::fit_after, VentOption::sealed, 0.9},
                          {2.0, Headline::leave, VentOption::sealed, 0.6}};
  figures.plan = hand_made_plan();
  figures.cut.sun = {.sentence = "In full sun the sheet reaches about 41 C, it bears 70 C.",
                     .sheet_C = 41.2,
                     .limit_C = 70.0,
                     .margin_K = 28.8,
                     .without_blind_C = 41.2,
                     .behind_dark_blind_C = 57.3};
  figures.remedies = {"Leave the small fan running."};
  figures.flags.raise(ValidityFlag::gap_wide_correlations_differ);
  figures.samples = 256;
  figures.samples_left_out = 3;
  figures.effective_samples = 77.3;
  figures.coldest_month_C = 5.2;
  figures.frost_night_C = -2.3;
  figures.place_line = "London, 12 km away, 35 m higher";
  return figures;
}

}  // namespace

tools::AnsweredJob hand_made_answer() {
  tools::AnsweredJob job;
  job.survey.name = "Back bedroom, 14 Quince Row";
  job.survey.settle_first.answered_by = "the householder";
  job.currency = "EUR";
  job.survey_given = {
      {"window.opening_widths_mm",
       {},
       std::vector<tools::GivenScalar>{std::int64_t{903}, 900.5},
       "mm",
       Basis::measured},
      {"room.hygrometer.humidity_pct", 2, tools::GivenScalar(58.5), "per cent", Basis::measured},
      {"joints.rattles", {}, tools::GivenScalar("yes"), "", Basis::described}};
  job.money_given = {
      {"money.price_per_kWh", {}, tools::GivenScalar(0.12), "currency per kWh", Basis::measured}};
  job.assessment.headline = Headline::fit_after;
  job.assessment.because = "The gap stays dry or harmlessly misty in 8 in 10 plausible cases.";
  job.assessment.after = {"Stop the rain that the window lets in."};
  job.assessment.cautions = {{"timber", "Screws: keep to the depth.",
                              "Keep screws inside the measured timber.", "common practice, no source"}};
  job.assessment.figures = hand_made_figures();
  return job;
}

}  // namespace dewgap::test
