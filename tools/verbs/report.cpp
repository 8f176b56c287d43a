#include "tools/verbs/report.hpp"

#include <CLI/CLI.hpp>

#include "tools/answer/json_parts_kernel.hpp"
#include "tools/drawing/pdf.hpp"
#include "tools/files.hpp"
#include "tools/report/report_document.hpp"
#include "tools/report/report_html.hpp"
#include "tools/verbs/usage.hpp"

namespace dewgap::tools {
namespace {

void check_pdf_path(const std::string& pdf, const GivenPaths& paths) {
  if (pdf.empty()) return;
  if (pdf == "-" && paths.output == "-") bad_usage("report", "--pdf - needs --output FILE for the page");
  for (const auto* path : {&paths.job, &paths.money, &paths.weather})
    if (!path->empty() && same_file(pdf, *path))
      bad_usage("report", "--pdf would overwrite a file that is read");
  if (pdf != "-" && (pdf == paths.output || same_file(pdf, paths.output)))
    bad_usage("report", "--pdf and --output name the same file");
}

}  // namespace

void ReportVerb::set_up(CLI::App& verb) {
  input.set_up(verb);
  auto* as_json = verb.add_flag("--json", json, "all that the page says, for programs");
  verb.add_option("--pdf", pdf, "file for the page printed to A4; takes an installed chromium")
      ->type_name("FILE")
      ->excludes(as_json);
  verb.footer(assessed_job_footer);
}

void ReportVerb::run(Streams streams) const {
  check_pdf_path(pdf, input.paths);
  const auto document = with_input_of(
      input.paths.job, [&] { return report_document(read_and_assess("report", input, compute, streams)); });
  if (json) return write_whole(input.paths.output, json_parts::text_of(document), streams);
  const auto page = report_html(document);
  const auto printed =
      pdf.empty() ? std::string() : pdf_of_page("report", page, browser_programs(), program_search_path());
  write_whole(input.paths.output, page, streams);
  if (!pdf.empty()) write_whole(pdf, printed, streams);
}

}  // namespace dewgap::tools
