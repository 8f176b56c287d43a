#include "tools/answer/json_answer.hpp"

#include "tools/answer/json_parts_kernel.hpp"
#include "tools/answer/json_schema.hpp"
#include "tools/answer/words.hpp"

namespace dewgap::tools {
namespace {

using json_parts::Json;

Json heading(const AnsweredJob& job) {
  return {{"schema_version", json_schema_version},
          {"tool", json_parts::tool()},
          {"job", json_parts::job(job.survey)},
          {"headline", json_word(job.assessment.headline)},
          {"because", job.assessment.because},
          {"settle_first", json_parts::gates(job)},
          {"cautions", json_parts::cautions(job.assessment)},
          {"survey", json_parts::given(job.survey_given)},
          {"run",
           {{"samples", job.options.samples},
            {"seed", job.options.seed},
            {"most_window_hours", job.options.most_window_hours},
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
  if (figures.year) answer["year"] = json_parts::advice(*figures.year);
  if (job.weather) answer["weather_file"] = json_parts::weather_file(*job.weather);
  answer["now_and_with_sheet"] = json_parts::now_and_with_sheet(figures.now_and_with);
  if (figures.edge) answer["edge"] = json_parts::edge(*figures.edge);
  if (figures.money) answer["money"] = json_parts::money(job);
  if (may_be_cut(job.assessment)) answer["cut_and_fix"] = json_parts::cut_and_fix(*figures.plan);
  if (!figures.cut.against.empty()) answer["do_not_cut_yet"] = json_parts::do_not_cut_yet(figures.cut);
  answer["sun_on_sheet"] = json_parts::sun_on_sheet(figures.cut.sun);
  answer["look_first"] = figures.settle_first;
  answer["remedies"] = figures.remedies;
  answer["guessed"] = figures.guessed;
  answer["influences"] = json_parts::influences(figures);
  answer["evidence"] = json_parts::evidence(figures.evidence);
  answer["inputs"] = json_parts::inputs(figures);
  answer["width_checks"] = json_parts::width_checks(figures);
  answer["flags"] = json_parts::flags(figures.flags);
}

}  // namespace

std::string json_answer(const AnsweredJob& job) {
  Json answer = heading(job);
  if (job.assessment.headline != Headline::hold && job.assessment.figures) add_figures(answer, job);
  return json_parts::text_of(answer);
}

}  // namespace dewgap::tools
