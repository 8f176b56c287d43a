#include <CLI/CLI.hpp>

#include "tools/answer/json_vent.hpp"
#include "tools/answer/text_vent.hpp"
#include "tools/files.hpp"
#include "tools/verbs/verbs.hpp"

namespace dewgap::tools {
namespace {

constexpr const char* vent_footer =
    R"(Every way to make the tape that this window allows is run through a year of hours, from autumn on, in
  as many plausible cases as settle the choice. A case costs some tenths of a second.
Files: the job is TOML; weather and readings are CSV with a header that names each column with its
  unit. Weather: 8760 hours with time_start, air_temperature_C, relative_humidity_percent, wind_m_s,
  wind_direction_deg, global_W_m2, and above them # latitude_deg:, # longitude_deg:, # utc_offset_h:.
Units: hours and kWh a year, g/m2 of glass, % for humidity and shares. 12 (0-80) is the middle and the
  10th to 90th percentile of the plausible cases; of fewer than 40 cases, their least and greatest.
  kWh a year: heat lost in heating hours through the glass and by the air behind the sheet, against tape
  all round. That is not the saving: dewgap assess has it.
Exit codes: 0 answered, HOLD and NOT SETTLED included; 1 could not be computed; 2 bad input or usage;
  3 a file cannot be read or written. Anything but 0: no answer at all, and the reason on stderr.
The same files, options and seed give the same answer.)";

std::string text_in_form(const AdvisedJob& job, const VentVerb& verb) {
  if (verb.json) return json_vent(job);
  return verb.csv ? csv_vent(job) : text_vent(job);
}

}  // namespace

void VentVerb::set_up(CLI::App& verb) {
  input.set_up(verb);
  auto* as_json = verb.add_flag("--json", json, "answer for programs; its form: dewgap schema --vent");
  verb.add_flag("--csv", csv, "a line for each way to make the tape")->excludes(as_json);
  verb.footer(vent_footer);
}

void VentVerb::run(Streams streams) const {
  auto question = read_question("vent", input, streams);
  auto& job = question.job;
  if (!question.held())
    with_input_of(input.paths.job, [&] {
      job.advice = decide(compute, question, question.readings, streams);
      job.middle = middle_of(question, *job.advice, question.readings);
      job.mend_first = mends_before_fitting(job.job.survey, job.advice->choice);
    });
  write_whole(input.paths.output, text_in_form(job, *this), streams);
}

}  // namespace dewgap::tools
