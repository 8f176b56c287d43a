#include "tools/verbs/setting_out.hpp"

#include <CLI/CLI.hpp>

#include "tools/drawing/pdf.hpp"
#include "tools/files.hpp"
#include "tools/setting_out/setting_out.hpp"
#include "tools/verbs/usage.hpp"

namespace dewgap::tools {
namespace {

std::string in_form(const SettingOutVerb& verb, const JobToSet& job) {
  if (verb.svg) return svg_setting_out(job);
  if (verb.csv) return csv_setting_out(job);
  return verb.json ? json_setting_out(job) : html_setting_out(job);
}

}  // namespace

void SettingOutVerb::set_up(CLI::App& verb) {
  input.set_up(verb);
  auto* as_svg = verb.add_flag("--svg", svg, "the drawings alone");
  auto* as_csv = verb.add_flag("--csv", csv, "a line for each mark and break")->excludes(as_svg);
  auto* as_json = verb.add_flag("--json", json, "for programs")->excludes(as_svg)->excludes(as_csv);
  verb.add_option("--pdf", pdf, "file for PDF, made by weasyprint or chromium when one is installed")
      ->type_name("FILE")
      ->excludes(as_svg)
      ->excludes(as_csv)
      ->excludes(as_json);
  verb.footer(
      std::string(
          "As a rule one HTML file of A4 pages to print at 100 %, black and white: what fits, the sheet "
          "to scale,\n  marks, tape, order of work, cut list and shopping list. A window on HOLD gets "
          "its open questions\n  instead: nothing to cut or drill.\n") +
      assessed_job_footer);
}

void SettingOutVerb::run(Streams streams) const {
  if (pdf == "-") bad_usage("setting-out", "--pdf takes a file, not stdout");
  if (!pdf.empty() && input.paths.output != "-") bad_usage("setting-out", "give --pdf or --output, not both");
  auto given = input;
  if (!pdf.empty()) given.paths.output = pdf;  // checked like one
  const auto assessed = read_and_assess("setting-out", given, compute, streams);
  const auto job = job_to_set(assessed.house);
  write_whole(given.paths.output,
              pdf.empty() ? in_form(*this, job)
                          : pdf_of_page("setting-out", html_setting_out(job), paper_programs(),
                                        program_search_path()),
              streams);
}

}  // namespace dewgap::tools
