// The vent decision over a year of hours, as JSON.
#include "tools/answer/json_parts_kernel.hpp"
#include "tools/answer/words.hpp"
#include "tools/answer/year_units.hpp"
#include "tools/job/units.hpp"

namespace dewgap::tools::json_parts {

Json case_spread(const CaseSpread& spread, std::size_t cases, double factor) {
  Json json{{"p50", finite(factor * spread.p50)},
            {"least", finite(factor * spread.least)},
            {"greatest", finite(factor * spread.greatest)}};
  if (cases < least_cases_for_percentiles) return json;
  json["p10"] = finite(factor * spread.p10);
  json["p90"] = finite(factor * spread.p90);
  return json;
}

namespace {

Json option_figures(const OptionAdvice& option, std::size_t cases) {
  const auto spread = [cases](const CaseSpread& figure, double factor = 1.0) {
    return case_spread(figure, cases, factor);
  };
  Json json{
      {"share_acceptable", share(option.acceptable_share)},
      {"share_best", share(option.best_share)},
      {"share_by_band",
       {{"dry", share(option.band_share[0])},
        {"harmless_mist", share(option.band_share[1])},
        {"runs", share(option.band_share[2])},
        {"damages", share(option.band_share[3])}}},
      {"hours_wet_h", spread(option.hours_wet)},
      {"longest_wet_run_h", spread(option.longest_wet_run_h)},
      {"peak_film_g_m2", spread(option.peak_film_g_m2)},
      {"drained_g_m2", spread(option.drained_g_m2)},
      {"peak_pool_g_m2", spread(option.peak_pool_g_m2)},
      {"frost_h", spread(option.frost_hours)},
      {"misty_mornings", spread(option.misty_mornings)},
      {"timber_above_caution_h", spread(option.timber_hours_above_caution)},
      {"room_face_peak_month_humidity_pct", spread(option.room_face_peak_month_humidity, per_cent.per_base)},
      {"heat_kWh_per_year", spread(option.heat_kWh)},
      {"heat_against_sealed_kWh_per_year", spread(option.heat_against_sealed_kWh)}};
  if (option.drying_days) json["drying_days"] = case_spread(*option.drying_days, option.cases_dried);
  return json;
}

Json options(const VentAdvice& advice) {
  Json list = Json::array();
  for (const auto& option : advice.options) {
    Json one{{"option", json_word(option.option)}};
    one.update(option_figures(option, advice.cases_run));
    list.push_back(one);
  }
  return list;
}

Json deciders(const VentAdvice& advice) {
  Json list = Json::array();
  for (const auto& decider : advice.deciders)
    list.push_back({{"unknown", key_of(decider.unknown)},
                    {"label", decider.label},
                    {"settle_by", decider.settle_by},
                    {"guessed", decider.guessed},
                    {"share_of_wetness", share(decider.rank_measure)}});
  return list;
}

Json intervals(const std::vector<HumidityBand>& bands, double factor = 1.0) {
  Json list = Json::array();
  for (const auto& band : bands)
    list.push_back({{"low", finite(factor * band.low)}, {"high", finite(factor * band.high)}});
  return list;
}

Json reading(const Morning& morning) {
  const auto& given = morning.reading;
  Json one{{"date", given.date}, {"outdoor_C", finite(given.outdoor_C)}};
  if (given.room_C) one["room_C"] = finite(*given.room_C);
  if (given.room_relative_humidity)
    one["room_humidity_pct"] = finite(per_cent.from_base(*given.room_relative_humidity));
  one["mist"] = key_of(given.mist);
  one["used"] = morning.used;
  if (!morning.used) one["why_not"] = morning.why_not;
  if (morning.foretold_share) one["foretold_share"] = share(*morning.foretold_share);
  return one;
}

Json readings(const VentAdvice& advice) {
  Json list = Json::array();
  for (const auto& morning : advice.mornings) list.push_back(reading(morning));
  return list;
}

std::string_view word_of(AirWay way) {
  switch (way) {
    case AirWay::still:
      return "still";
    case AirWay::outwards:
      return "outwards";
    case AirWay::inwards:
      return "inwards";
    case AirWay::both_ways:
      return "both_ways";
    case AirWay::room_side:
      return "room_side";
  }
  return "still";
}

Json air(const VentAdvice& advice) {
  const auto litres_spread = [&](const CaseSpread& flow_m3_s) {
    return case_spread(flow_m3_s, advice.cases_run, litres_an_hour.per_base);
  };
  return {{"way", word_of(advice.air.way)},
          {"share_of_cases", share(advice.air.share)},
          {"reason", advice.air.reason},
          {"cold_air_from_room_l_h", litres_spread(advice.air.from_room_m3_s)},
          {"cold_air_from_outdoors_l_h", litres_spread(advice.air.from_outdoors_m3_s)}};
}

void add_choice(Json& json, const VentAdvice& advice) {
  Json tied = Json::array();
  for (const auto option : advice.tied) tied.push_back(json_word(option));
  json["choice"] = json_word(advice.choice);
  json["tied"] = tied;
  json["options"] = options(advice);
  json["as_it_is"] = option_figures(advice.as_it_is, advice.cases_run);
  json["air"] = air(advice);
  json["share_acceptable_with_200_mm_of_tape_lifted"] = share(advice.lifted_tape_acceptable_share);
  json["deciders"] = deciders(advice);
  json["moved_most"] = advice.moved_most;
  json["flip"] = advice.flip;
  json["next_look"] = advice.next_look;
  json["dry_room_humidity_pct"] = intervals(advice.dry_room_humidity, per_cent.per_base);
  json["dry_seal_leakage_m3_h_m"] = intervals(advice.dry_seal_leakage);
  json["dry_outdoor_leakage_m3_h_m"] = intervals(advice.dry_outdoor_leakage);
  json["room_humidity_rise_pct"] = finite(per_cent.from_base(advice.room_humidity_rise));
  json["remedies"] = advice.remedies;
  if (advice.realistic_remedy) json["realistic_remedy"] = advice.remedies.at(*advice.realistic_remedy);
}

}  // namespace

Json weather(const std::string& source, const ModelledColumns& modelled) {
  return {{"source", source}, {"modelled", modelled_words(modelled)}};
}

Json weather_file(const UsedWeather& used) {
  return {{"repaired_hours", used.repaired_hours},
          {"longest_repaired_gap_h", used.longest_repaired_gap_h},
          {"notes", used.notes},
          {"warnings", used.warnings},
          {"ignored_columns", used.ignored_columns},
          {"latitude_deg", finite(used.figures.latitude_deg)},
          {"longitude_deg", finite(used.figures.longitude_deg)},
          {"outdoor_C", finite(used.figures.mean_C)},
          {"coldest_month_C", finite(used.figures.coldest_month_C())},
          {"outdoor_humidity_pct", finite(per_cent.from_base(used.figures.relative_humidity))},
          {"wind_m_s", finite(used.figures.wind_m_s)},
          {"sun_kWh_m2", finite(used.figures.sun_kWh_m2)}};
}

Json case_values(const GapYearSummary& summary) {
  Json list = Json::array();
  for (const auto& value : summary.values)
    list.push_back({{"unknown", key_of(value.unknown)},
                    {"label", value.label},
                    {"value", finite(value.value)},
                    {"unit", value.unit}});
  return list;
}

Json advice(const VentAdvice& advice) {
  Json json{{"settled", advice.settled}};
  if (!advice.settled) json["not_settled_because"] = advice.not_settled_because;
  if (advice.least_window_hours) json["least_window_hours"] = *advice.least_window_hours;
  if (!advice.options.empty()) add_choice(json, advice);
  json["evidence"] = evidence(advice.evidence);
  json["readings"] = readings(advice);
  if (advice.mornings_foretold_share) json["least_foretold_share"] = share(*advice.mornings_foretold_share);
  json["weather"] = weather(advice.weather_source, advice.modelled);
  json["samples"] = advice.samples;
  json["cases_run"] = advice.cases_run;
  json["samples_left_out"] = advice.samples_left_out;
  json["effective_samples"] = finite(advice.effective_samples);
  json["samples_drawn"] = advice.prior_samples;
  json["window_hours"] = advice.window_hours;
  json["seed"] = advice.seed;
  return json;
}

}  // namespace dewgap::tools::json_parts
