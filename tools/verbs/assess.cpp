#include <CLI/CLI.hpp>

#include "tools/answer/json_answer.hpp"
#include "tools/answer/text_answer.hpp"
#include "tools/files.hpp"
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

}  // namespace

void AssessVerb::set_up(CLI::App& verb) {
  input.set_up(verb);
  verb.add_flag("--json", json, "answer for programs; its form: dewgap schema");
  verb.footer(assess_footer);
}

void AssessVerb::run(Streams streams) const {
  const auto job = read_and_assess_one("assess", input, compute, streams);
  write_whole(input.paths.output, json ? json_answer(job) : text_answer(job), streams);
}

}  // namespace dewgap::tools
