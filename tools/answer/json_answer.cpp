#include "tools/answer/json_answer.hpp"

#include "dewgap/version.hpp"
#include "embedded/dewgap_cli.hpp"
#include "tools/answer/json_parts_kernel.hpp"
#include "tools/answer/words.hpp"

namespace dewgap::tools {
namespace {

using json_parts::Json;

Json gates_of(const AnsweredJob& job) {
  Json open = Json::array();
  for (const auto& gate : job.assessment.open_gates)
    open.push_back({{"gate", json_word(gate.kind)},
                    {"answered", gate.answered},
                    {"question", gate.question},
                    {"why", gate.why}});
  return {{"answered_by", job.survey.settle_first.answered_by}, {"open", open}};
}

Json cautions_of(const Assessment& assessment) {
  Json list = Json::array();
  for (const auto& caution : assessment.cautions)
    list.push_back({{"topic", caution.topic},
                    {"brief", caution.brief},
                    {"say", caution.say},
                    {"source", caution.source}});
  return list;
}

Json heading(const AnsweredJob& job) {
  return {{"schema_version", json_schema_version},
          {"tool", {{"name", "dewgap"}, {"version", version}}},
          {"job", {{"name", job.survey.name}, {"note", job.survey.note}}},
          {"headline", json_word(job.assessment.headline)},
          {"because", job.assessment.because},
          {"settle_first", gates_of(job)},
          {"cautions", cautions_of(job.assessment)},
          {"survey", json_parts::given(job.survey_given)},
          {"run",
           {{"samples", job.options.samples},
            {"seed", job.options.seed},
            {"frost_night_h", json_parts::finite(job.options.frost_night_hours)}}}};
}

void add_figures(Json& answer, const AnsweredJob& job) {
  const auto& figures = *job.assessment.figures;
  answer["run"]["samples_run"] = figures.samples;
  answer["run"]["samples_left_out"] = figures.samples_left_out;
  answer["run"]["effective_samples"] = json_parts::finite(figures.effective_samples);
  answer["after"] = job.assessment.after;
  answer["place"] = figures.place_line;
  answer["coldest_month_outdoor_C"] = json_parts::finite(figures.coldest_month_C);
  answer["frost_night_outdoor_C"] = json_parts::finite(figures.frost_night_C);
  answer["vent"] = json_parts::vent(figures);
  answer["now_and_with_sheet"] = json_parts::now_and_with_sheet(figures.now_and_with);
  if (figures.money) answer["money"] = json_parts::money(job);
  if (figures.plan) answer["cut_and_fix"] = json_parts::cut_and_fix(*figures.plan);
  answer["look_first"] = figures.settle_first;
  answer["remedies"] = figures.remedies;
  answer["guessed"] = figures.guessed;
  answer["influences"] = json_parts::influences(figures);
  answer["evidence"] = json_parts::evidence(figures);
  answer["inputs"] = json_parts::inputs(figures);
  answer["width_checks"] = json_parts::width_checks(figures);
  answer["flags"] = json_parts::flags(figures.flags);
}

}  // namespace

std::string json_answer(const AnsweredJob& job) {
  Json answer = heading(job);
  if (job.assessment.headline != Headline::hold && job.assessment.figures) add_figures(answer, job);
  return answer.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string_view json_schema() {
  return embedded::assess_schema;
}

}  // namespace dewgap::tools
