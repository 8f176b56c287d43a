#include "tools/answer/json_year.hpp"

#include "tools/answer/json_parts_kernel.hpp"
#include "tools/answer/json_schema.hpp"
#include "tools/answer/words.hpp"
#include "tools/answer/year_units.hpp"

namespace dewgap::tools {
namespace {

using json_parts::finite;
using json_parts::Json;

Json heading(const ExaminedYear& year) {
  return {{"schema_version", json_schema_version},
          {"tool", json_parts::tool()},
          {"job", json_parts::job(year.job.survey)},
          {"verdict", year.summary ? "computed" : "hold"},
          {"settle_first", json_parts::gates(year.job)},
          {"cautions", json_parts::cautions(year.job.assessment)},
          {"survey", json_parts::given(year.job.survey_given)},
          {"run",
           {{"option", json_word(year.option)},
            {"case", year.options.plausible_case.value_or(0)},
            {"seed", year.options.seed}}}};
}

/// Of a plausible case; the middle one stands for no part of the weight.
void add_case(Json& run, const GapYearSummary& summary) {
  run["cases_that_differ"] = summary.case_count;
  run["cases_in_order"] = summary.cases_in_order;
  if (summary.case_weight > 0.0) run["share_of_weight"] = json_parts::share(summary.case_weight);
}

void add(Json& json, const char* key, std::optional<double> value, double factor = 1.0) {
  if (value) json[key] = finite(factor * *value);
}

void add_period(Json& json, const PeriodFigures& period) {
  json["hours_h"] = period.hours;
  json["sheet_hangs_h"] = period.sheet_hours;
  add(json, "outdoor_C", period.outdoor_C.value());
  add(json, "room_humidity_pct", period.room_relative_humidity.value(), per_cent.per_base);
  add(json, "gap_C", period.gap_C.value());
  add(json, "pane_face_C", period.pane_face_C.value());
  add(json, "gap_dew_point_C", period.gap_dew_point_C.value());
  json["hours_wet_h"] = finite(period.hours_wet);
  json["misty_mornings"] = period.misty_mornings;
  json["frost_h"] = period.frost_hours;
  json["peak_film_g_m2"] = finite(grams.from_base(period.peak_film_kg_m2));
  json["peak_pool_g_m2"] = finite(grams.from_base(period.peak_pool_kg_m2));
  json["run_off_g_m2"] = finite(grams.from_base(period.run_off_kg_m2));
  json["drained_g_m2"] = finite(grams.from_base(period.drained_kg_m2));
  if (period.sheet_hours > 0) json["timber_max_pct"] = nullptr;
  add(json, "timber_max_pct", period.peak_timber_kg_kg, per_cent.per_base);
  add(json, "air_from_room_l_h", period.from_room_m3_s.value(), litres_an_hour.per_base);
  add(json, "air_from_outdoors_l_h", period.from_outdoors_m3_s.value(), litres_an_hour.per_base);
  json["heat_through_window_kWh"] = finite(kilowatt_hours.from_base(period.heat_J));
}

Json months(const YearFigures& figures) {
  Json list = Json::array();
  for (const auto& month : figures.months_in_turn()) {
    Json one{{"month", month.month + 1}};
    add_period(one, month.figures);
    list.push_back(one);
  }
  return list;
}

}  // namespace

std::string json_year(const ExaminedYear& year) {
  Json document = heading(year);
  if (!year.summary) return json_parts::text_of(document);
  const auto& summary = *year.summary;
  add_case(document["run"], summary);
  document["samples_drawn"] = summary.prior_samples;
  document["effective_samples"] = finite(summary.effective_samples);
  document["unsettled_hours"] = summary.unsettled_hours;
  document["share_of_cold_hours_inwards"] = json_parts::share(summary.inwards_share);
  document["share_of_cold_hours_outwards"] = json_parts::share(summary.outwards_share);
  document["case_values"] = json_parts::case_values(summary);
  document["weather"] = json_parts::weather(summary.weather_source, summary.modelled);
  if (year.job.weather) document["weather_file"] = json_parts::weather_file(*year.job.weather);
  document["glass_m2"] = finite(summary.glass_m2);
  Json whole = Json::object();
  add_period(whole, year.figures.year);
  document["year"] = whole;
  document["months"] = months(year.figures);
  return json_parts::text_of(document);
}

}  // namespace dewgap::tools
