#include "tools/verbs/given_files.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "tools/answer/plain_text.hpp"
#include "tools/failure.hpp"
#include "tools/files.hpp"
#include "tools/job/reader.hpp"
#include "tools/readings/readings_file.hpp"
#include "tools/verbs/usage.hpp"

namespace dewgap::tools {
namespace {

ReadFile accepted(ReadFile read, const std::string& path) {
  if (!read.problems.empty())
    throw Failure(ExitCode::bad_input, problem_lines(file_title(path), read.problems));
  return read;
}

}  // namespace

void check_paths(std::string_view verb, const GivenPaths& paths) {
  if (paths.job.empty()) bad_usage(verb, "which job? Give its file, or - for stdin");
  const std::array read{&paths.job, &paths.money, &paths.weather, &paths.readings};
  if (std::count_if(read.begin(), read.end(), [](const auto* path) { return *path == "-"; }) > 1)
    bad_usage(verb, "only one of the files can be stdin");
  for (const auto* path : read)
    if (!path->empty() && same_file(paths.output, *path))
      bad_usage(verb, "--output would overwrite a file that is read");
}

AnsweredJob read_job_files(const GivenPaths& paths, Streams streams) {
  AnsweredJob job;
  auto read = accepted(read_job(read_whole(paths.job, streams)), paths.job);
  job.survey = std::move(read.answers.survey);
  job.survey_given = std::move(read.given);
  if (paths.money.empty()) return job;
  auto money = accepted(read_money(read_whole(paths.money, streams)), paths.money);
  job.survey.money = money.answers.money;
  job.currency = money.answers.currency;
  job.money_given = std::move(money.given);
  return job;
}

std::optional<WeatherFile> read_weather_file(std::string_view verb, const GivenPaths& paths,
                                             const std::string& longest_repair, Streams streams) {
  WeatherFileOptions options;
  options.longest_repair_h =
      static_cast<int>(whole_number({verb, "--longest-repair", 0, 24}, longest_repair,
                                    static_cast<std::uint64_t>(options.longest_repair_h)));
  if (paths.weather.empty()) {
    if (!longest_repair.empty()) bad_usage(verb, "--longest-repair speaks of a file: give --weather too");
    return std::nullopt;
  }
  return read_weather(read_whole(paths.weather, streams, most_weather_bytes), file_title(paths.weather),
                      options);
}

std::vector<WinterReading> read_readings_file(const GivenPaths& paths, Streams streams) {
  if (paths.readings.empty()) return {};
  return read_readings(read_whole(paths.readings, streams), file_title(paths.readings));
}

UsedWeather used(const WeatherFile& file) {
  return {file.repaired_hours, file.longest_repaired_gap_h, file.notes};
}

std::optional<Assessment> held(const Survey& survey, const std::string& job_path) {
  if (open_gates(survey.settle_first).empty()) return std::nullopt;
  return with_input_of(job_path, [&] { return assess(survey); });
}

void refuse(const std::string& path, const InvalidInput& error) {
  throw Failure(ExitCode::bad_input,
                fmt::format("{}:1:1: {}\n", harmless(file_title(path)), harmless(error.what())));
}

}  // namespace dewgap::tools
