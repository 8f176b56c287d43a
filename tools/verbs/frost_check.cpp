#include <CLI/CLI.hpp>

#include "tools/answer/json_vent.hpp"
#include "tools/answer/text_vent.hpp"
#include "tools/files.hpp"
#include "tools/verbs/usage.hpp"
#include "tools/verbs/verbs.hpp"

namespace dewgap::tools {
namespace {

constexpr const char* frost_check_footer =
    R"(The decision of dewgap vent without and with what was seen, and what to do now: keep it as it is, look
  again, open breaks, take it down and dry the window, mend first, or call whoever fitted it. What is seen
  outranks what is worked out: water that ran always takes it down, and with mist over a third of the pane
  it is never just kept.
Readings: CSV with the columns date, outdoor_C (the night's lowest), room_C, room_humidity_percent (both
  may be empty) and mist (none, edges, lower_third, all_over, runs), one line a morning. Nights that did not
  go down to 3 C are left out.
Everything else: dewgap vent --help.)";

/// A sheet that hangs is set out.
std::vector<Mend> mends_while_it_hangs(const Survey& survey, VentOption fitted) {
  auto mends = mends_before_fitting(survey, fitted);
  std::erase_if(mends, [](const Mend& mend) { return mend.kind == MendKind::setting_out; });
  return mends;
}

}  // namespace

void FrostCheckVerb::set_up(CLI::App& verb) {
  input.set_up(verb);
  verb.add_flag("--json", json, "answer for programs; its form: dewgap schema --vent");
  verb.footer(frost_check_footer);
}

void FrostCheckVerb::run(Streams streams) const {
  auto question = read_question("frost-check", input, streams);
  auto& job = question.job;
  if (!question.held()) {
    if (input.paths.readings.empty())
      bad_usage("frost-check",
                "which readings? Give --readings FILE; dewgap starter --readings prints a form");
    with_input_of(input.paths.job, [&] {
      const auto before = decide(compute, question, {}, streams);
      job.advice = decide(compute, question, question.readings, streams);
      job.middle = middle_of(question, *job.advice, question.readings);
      job.mend_first = mends_while_it_hangs(job.job.survey, job.options.fitted);
      const auto found = frost_findings(*job.advice, job.options.fitted, job.mend_first);
      job.frost_check = FrostCheck{
          .before = before, .fitted = job.options.fitted, .found = found, .step = frost_step(found)};
    });
  }
  write_whole(input.paths.output, json ? json_vent(job) : text_vent(job), streams);
}

}  // namespace dewgap::tools
