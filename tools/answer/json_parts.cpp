#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "tools/answer/json_parts_kernel.hpp"
#include "tools/answer/words.hpp"
#include "tools/job/units.hpp"

namespace dewgap::tools::json_parts {

double finite(double value) {
  if (!std::isfinite(value)) throw std::domain_error("a result is not a finite number");
  return value;
}

double share(double value) {
  constexpr double rounding = 1e-9;
  if (!(value >= -rounding && value <= 1.0 + rounding))
    throw std::domain_error("a share is not between 0 and 1");
  return std::clamp(value, 0.0, 1.0);
}

Json spread(const Spread& spread, double factor) {
  return {{"p10", finite(factor * spread.p10)},
          {"p50", finite(factor * spread.p50)},
          {"p90", finite(factor * spread.p90)}};
}

namespace {

std::string_view word_of(BlindThere blind) {
  switch (blind) {
    case BlindThere::not_known:
      return "not_known";
    case BlindThere::no:
      return "no";
    case BlindThere::yes:
      return "yes";
  }
  return "not_known";
}

Json vent_option(const VentOutcome& outcome) {
  return {{"option", json_word(outcome.option)},
          {"share_dry_in_coldest_month", share(outcome.dry_share)},
          {"share_acceptable", share(outcome.acceptable_share)},
          {"coldest_month_margin_K", spread(outcome.month_margin_K)},
          {"frost_night_margin_K", spread(outcome.frost_night_margin_K)},
          {"coldest_month_condensation_g_m2h", spread(outcome.month_condensation_g_m2h)},
          {"frost_night_condensation_g_m2h", spread(outcome.frost_night_condensation_g_m2h)},
          {"frost_night_film_g_m2", spread(outcome.frost_night_film_g_m2)},
          {"air_through_gap_m3_h", spread(outcome.air_through_gap_m3_h)},
          {"heat_penalty_kWh_per_year", spread(outcome.heat_penalty_kWh)},
          {"share_of_cases_by_way_of_the_air",
           {{"inwards", share(outcome.share_inwards)},
            {"outwards", share(outcome.share_outwards)},
            {"both_ways", share(outcome.share_both_ways)},
            {"room_side", share(outcome.share_room_side)},
            {"still", share(outcome.share_still)}}}};
}

}  // namespace

Json vent(const Assessment::Figures& figures) {
  Json options = Json::array();
  for (const auto& outcome : figures.vents) options.push_back(vent_option(outcome));
  return {{"provisional", figures.provisional},
          {"choice", json_word(figures.vent)},
          {"reason", figures.vent_reason},
          {"flip", figures.flip},
          {"share_of_plausible_cases_that_agree", share(figures.agree_share)},
          {"share_acceptable_with_200_mm_of_tape_lifted", share(figures.lifted_tape_acceptable_share)},
          {"options", options}};
}

Json now_and_with_sheet(const SideBySide& side) {
  return {
      {"declared_glass_u_now_W_m2K", finite(side.declared_glass_before_W_m2K)},
      {"declared_glass_u_with_sheet_W_m2K", finite(side.declared_glass_after_W_m2K)},
      {"glass_u_now_W_m2K", spread(side.glass_u_before_W_m2K)},
      {"glass_u_with_sheet_W_m2K", spread(side.glass_u_after_W_m2K)},
      {"window_u_now_W_m2K", spread(side.window_u_before_W_m2K)},
      {"window_u_with_sheet_W_m2K", spread(side.window_u_after_W_m2K)},
      {"frost_night_room_face_now_C", spread(side.room_face_before_C)},
      {"frost_night_room_face_with_sheet_C", spread(side.room_face_after_C)},
      {"coldest_month_room_face_factor_now", spread(side.room_face_factor_before)},
      {"coldest_month_room_face_factor_with_sheet", spread(side.room_face_factor_after)},
      {"coldest_month_room_face_humidity_now_pct", spread(side.room_face_humidity_before, per_cent.per_base)},
      {"coldest_month_room_face_humidity_with_sheet_pct",
       spread(side.room_face_humidity_after, per_cent.per_base)},
      {"draught_now_m3_h", spread(side.draught_before_m3_h)},
      {"draught_with_sheet_m3_h", spread(side.draught_after_m3_h)},
      {"heat_saved_kWh_per_year", spread(side.heat_saved_kWh)},
      {"saved_glass_kWh_per_year", spread(side.saved_glass_kWh)},
      {"saved_frame_kWh_per_year", spread(side.saved_frame_kWh)},
      {"saved_draught_kWh_per_year", spread(side.saved_air_kWh)},
      {"sun_lost_kWh_per_year", spread(side.sun_lost_kWh)},
      {"coldest_month_room_humidity_pct", spread(side.room_humidity, per_cent.per_base)},
      {"coldest_month_dry_up_to_room_humidity_pct", spread(side.dry_up_to_room_humidity, per_cent.per_base)}};
}

Json money(const AnsweredJob& job) {
  const MoneySpread& money = *job.assessment.figures->money;
  Json json{{"currency", job.currency},
            {"terms", given(job.money_given)},
            {"saved_currency_per_year", spread(money.saved_per_year)},
            {"share_that_never_pays_back", share(money.never_pays_back_share)}};
  if (money.payback_years) json["payback_years"] = spread(*money.payback_years);
  if (money.net_present_value) json["net_present_value_currency"] = spread(*money.net_present_value);
  if (money.carbon_kg_per_year) json["carbon_saved_kg_per_year"] = spread(*money.carbon_kg_per_year);
  return json;
}

Json cut_and_fix(const SheetPlan& plan) {
  Json json{{"sheet_count", plan.sheet_count},
            {"width_mm", plan.width_mm},
            {"height_mm", plan.height_mm},
            {"thickness_mm", plan.thickness_mm},
            {"weight_kg", finite(plan.weight_kg)},
            {"movement_mm", finite(plan.movement_mm)},
            {"tape_length_m", finite(plan.tape_length_m)},
            {"out_of_square_mm", finite(plan.out_of_square_mm)},
            {"batten_first", plan.batten_first},
            {"fixing", json_word(plan.fixing)},
            {"fixing_count", plan.fixing_count},
            {"marks_along_width_mm", plan.width_marks_mm},
            {"marks_along_height_mm", plan.height_marks_mm},
            {"reasons", plan.reasons},
            {"notes", plan.notes}};
  if (plan.fixing == FixingKind::tape_only || plan.fixing == FixingKind::beads) return json;
  json["screw_from_sheet_edge_mm"] = finite(plan.fixing_offset_mm);
  json["pilot_diameter_mm"] = finite(plan.pilot_diameter_mm);
  if (plan.pilot_depth_mm > 0.0) json["pilot_depth_mm"] = finite(plan.pilot_depth_mm);
  if (plan.fixing == FixingKind::turn_clips) return json;
  json["hole_diameter_mm"] = finite(plan.hole_diameter_mm);
  json["slots_needed"] = plan.slots_needed;
  json["fixed_mark_mm"] = plan.fixed_mark_mm;
  if (plan.screw_length_mm > 0.0) json["screw_length_mm"] = finite(plan.screw_length_mm);
  return json;
}

Json sun_on_sheet(const SheetInSun& sun) {
  return {{"severity", name_of(sun.severity)},
          {"sentence", sun.sentence},
          {"sheet_C", finite(sun.sheet_C)},
          {"limit_C", finite(sun.limit_C)},
          {"margin_K", finite(sun.margin_K)},
          {"without_blind_C", finite(sun.without_blind_C)},
          {"behind_dark_blind_C", finite(sun.behind_dark_blind_C)},
          {"blind", word_of(sun.blind)}};
}

Json do_not_cut_yet(const CutCheck& cut) {
  Json reasons = Json::array();
  for (const auto& mend : cut.against) reasons.push_back(mend.say);
  return reasons;
}

}  // namespace dewgap::tools::json_parts
