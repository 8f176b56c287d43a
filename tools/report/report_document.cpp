#include "tools/report/report_document.hpp"

#include "dewgap/assessment/proposed_plan.hpp"
#include "tools/answer/json_answer.hpp"
#include "tools/answer/json_house.hpp"
#include "tools/answer/json_schema.hpp"
#include "tools/report/document_parts_kernel.hpp"

namespace dewgap::tools {
namespace {

using report_parts::Json;

/// A sheet is known by then; nothing but consent stands between it and the work.
bool only_consent_is_pending(const AnsweredJob& job) {
  const auto& open = job.assessment.open_gates;
  return open.size() == 1 && open.front().kind == GateKind::protection &&
         job.survey.settle_first.protection == Protection::consent_pending;
}

void add_proposed_holes(Json& window, const AnsweredJob& job) {
  const auto plan = proposed_plan(job.survey);
  if (!plan) return;
  window["proposed_holes"] = report_parts::holes(*plan);
  window["proposed_holes"]["not_for_work"] = true;
}

void add_figures(Json& window, const AnsweredJob& job, const std::optional<HourlyYear>& weather) {
  const auto& figures = *job.assessment.figures;
  const auto& survey = job.survey;
  window["section"] = report_parts::section(section_profile(survey, figures.vent));
  window["comfort"] =
      report_parts::comfort(comfort_at_window(survey, {.option = figures.vent, .seed = job.options.seed}));
  window["rivals"] = report_parts::rivals(rivals(survey, job.options, job.assessment, job.rival_costs),
                                          figures.year ? figures.year->cases_run : 0);
  window["year"] = report_parts::year(job, weather);
  const FrameMoistureOptions timber{.option = figures.vent, .seed = job.options.seed};
  if (const auto moisture = frame_moisture(survey, timber, weather))
    window["frame_moisture"] = report_parts::frame_moisture(*moisture);
  if (may_be_cut(job.assessment)) window["setting_out"] = report_parts::holes(*figures.plan);
}

Json window_part(const AnsweredJob& job, const std::optional<HourlyYear>& weather) {
  Json window{{"answer", Json::parse(json_answer(job))}};
  const bool is_held = job.assessment.headline == Headline::hold || !job.assessment.figures;
  if (!is_held)
    add_figures(window, job, weather);
  else if (only_consent_is_pending(job))
    add_proposed_holes(window, job);
  return window;
}

}  // namespace

nlohmann::ordered_json report_document(const AssessedJob& job) {
  Json document{{"schema_version", json_schema_version}};
  const auto& house = job.house;
  const auto& weather = house.options.weather;
  if (!job.has_windows) {
    document.update(window_part(house.window(1), weather));
    document["run_record"] = report_parts::run_record(house.window(1));
    return document;
  }
  document["answer"] = Json::parse(json_house(house));
  document["windows"] = Json::array();
  for (const auto& window : house.windows) document["windows"].push_back(window_part(window, weather));
  document["run_record"] = report_parts::house_run_record(house);
  return document;
}

std::string json_report(const AssessedJob& job) {
  return json_parts::text_of(report_document(job));
}

}  // namespace dewgap::tools
