#include "tools/answer/json_vent.hpp"

#include "tools/answer/json_parts_kernel.hpp"
#include "tools/answer/json_schema.hpp"
#include "tools/answer/words.hpp"
#include "tools/answer/year_units.hpp"

namespace dewgap::tools {
namespace {

using json_parts::Json;

std::string_view verdict_of(const AdvisedJob& job) {
  if (!job.advice) return "hold";
  return job.advice->settled ? "settled" : "not_settled";
}

Json heading(const AdvisedJob& job) {
  return {{"schema_version", json_schema_version},
          {"tool", json_parts::tool()},
          {"job", json_parts::job(job.job.survey)},
          {"verdict", verdict_of(job)},
          {"settle_first", json_parts::gates(job.job)},
          {"cautions", json_parts::cautions(job.job.assessment)},
          {"survey", json_parts::given(job.job.survey_given)},
          {"run",
           {{"samples", job.options.samples},
            {"prior_samples", job.options.prior_samples},
            {"most_window_hours", job.options.most_window_hours},
            {"fitted", json_word(job.options.fitted)},
            {"seed", job.options.seed}}}};
}

std::string_view word_of(MendKind kind) {
  switch (kind) {
    case MendKind::water:
      return "water";
    case MendKind::window:
      return "window";
    case MendKind::obstacle:
      return "obstacle";
    case MendKind::setting_out:
      return "setting_out";
  }
  return "window";
}

Json middle_case(const GapYearSummary& middle) {
  return {
      {"option", json_word(middle.option)},
      {"cold_air_from_room_l_h", json_parts::finite(litres_an_hour.from_base(middle.cold_from_room_m3_s))},
      {"cold_air_from_outdoors_l_h",
       json_parts::finite(litres_an_hour.from_base(middle.cold_from_outdoors_m3_s))},
      {"share_of_cold_hours_inwards", json_parts::share(middle.inwards_share)},
      {"share_of_cold_hours_outwards", json_parts::share(middle.outwards_share)},
      {"values", json_parts::case_values(middle)}};
}

Json frost_check(const FrostCheck& check, VentOption choice) {
  return {{"step", json_word(check.step)},
          {"frosty_mornings", check.found.mornings},
          {"misty_mornings", check.found.misty},
          {"against_the_model", check.found.against_model},
          {"do_now", std::string(step_words(check.step)) + ". " + step_sentence(check.step, choice)},
          {"fitted", json_word(check.fitted)},
          {"before", json_parts::advice(check.before)}};
}

Json mend_first(const std::vector<Mend>& mends) {
  Json list = Json::array();
  for (const auto& mend : mends) list.push_back({{"kind", word_of(mend.kind)}, {"say", mend.say}});
  return list;
}

}  // namespace

std::string json_vent(const AdvisedJob& job) {
  Json document = heading(job);
  if (!job.advice) return json_parts::text_of(document);
  document["mend_first"] = mend_first(job.mend_first);
  if (job.frost_check) document["frost_check"] = frost_check(*job.frost_check, job.advice->choice);
  document["advice"] = json_parts::advice(*job.advice);
  if (job.middle) document["middle_case"] = middle_case(*job.middle);
  if (job.job.weather) document["weather_file"] = json_parts::weather_file(*job.job.weather);
  return json_parts::text_of(document);
}

}  // namespace dewgap::tools
