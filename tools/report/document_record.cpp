// The run record: from it the same figures can be made again.
#include "dewgap/version.hpp"
#include "tools/answer/json_schema.hpp"
#include "tools/report/document_parts_kernel.hpp"
#include "tools/report/job_text.hpp"

namespace dewgap::tools::report_parts {
namespace {

Json options_of(const AssessOptions& options) {
  return {{"samples", options.samples},
          {"seed", options.seed},
          {"most_window_hours", options.most_window_hours},
          {"frost_night_h", json_parts::finite(options.frost_night_hours)}};
}

std::string command_of(const AnsweredJob& job) {
  std::string command = "dewgap report job.toml";
  if (!job.money_given.empty()) command += " --money money.toml";
  if (job.weather) command += " --weather weather.csv";
  return command + " --samples " + std::to_string(job.options.samples) + " --seed " +
         std::to_string(job.options.seed) + " --window-hours " +
         std::to_string(job.options.most_window_hours);
}

void add_files(Json& record, const AnsweredJob& job) {
  record["job_file"] = job_text(job.survey_given);
  if (!job.money_given.empty()) record["money_file"] = job_text(job.money_given);
  record["weather_file"] = job.weather ? "the file whose figures stand in the answer" : "none";
  record["survey"] = json_parts::given(job.survey_given);
  if (!job.money_given.empty()) record["money"] = json_parts::given(job.money_given);
}

}  // namespace

Json run_record(const AnsweredJob& job) {
  Json record{{"tool", json_parts::tool()},
              {"schema_version", json_schema_version},
              {"command", command_of(job)},
              {"options", options_of(job.options)}};
  add_files(record, job);
  return record;
}

Json house_run_record(const AnsweredHouse& house) {
  return {{"tool", json_parts::tool()},
          {"schema_version", json_schema_version},
          {"windows", house.windows.size()},
          {"options", options_of(house.options.assess)},
          {"seed_of_totals", house.answer.seed}};
}

}  // namespace dewgap::tools::report_parts
