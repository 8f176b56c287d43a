#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <charconv>

#include "dewgap/errors.hpp"
#include "tools/answer/json_answer.hpp"
#include "tools/answer/plain_text.hpp"
#include "tools/answer/text_answer.hpp"
#include "tools/failure.hpp"
#include "tools/files.hpp"
#include "tools/job/reader.hpp"
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

[[noreturn]] void bad_usage(const std::string& what) {
  throw Failure(ExitCode::bad_input, fmt::format("dewgap assess: {}\nTry dewgap assess --help.\n", what));
}

/// A whole number as typed: digits only.
std::uint64_t whole_option(std::string_view name, const std::string& typed, std::uint64_t least,
                           std::uint64_t most) {
  std::uint64_t value = 0;
  const auto* end = typed.data() + typed.size();
  const auto [at, error] = std::from_chars(typed.data(), end, value);
  if (error != std::errc() || at != end || value < least || value > most)
    bad_usage(
        fmt::format("{} {}: must be a whole number from {} to {}", name, one_line(typed, 40), least, most));
  return value;
}

AssessOptions options_of(const AssessVerb& verb) {
  AssessOptions options;
  if (!verb.samples.empty())
    options.samples = whole_option("--samples", verb.samples, least_samples, most_samples);
  if (!verb.seed.empty()) options.seed = whole_option("--seed", verb.seed, 0, UINT64_MAX);
  return options;
}

void check_paths(const AssessVerb& verb) {
  if (verb.job_path.empty()) bad_usage("which job? Give its file, or - for stdin");
  if (verb.job_path == "-" && verb.money_path == "-")
    bad_usage("only one of job and money file can be stdin");
  if (same_file(verb.output_path, verb.job_path) || same_file(verb.output_path, verb.money_path))
    bad_usage("--output would overwrite a file that is read");
}

ReadFile accepted(ReadFile read, const std::string& path) {
  if (!read.problems.empty())
    throw Failure(ExitCode::bad_input, problem_lines(file_title(path), read.problems));
  return read;
}

AnsweredJob read_files(const AssessVerb& verb, Streams streams) {
  AnsweredJob job;
  job.options = options_of(verb);
  auto read = accepted(read_job(read_whole(verb.job_path, streams)), verb.job_path);
  job.survey = std::move(read.answers.survey);
  job.survey_given = std::move(read.given);
  if (verb.money_path.empty()) return job;
  auto money = accepted(read_money(read_whole(verb.money_path, streams)), verb.money_path);
  job.survey.money = money.answers.money;
  job.currency = money.answers.currency;
  job.money_given = std::move(money.given);
  return job;
}

AnsweredJob read_and_assess(const AssessVerb& verb, Streams streams) {
  AnsweredJob job = read_files(verb, streams);
  try {
    job.assessment = verb.compute(job.survey, job.options);
  } catch (const InvalidInput& error) {
    throw Failure(ExitCode::bad_input,
                  fmt::format("{}:1:1: {}\n", harmless(file_title(verb.job_path)), harmless(error.what())));
  }
  return job;
}

}  // namespace

void AssessVerb::set_up(CLI::App& verb) {
  // The job is not marked as required here: a missing one would hide an option that is not known.
  verb.add_option("JOB", job_path, "job file, or - for stdin; dewgap starter prints one")->type_name("FILE");
  verb.add_option("--money", money_path,
                  "money file, or -: your own prices; without it the answer stops at kWh")
      ->type_name("FILE");
  verb.add_flag("--json", json, "answer for programs; its form: dewgap schema");
  verb.add_option("--samples", samples,
                  fmt::format("plausible cases to compute, {} to {}; as a rule {}", least_samples,
                              most_samples, AssessOptions{}.samples))
      ->type_name("N");
  verb.add_option("--seed", seed,
                  fmt::format("of the samples, a whole number; as a rule {}", AssessOptions{}.seed))
      ->type_name("N");
  verb.add_option("--output", output_path, "file for the answer; as a rule - for stdout")->type_name("FILE");
  verb.footer(assess_footer);
}

void AssessVerb::run(Streams streams) const {
  check_paths(*this);
  const AnsweredJob job = read_and_assess(*this, streams);
  write_whole(output_path, json ? json_answer(job) : text_answer(job), streams);
}

}  // namespace dewgap::tools
