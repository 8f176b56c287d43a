#include <CLI/CLI.hpp>

#include "tools/answer/json_vent.hpp"
#include "tools/answer/text_vent.hpp"
#include "tools/files.hpp"
#include "tools/verbs/usage.hpp"
#include "tools/verbs/verbs.hpp"

namespace dewgap::tools {
namespace {

constexpr const char* frost_check_footer =
    R"(The decision of dewgap vent without and with what was seen, and what to do now: keep it as it is, open
  breaks, take it down and dry the window, or call whoever fitted it. Water that ran always takes it
  down.
Readings: CSV with the columns date, outdoor_C (the night's lowest), room_C, room_humidity_percent (both
  may be empty) and mist (none, edges, lower_third, all_over, runs), a line a morning.
Everything else: dewgap vent --help.)";

}  // namespace

void FrostCheckVerb::set_up(CLI::App& verb) {
  input.set_up(verb);
  verb.add_flag("--json", json, "answer for programs; its form: dewgap schema --vent");
  verb.footer(frost_check_footer);
}

void FrostCheckVerb::run(Streams streams) const {
  if (input.paths.readings.empty())
    bad_usage("frost-check", "which readings? Give --readings FILE; dewgap starter --readings prints a form");
  auto question = read_question("frost-check", input, streams);
  auto& job = question.job;
  if (!question.held())
    with_input_of(input.paths.job, [&] {
      const auto before = decide(compute, question, {}, streams);
      job.advice = decide(compute, question, question.readings, streams);
      job.middle = middle_of(question, *job.advice, question.readings);
      job.frost_check = FrostCheck{.before = before,
                                   .fitted = job.options.fitted,
                                   .step = frost_step(*job.advice, job.options.fitted, question.readings)};
    });
  write_whole(input.paths.output, json ? json_vent(job) : text_vent(job), streams);
}

}  // namespace dewgap::tools
