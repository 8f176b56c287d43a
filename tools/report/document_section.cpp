// The cut through the window, comfort before it and the rivals, as JSON.
#include "tools/answer/words.hpp"
#include "tools/job/units.hpp"
#include "tools/report/document_parts_kernel.hpp"

namespace dewgap::tools::report_parts {
namespace {

using json_parts::finite;
using json_parts::spread;

std::string_view word_of(SectionMist mist) {
  switch (mist) {
    case SectionMist::none:
      return "none";
    case SectionMist::edges:
      return "edges";
    case SectionMist::all_over:
      return "all_over";
  }
  return "none";
}

Json layers(const SectionState& state) {
  Json list = Json::array();
  for (const auto& layer : state.layers)
    list.push_back({{"part", name_of(layer.part)},
                    {"name", layer.name},
                    {"material", layer.material},
                    {"thickness_mm", finite(millimetres.from_base(layer.thickness_m))},
                    {"outer_face_C", finite(layer.outer_face_C)},
                    {"inner_face_C", finite(layer.inner_face_C)}});
  return list;
}

Json state_of(const SectionState& state) {
  Json json{{"sentence", mist_sentence(state)},
            {"outdoor_C", finite(state.outdoor_C)},
            {"outdoor_dew_point_C", finite(state.outdoor_dew_point_C)},
            {"room_C", finite(state.room_C)},
            {"room_dew_point_C", finite(state.room_dew_point_C)},
            {"room_humidity_pct", finite(per_cent.from_base(state.room_humidity))},
            {"layers", layers(state)}};
  if (state.gap_air_C) json["gap_air_C"] = finite(*state.gap_air_C);
  if (state.gap_dew_point_C) json["gap_dew_point_C"] = finite(*state.gap_dew_point_C);
  if (state.gap_potential_dew_point_C)
    json["gap_potential_dew_point_C"] = finite(*state.gap_potential_dew_point_C);
  json["centre_face_C"] = finite(state.centre_face_C);
  json["edge_face_C"] = finite(state.edge_face_C);
  json["decisive_dew_point_C"] = finite(state.decisive_dew_point_C);
  json["margin_K"] = finite(state.margin_K);
  json["mist"] = word_of(state.mist);
  json["is_frost"] = state.is_frost;
  json["room_face_C"] = finite(state.room_face_C);
  json["room_face_humidity_pct"] = finite(per_cent.from_base(state.room_face_humidity));
  return json;
}

Json side_of(const ComfortSide& side) {
  return {{"operative_C", spread(side.operative_C)},
          {"mean_radiant_C", spread(side.mean_radiant_C)},
          {"radiant_asymmetry_K", spread(side.radiant_asymmetry_K)},
          {"cool_wall_dissatisfied_pct", spread(side.cool_wall_dissatisfied_per_cent)},
          {"window_radiant_C", spread(side.window_radiant_C)},
          {"downdraught_m_s", spread(side.downdraught_m_s)},
          {"downdraught_C", spread(side.downdraught_C)},
          {"draught_rating_pct", spread(side.draught_rating_per_cent)},
          {"mean_vote", spread(side.mean_vote)},
          {"mean_vote_dissatisfied_pct", spread(side.mean_vote_dissatisfied_per_cent)}};
}

void add_against(Json& json, const AgainstSheet& against) {
  json["against_sheet"] = {{"sheet_saves_more_kWh_per_year", spread(against.sheet_saves_more_kWh)},
                           {"share_sheet_saves_more", json_parts::share(against.sheet_saves_more_share)},
                           {"share_sheet_warmer", json_parts::share(against.sheet_warmer_share)},
                           {"share_sheet_drier", json_parts::share(against.sheet_drier_share)}};
}

void add_money(Json& json, const Rival& rival) {
  json["saved_currency_per_year"] = spread(rival.money->saved_per_year);
  if (!rival.cost) return;
  json["cost_currency"] = finite(*rival.cost);
  json["share_that_never_pays_back"] = json_parts::share(rival.money->never_pays_back_share);
  if (rival.money->payback_years) json["payback_years"] = spread(*rival.money->payback_years);
  if (rival.cost_per_yearly_kWh)
    json["cost_per_kWh_saved_a_year_currency"] = spread(*rival.cost_per_yearly_kWh);
}

Json rival_of(const Rival& rival, std::size_t year_cases) {
  Json json{{"kind", name_of(rival.kind)},
            {"name", rival.name},
            {"sentence", rival.sentence},
            {"condition", rival.condition},
            {"heat_saved_kWh_per_year", spread(rival.heat_saved_kWh)},
            {"frost_night_room_face_C", spread(rival.frost_room_face_C)},
            {"frost_night_pane_C", spread(rival.frost_pane_C)},
            {"draught_m3_h", spread(rival.draught_m3_h)},
            {"coldest_month_margin_K", spread(rival.month_margin_K)},
            {"frost_night_margin_K", spread(rival.frost_margin_K)},
            {"share_dry_in_coldest_month", json_parts::share(rival.dry_month_share)},
            {"share_dry_on_frost_night", json_parts::share(rival.dry_frost_share)},
            {"damp", rival.damp}};
  if (rival.money) add_money(json, rival);
  if (rival.misty_mornings)
    json["misty_mornings"] = json_parts::case_spread(*rival.misty_mornings, year_cases);
  if (rival.acceptable_share) json["share_acceptable"] = json_parts::share(*rival.acceptable_share);
  if (rival.against_sheet) add_against(json, *rival.against_sheet);
  return json;
}

}  // namespace

Json section(const SectionProfile& profile) {
  return {{"option", json_word(profile.option)},
          {"glass_height_mm", finite(millimetres.from_base(profile.glass_height_m))},
          {"gap_width_mm", finite(millimetres.from_base(profile.gap_width_m))},
          {"tape_thickness_mm", finite(millimetres.from_base(profile.tape_thickness_m))},
          {"frost_night",
           {{"now", state_of(profile.frost_without)}, {"with_sheet", state_of(profile.frost_with)}}},
          {"coldest_month",
           {{"now", state_of(profile.month_without)}, {"with_sheet", state_of(profile.month_with)}}},
          {"flags", json_parts::flags(profile.flags)}};
}

Json comfort(const ComfortAtWindow& comfort) {
  return {{"now", side_of(comfort.before)},
          {"with_sheet", side_of(comfort.after)},
          {"operative_gain_K", spread(comfort.operative_gain_K)},
          {"asymmetry_cut_K", spread(comfort.asymmetry_cut_K)},
          {"downdraught_cut_m_s", spread(comfort.downdraught_cut_m_s)},
          {"room_C", spread(comfort.room_C)},
          {"outdoor_C", spread(comfort.outdoor_C)},
          {"view_factor", finite(comfort.view_factor)},
          {"distance_m", finite(comfort.distance_m)},
          {"abdomen_height_m", finite(comfort.abdomen_height_m)},
          {"sill_height_m", finite(comfort.sill_height_m)},
          {"clothing_clo", finite(comfort.clothing_clo)},
          {"metabolic_met", finite(comfort.metabolic_met)},
          {"conditions", comfort.conditions},
          {"flags", json_parts::flags(comfort.flags)},
          {"samples", comfort.samples},
          {"samples_left_out", comfort.samples_left_out},
          {"seed", comfort.seed}};
}

Json rivals(const std::vector<Rival>& rivals, std::size_t year_cases) {
  Json list = Json::array();
  for (const auto& rival : rivals) list.push_back(rival_of(rival, year_cases));
  return list;
}

}  // namespace dewgap::tools::report_parts
