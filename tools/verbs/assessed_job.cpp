#include "tools/verbs/assessed_job.hpp"

#include <fmt/format.h>

#include <CLI/CLI.hpp>

#include "tools/progress.hpp"
#include "tools/verbs/usage.hpp"

namespace dewgap::tools {
namespace {

constexpr std::uint64_t least_samples = 16;
constexpr std::uint64_t most_samples = 1'000'000;

/// The weather file, if one is given, and the options, to every window.
void add_weather(std::string_view verb, const AssessInput& input, AnsweredHouse& house, Streams streams) {
  for (auto& job : house.windows) job.options = house.options.assess;
  auto file =
      read_weather_file(verb, input.paths, input.longest_repair, house.windows.front().survey.place, streams);
  if (!file) return;
  for (auto& job : house.windows) job.weather = used(*file);
  house.options.weather = std::move(file->year);
}

/// All windows of a house, with what it says of them together.
void assess_windows(AnsweredHouse& house, const HouseFacts& facts, const Progress& progress) {
  house.name = facts.name;
  house.options.ventilation_limit_m3_h = facts.ventilation_limit_m3_h;
  std::vector<Survey> surveys;
  for (const auto& job : house.windows) surveys.push_back(job.survey);
  house.answer = assess_house(surveys, house.options, progress);
  for (const auto& window : house.answer.windows)
    house.windows.at(window.number - 1).assessment = window.assessment;
}

HouseFiles only(AnsweredJob window) {
  return {{}, false, {std::move(window)}};
}

/// The files' windows, assessed.
AssessedJob assessed(std::string_view verb, const AssessInput& input, HouseFiles files, const Assess& assess,
                     Streams streams) {
  AssessedJob job;
  auto& house = job.house;
  job.has_windows = files.has_windows;
  house.options.assess = input.options(verb);
  house.windows = std::move(files.windows);
  add_weather(verb, input, house, streams);
  ProgressLine line(streams, "window-hours");
  const Progress show = [&](std::size_t done, std::size_t most) { line.show(done, most); };
  with_input_of(input.paths.job, [&] {
    if (job.has_windows)
      assess_windows(house, files.house, show);
    else
      house.windows.front().assessment =
          assess(house.windows.front().survey, house.options.assess, house.options.weather, show);
  });
  return job;
}

}  // namespace

const char* const assessed_job_footer =
    R"(Files: job and money file are TOML in UTF-8, 1 MB at most. dewgap starter [--money] prints one to
  fill in, and with --table every key.
Exit codes: 0 answered, HOLD included; 1 could not be computed; 2 bad input or usage; 3 a file cannot
  be read or written. Anything but 0: no answer at all, and the reason on stderr.
The same files, samples and seed give the same answer.)";

void AssessInput::set_up(CLI::App& verb) {
  // The job is not marked as required here: a missing one would hide an option that is not known.
  verb.add_option("JOB", paths.job, "job file, or - for stdin; dewgap starter prints one")->type_name("FILE");
  verb.add_option("--money", paths.money,
                  "money file, or -: your own prices; without it the answer stops at kWh")
      ->type_name("FILE");
  verb.add_option("--window", paths.window, window_help)->type_name("NAME");
  verb.add_option("--weather", paths.weather, weather_help)->type_name("FILE");
  verb.add_option("--longest-repair", longest_repair, repair_help)->type_name("H");
  verb.add_option("--samples", samples,
                  fmt::format("plausible cases to compute for savings, {} to {}; as a rule {}", least_samples,
                              most_samples, AssessOptions{}.samples))
      ->type_name("N");
  verb.add_option(
          "--window-hours", window_hours,
          fmt::format("most hours of one window to work out for the year, {} to {}, or 0 for no year at "
                      "all; as a rule {}",
                      least_window_hours, most_window_hours, AssessOptions{}.most_window_hours))
      ->type_name("N");
  verb.add_option("--seed", seed,
                  fmt::format("of the samples, a whole number; as a rule {}", AssessOptions{}.seed))
      ->type_name("N");
  verb.add_option("--output", paths.output, "file for the answer; as a rule - for stdout")->type_name("FILE");
}

AssessOptions AssessInput::options(std::string_view verb) const {
  AssessOptions options;
  options.samples = whole_number({verb, "--samples", least_samples, most_samples}, samples, options.samples);
  options.seed = whole_number({verb, "--seed", 0, UINT64_MAX}, seed, options.seed);
  if (window_hours == "0")
    options.most_window_hours = 0;
  else
    options.most_window_hours =
        whole_number({verb, "--window-hours", least_window_hours, most_window_hours, "or 0"}, window_hours,
                     options.most_window_hours);
  return options;
}

AssessedJob read_and_assess(std::string_view verb, const AssessInput& input, const Assess& assess,
                            Streams streams) {
  check_paths(verb, input.paths);
  input.options(verb);  // bad usage comes before bad input
  auto files = read_house_files(input.paths, streams);
  if (!input.paths.window.empty())
    files = only(one_window(std::move(files), input.paths.window, input.paths.job));
  return assessed(verb, input, std::move(files), assess, streams);
}

AnsweredJob read_and_assess_one(std::string_view verb, const AssessInput& input, const Assess& assess,
                                Streams streams) {
  check_paths(verb, input.paths);
  input.options(verb);
  auto files = only(read_job_files(input.paths, streams));
  return assessed(verb, input, std::move(files), assess, streams).house.windows.front();
}

}  // namespace dewgap::tools
