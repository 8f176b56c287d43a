// The run record: from it the same figures can be made again.
#include <algorithm>
#include <array>

#include "dewgap/version.hpp"
#include "tools/answer/json_schema.hpp"
#include "tools/report/document_parts_kernel.hpp"
#include "tools/report/house_text.hpp"
#include "tools/report/job_text.hpp"
#include "tools/weather/checksum.hpp"

namespace dewgap::tools::report_parts {
namespace {

struct Method {
  std::string_view of;
  std::string_view by;
};
/// Correlations that every answer rests on, with their editions; full references stand in
/// reference/references.bib. Which of them were read and which recalled is told where each is used.
constexpr std::array methods{
    Method{"saturation pressure", "Murphy and Koop 2005"},
    Method{"declared U-value of the glass", "EN 673:2011"},
    Method{"corrected emissivity", "EN 12898:2001, revised 2019"},
    Method{"convection in the gap", "Wright 1996, ElSherbiny et al. 1982 and EN 673:2011, sampled"},
    Method{"properties of air, convection at the room's face", "ISO 15099:2003"},
    Method{"U-value of the whole window", "ISO 10077-1:2006"},
    Method{"degree-days", "Schoenau and Kehrig 1990"},
    Method{"criteria at the room's face", "ISO 13788:2012"},
    Method{"film that a pane holds", "BS 5250:2002"},
    Method{"moisture of wood", "Wood Handbook, Hailwood-Horrobin equation"},
    Method{"comfort beside the window", "ISO 7730:2005, Heiselberg 1994"}};

Json methods_of_all() {
  Json list = Json::array();
  for (const auto& method : methods) list.push_back({{"of", method.of}, {"by", method.by}});
  return list;
}

Json options_of(const AssessOptions& options, const std::optional<UsedWeather>& weather) {
  Json json{{"samples", options.samples},
            {"seed", options.seed},
            {"most_window_hours", options.most_window_hours},
            {"frost_night_h", json_parts::finite(options.frost_night_hours)}};
  if (weather) json["longest_repair_h"] = weather->identity.longest_repair_h;
  return json;
}

std::string command_of(std::string_view job_file, const AnsweredJob& job, const AssessOptions& options) {
  std::string command = "dewgap report " + std::string(job_file);
  if (!job.money_given.empty()) command += " --money money.toml";
  if (job.weather)
    command +=
        " --weather weather.csv --longest-repair " + std::to_string(job.weather->identity.longest_repair_h);
  return command + " --samples " + std::to_string(options.samples) + " --seed " +
         std::to_string(options.seed) + " --window-hours " + std::to_string(options.most_window_hours);
}

/// The file itself is too long to stand here: its name, length and checksum, and what it is like.
Json weather_of(const UsedWeather& weather) {
  Json json{{"name", weather.identity.name},
            {"rows", weather.identity.rows},
            {"fnv1a_64", checksum_text(weather.identity.checksum)}};
  json.update(json_parts::weather_file(weather));
  return json;
}

/// What the answers took for each input, from which source: a line each, in the order of first use.
Json sources_of(const std::vector<AnsweredJob>& windows) {
  Json list = Json::array();
  for (const auto& job : windows) {
    if (!job.assessment.figures) continue;
    for (const auto& input : job.assessment.figures->inputs)
      if (!input.source.empty() && std::find(list.begin(), list.end(), Json(input.source)) == list.end())
        list.push_back(input.source);
  }
  return list;
}

/// The money file of all windows: what holds for all, and each window's own costs.
std::string money_text(const std::vector<AnsweredJob>& windows) {
  std::vector<GivenValue> all;
  for (const auto& value : windows.front().money_given)
    if (!value.reading) all.push_back(value);
  for (const auto& job : windows)
    for (const auto& value : job.money_given)
      if (value.reading) all.push_back(value);
  return job_text(all);
}

struct RecordedFiles {
  std::string_view name;  ///< of the job file in the command
  std::string text;
};

Json record_of(const std::vector<AnsweredJob>& windows, const AssessOptions& options,
               const RecordedFiles& files) {
  const auto& job = windows.front();
  Json record{{"tool", json_parts::tool()},
              {"schema_version", json_schema_version},
              {"command", command_of(files.name, job, options)},
              {"options", options_of(options, job.weather)},
              {"job_file_name", files.name},
              {"job_file", files.text}};
  if (!job.money_given.empty()) record["money_file"] = money_text(windows);
  if (job.weather) record["weather_file"] = weather_of(*job.weather);
  record["methods"] = methods_of_all();
  record["sources"] = sources_of(windows);
  return record;
}

}  // namespace

Json run_record(const AnsweredJob& job) {
  auto record = record_of({job}, job.options, {"job.toml", job_text(job.survey_given)});
  record["survey"] = json_parts::given(job.survey_given);
  if (!job.money_given.empty()) record["money"] = json_parts::given(job.money_given);
  return record;
}

Json house_run_record(const AnsweredHouse& house) {
  std::vector<std::vector<GivenValue>> given;
  for (const auto& window : house.windows) given.push_back(window.survey_given);
  auto record = record_of(house.windows, house.options.assess, {"house.toml", house_text(given, house.name)});
  record["windows"] = house.windows.size();
  record["seed_of_totals"] = house.answer.seed;
  return record;
}

}  // namespace dewgap::tools::report_parts
