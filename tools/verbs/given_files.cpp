#include "tools/verbs/given_files.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <ostream>

#include "tools/answer/plain_text.hpp"
#include "tools/failure.hpp"
#include "tools/files.hpp"
#include "tools/job/house_reader.hpp"
#include "tools/job/reader.hpp"
#include "tools/readings/readings_file.hpp"
#include "tools/verbs/usage.hpp"
#include "tools/weather/place_check.hpp"

namespace dewgap::tools {
namespace {

template <class Read>
Read accepted(Read read, const std::string& path) {
  if (!read.problems.empty())
    throw Failure(ExitCode::bad_input, problem_lines(file_title(path), read.problems));
  return read;
}

[[noreturn]] void refuse_window(const std::vector<AnsweredJob>& windows, const std::string& wanted,
                                const std::string& job_path) {
  auto text = wanted.empty() ? fmt::format(
                                   "dewgap: which window? {} holds {}; give --window with a name or "
                                   "number:\n",
                                   harmless(file_title(job_path)), windows.size())
                             : fmt::format("dewgap: --window {}: {} has no such window, but:\n",
                                           one_line(wanted, 80), harmless(file_title(job_path)));
  for (std::size_t i = 0; i < windows.size(); ++i)
    text += fmt::format("  {:2} {}\n", i + 1, one_line(windows[i].survey.name, 80));
  throw Failure(ExitCode::bad_input, text);
}

/// What the file says of all windows but for what it says of this one.
void put_money(AnsweredJob& job, const ReadFile& money) {
  const auto& answers = money.answers;
  job.survey.money = answers.money;
  job.currency = answers.currency;
  job.rival_costs = answers.rival_costs;
  std::optional<int> reading;
  for (std::size_t i = 0; i < answers.window_costs.size(); ++i) {
    const auto& own = answers.window_costs[i];
    if (own.name != job.survey.name) continue;
    reading = static_cast<int>(i) + 1;
    if (own.sheet) job.survey.money->cost = own.sheet;
    for (const auto cost :
         {&RivalCosts::repair_and_strip, &RivalCosts::lined_curtains, &RivalCosts::shutters})
      if (own.rivals.*cost) job.rival_costs.*cost = own.rivals.*cost;
  }
  for (const auto& value : money.given)
    if (!value.reading || value.reading == reading) job.money_given.push_back(value);
}

void check_place(WeatherFile& file, const std::string& title, const PlaceSurvey& place) {
  if (const auto other = other_hemisphere(file.figures, place))
    throw Failure(ExitCode::bad_input, problem_lines(title, {{file.latitude_mark, *other}}));
  const auto doubts = doubts_at_place(file.figures, place);
  file.warnings.insert(file.warnings.end(), doubts.begin(), doubts.end());
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

HouseFiles read_house_files(const GivenPaths& paths, Streams streams) {
  auto read = accepted(read_house(read_whole(paths.job, streams)), paths.job);
  HouseFiles files{std::move(read.house), read.has_windows, {}};
  for (auto& window : read.windows) {
    AnsweredJob job;
    job.survey = std::move(window.answers.survey);
    job.survey_given = std::move(window.given);
    files.windows.push_back(std::move(job));
  }
  if (paths.money.empty()) return files;
  std::vector<std::string> names;
  for (const auto& job : files.windows) names.push_back(job.survey.name);
  const auto money = accepted(read_money(read_whole(paths.money, streams), names), paths.money);
  for (auto& job : files.windows) put_money(job, money);
  return files;
}

AnsweredJob one_window(HouseFiles files, const std::string& wanted, const std::string& job_path) {
  auto& windows = files.windows;
  if (wanted.empty() && windows.size() == 1) return std::move(windows.front());
  for (auto& window : windows)
    if (window.survey.name == wanted) return std::move(window);
  for (std::size_t i = 0; i < windows.size(); ++i)
    if (std::to_string(i + 1) == wanted) return std::move(windows[i]);
  refuse_window(windows, wanted, job_path);
}

AnsweredJob read_job_files(const GivenPaths& paths, Streams streams) {
  return one_window(read_house_files(paths, streams), paths.window, paths.job);
}

std::optional<WeatherFile> read_weather_file(std::string_view verb, const GivenPaths& paths,
                                             const std::string& longest_repair, const PlaceSurvey& place,
                                             Streams streams) {
  WeatherFileOptions options;
  options.longest_repair_h =
      static_cast<int>(whole_number({verb, "--longest-repair", 0, 24}, longest_repair,
                                    static_cast<std::uint64_t>(options.longest_repair_h)));
  if (paths.weather.empty()) {
    if (!longest_repair.empty()) bad_usage(verb, "--longest-repair speaks of a file: give --weather too");
    return std::nullopt;
  }
  const auto title = file_title(paths.weather);
  auto file = read_weather(read_whole(paths.weather, streams, most_weather_bytes), title, options);
  check_place(file, title, place);
  for (const auto& warning : file.warnings)
    streams.err << fmt::format("{}: WARNING: {}\n", harmless(title), warning);
  return file;
}

std::vector<WinterReading> read_readings_file(const GivenPaths& paths, Streams streams) {
  if (paths.readings.empty()) return {};
  return read_readings(read_whole(paths.readings, streams), file_title(paths.readings));
}

UsedWeather used(const WeatherFile& file) {
  return {file.repaired_hours, file.longest_repaired_gap_h, file.notes,
          file.warnings,       file.ignored_columns,        file.figures,
          file.identity};
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
