#include "tools/answer/json_house.hpp"

#include "tools/answer/json_parts_kernel.hpp"
#include "tools/answer/json_schema.hpp"
#include "tools/answer/words.hpp"

namespace dewgap::tools {
namespace {

using json_parts::case_spread;
using json_parts::finite;
using json_parts::Json;
using json_parts::spread;

/// What a window's own answer says in short; on HOLD no figure.
Json window_summary(const AnsweredHouse& house, const HouseWindow& window) {
  const auto& assessment = window.assessment;
  Json json{{"number", window.number},
            {"name", window.name},
            {"headline", json_word(assessment.headline)},
            {"because", assessment.because},
            {"settle_first", json_parts::gates(house.window(window.number))},
            {"in_totals", window.counted}};
  if (assessment.headline == Headline::hold || !assessment.figures) return json;
  const auto& figures = *assessment.figures;
  json["after"] = assessment.after;
  json["provisional"] = figures.provisional;
  json["vent_choice"] = json_word(figures.vent);
  json["share_of_plausible_cases_that_agree"] = json_parts::share(figures.agree_share);
  json["heat_saved_kWh_per_year"] = spread(figures.now_and_with.heat_saved_kWh);
  json["draught_now_m3_h"] = spread(figures.now_and_with.draught_before_m3_h);
  json["draught_with_sheet_m3_h"] = spread(figures.now_and_with.draught_after_m3_h);
  if (figures.money) json["saved_currency_per_year"] = spread(figures.money->saved_per_year);
  return json;
}

Json total(const HouseTotal& total) {
  return {{"likely", spread(total.likely)},
          {"all_errors_together", spread(total.all_together)},
          {"no_error_shared", spread(total.none_shared)}};
}

Json totals(const AnsweredHouse& house) {
  const auto& totals = *house.answer.totals;
  Json json{{"heat_saved_kWh_per_year", total(totals.heat_saved_kWh)},
            {"draught_cut_m3_h", total(totals.draught_cut_m3_h)},
            {"ventilation_needed_instead_m3_h", total(totals.ventilation_needed_m3_h)}};
  if (totals.bill_kWh)
    json["capped_by_bill"] = {{"bill_kWh_per_year", finite(*totals.bill_kWh)},
                              {"share_of_cases_capped", json_parts::share(totals.capped_share)}};
  if (totals.money_saved_per_year) {
    json["saved_currency_per_year"] = total(*totals.money_saved_per_year);
    json["currency"] = house.windows.front().currency;
  }
  if (totals.carbon_kg_per_year) json["carbon_saved_kg_per_year"] = total(*totals.carbon_kg_per_year);
  return json;
}

std::string_view value_key(OrderBasis basis) {
  switch (basis) {
    case OrderBasis::money_saved_per_cost:
      return "saved_per_year_per_cost";
    case OrderBasis::heat_saved_per_sheet_area:
      return "saved_kWh_per_year_per_m2_of_sheet";
    case OrderBasis::misty_mornings_spared:
      return "misty_mornings_spared_per_year";
  }
  return {};
}

Json step(const AnsweredHouse& house, const OrderStep& step, OrderBasis basis) {
  Json json{{"place", step.place},
            {"number", step.number},
            {"name", house.window(step.number).survey.name},
            {"air_lost_so_far_m3_h", spread(step.air_lost_so_far_m3_h)}};
  if (!step.misty_mornings) {
    json[value_key(basis)] = spread(step.saving);
    return json;
  }
  const auto& mornings = *step.misty_mornings;
  json[value_key(basis)] = case_spread(mornings.spared, mornings.cases);
  json["misty_mornings_now_per_year"] = case_spread(mornings.now, mornings.cases);
  json["misty_mornings_with_per_year"] = case_spread(mornings.with_sheet, mornings.cases);
  json["cases_run"] = mornings.cases;
  json["peoples_room"] = step.peoples_room;
  return json;
}

Json order(const AnsweredHouse& house, const HouseOrder& order) {
  Json steps = Json::array();
  for (const auto& one : order.steps) steps.push_back(step(house, one, order.basis));
  Json json{{"by", name_of(order.basis)}, {"steps", steps}, {"left_out", order.left_out_because}};
  if (!order.basis_because.empty()) json["not_by_cost_because"] = order.basis_because;
  if (order.passes_limit_at) json["passes_ventilation_limit_at"] = *order.passes_limit_at;
  if (order.may_pass_limit_at) json["may_pass_ventilation_limit_at"] = *order.may_pass_limit_at;
  return json;
}

Json run(const AnsweredHouse& house) {
  const auto& options = house.options.assess;
  return {{"samples", options.samples},
          {"seed", options.seed},
          {"most_window_hours", options.most_window_hours},
          {"frost_night_h", finite(options.frost_night_hours)}};
}

}  // namespace

std::string json_house(const AnsweredHouse& house) {
  const auto& answer = house.answer;
  Json json{{"schema_version", json_schema_version}, {"tool", json_parts::tool()}, {"house", house.name}};
  json["windows"] = Json::array();
  for (const auto& window : answer.windows) json["windows"].push_back(window_summary(house, window));
  if (answer.totals) json["totals"] = totals(house);
  json["tied_when_ranges_overlap_by_share"] = tie_overlap_share;
  json["order_for_money"] = order(house, answer.for_money);
  json["order_for_damp"] = order(house, answer.for_damp);
  if (answer.ventilation_limit_m3_h) json["ventilation_limit_m3_h"] = finite(*answer.ventilation_limit_m3_h);
  json["warnings"] = answer.warnings;
  json["run"] = run(house);
  return json_parts::text_of(json);
}

}  // namespace dewgap::tools
