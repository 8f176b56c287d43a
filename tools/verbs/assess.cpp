#include <fmt/format.h>

#include <CLI/CLI.hpp>

#include "tools/answer/json_answer.hpp"
#include "tools/answer/text_answer.hpp"
#include "tools/files.hpp"
#include "tools/progress.hpp"
#include "tools/verbs/usage.hpp"
#include "tools/verbs/verbs.hpp"

namespace dewgap::tools {
namespace {

constexpr const char* assess_footer =
    R"(Files: job and money file are TOML in UTF-8, 1 MB at most. dewgap starter [--money] prints one to
  fill in, and with --table every key. The answer is text of 62 columns, or with --json one document.
Units: every key of a file and of the JSON names its unit. In the text: mm for sizes, C for
  temperatures, m3/h for air, W/(m2 K) for U-values, kWh a year for heat, % for humidity and shares,
  your own currency for money. 4.9 (4.6 to 5.2) is the middle and the 10th to 90th percentile of the
  plausible cases.
Exit codes: 0 answered, HOLD included; 1 could not be computed; 2 bad input or usage; 3 a file cannot
  be read or written. Anything but 0: no answer at all, and the reason on stderr.
The same files, samples and seed give the same answer.)";

constexpr std::uint64_t least_samples = 16;
constexpr std::uint64_t most_samples = 1'000'000;

AssessOptions options_of(const AssessVerb& verb) {
  AssessOptions options;
  options.samples =
      whole_number({"assess", "--samples", least_samples, most_samples}, verb.samples, options.samples);
  options.seed = whole_number({"assess", "--seed", 0, UINT64_MAX}, verb.seed, options.seed);
  if (verb.window_hours == "0")
    options.most_window_hours = 0;
  else
    options.most_window_hours =
        whole_number({"assess", "--window-hours", least_window_hours, most_window_hours, "or 0"},
                     verb.window_hours, options.most_window_hours);
  return options;
}

AnsweredJob read_and_assess(const AssessVerb& verb, Streams streams) {
  const auto options = options_of(verb);
  AnsweredJob job = read_job_files(verb.paths, streams);
  job.options = options;
  std::optional<HourlyYear> weather;
  if (auto file = read_weather_file("assess", verb.paths, verb.longest_repair, streams)) {
    job.weather = used(*file);
    weather = std::move(file->year);
  }
  ProgressLine line(streams, "window-hours");
  job.assessment = with_input_of(verb.paths.job, [&] {
    return verb.compute(job.survey, job.options, weather,
                        [&](std::size_t done, std::size_t most) { line.show(done, most); });
  });
  return job;
}

}  // namespace

void AssessVerb::set_up(CLI::App& verb) {
  // The job is not marked as required here: a missing one would hide an option that is not known.
  verb.add_option("JOB", paths.job, "job file, or - for stdin; dewgap starter prints one")->type_name("FILE");
  verb.add_option("--money", paths.money,
                  "money file, or -: your own prices; without it the answer stops at kWh")
      ->type_name("FILE");
  verb.add_option("--weather", paths.weather, weather_help)->type_name("FILE");
  verb.add_option("--longest-repair", longest_repair, repair_help)->type_name("H");
  verb.add_flag("--json", json, "answer for programs; its form: dewgap schema");
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
  verb.footer(assess_footer);
}

void AssessVerb::run(Streams streams) const {
  check_paths("assess", paths);
  const AnsweredJob job = read_and_assess(*this, streams);
  write_whole(paths.output, json ? json_answer(job) : text_answer(job), streams);
}

}  // namespace dewgap::tools
