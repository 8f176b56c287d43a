#include "tools/verbs/advice_input.hpp"

#include <fmt/format.h>

#include <CLI/CLI.hpp>

#include "tools/progress.hpp"
#include "tools/verbs/usage.hpp"

namespace dewgap::tools {

void AdviceInput::set_up(CLI::App& verb) {
  const VentAdviceOptions rule;
  // The job is not marked as required here: a missing one would hide an option that is not known.
  verb.add_option("JOB", paths.job, "job file, or - for stdin; dewgap starter prints one")->type_name("FILE");
  verb.add_option("--window", paths.window, window_help)->type_name("NAME");
  verb.add_option("--weather", paths.weather, weather_help)->type_name("FILE");
  verb.add_option("--longest-repair", longest_repair, repair_help)->type_name("H");
  verb.add_option("--readings", paths.readings,
                  "what was seen on the first frosty mornings, CSV, or -; dewgap starter --readings prints "
                  "an empty one")
      ->type_name("FILE");
  verb.add_option("--fitted", fitted,
                  fmt::format("what hung there then: {}; as a rule sealed", vent_option_words()))
      ->type_name("OPTION");
  verb.add_option("--samples", samples,
                  "plausible cases to run, 8 to 1000000, whatever it takes; as a rule as many as settle it")
      ->type_name("N");
  verb.add_option("--window-hours", window_hours,
                  fmt::format("most hours of one window to work out, {} to {}; as a rule {}",
                              least_window_hours, most_window_hours, rule.most_window_hours))
      ->type_name("N");
  verb.add_option("--seed", seed,
                  fmt::format("of the plausible cases, a whole number; as a rule {}", rule.seed))
      ->type_name("N");
  verb.add_option("--output", paths.output, "file for the answer; as a rule - for stdout")->type_name("FILE");
}

VentAdviceOptions AdviceInput::options(std::string_view verb) const {
  VentAdviceOptions options;
  options.samples = whole_number({verb, "--samples", 8, 1'000'000}, samples, options.samples);
  options.most_window_hours = whole_number({verb, "--window-hours", least_window_hours, most_window_hours},
                                           window_hours, options.most_window_hours);
  options.seed = whole_number({verb, "--seed", 0, UINT64_MAX}, seed, options.seed);
  if (!fitted.empty()) options.fitted = vent_option(verb, "--fitted", fitted);
  return options;
}

AdviceQuestion read_question(std::string_view verb, const AdviceInput& input, Streams streams) {
  check_paths(verb, input.paths);
  AdviceQuestion question;
  question.job.options = input.options(verb);
  question.job.job = read_job_files(input.paths, streams);
  if (auto file = read_weather_file(verb, input.paths, input.longest_repair, question.job.job.survey.place,
                                    streams)) {
    question.job.job.weather = used(*file);
    question.weather = std::move(file->year);
  }
  question.readings = read_readings_file(input.paths, streams);
  if (auto hold = held(question.job.job.survey, input.paths.job))
    question.job.job.assessment = std::move(*hold);
  else if (!input.fitted.empty() && input.paths.readings.empty())
    bad_usage(verb, "--fitted says what hung there when readings were taken: give --readings too");
  return question;
}

VentAdvice decide(const Advise& advise, const AdviceQuestion& question,
                  const std::vector<WinterReading>& readings, Streams streams) {
  ProgressLine line(streams, "window-hours");
  return advise(question.job.job.survey, question.weather, readings, question.job.options,
                [&](std::size_t done, std::size_t most) { line.show(done, most); });
}

std::optional<GapYearSummary> middle_of(const AdviceQuestion& question, const VentAdvice& advice,
                                        const std::vector<WinterReading>& readings) {
  if (advice.options.empty()) return std::nullopt;
  const auto& options = question.job.options;
  return gap_year(question.job.job.survey, advice.choice, question.weather,
                  {.prior_samples = options.prior_samples,
                   .seed = options.seed,
                   .plausible_case = std::nullopt,
                   .readings = readings,
                   .fitted = options.fitted},
                  [](const GapHourRow&) {});
}

}  // namespace dewgap::tools
