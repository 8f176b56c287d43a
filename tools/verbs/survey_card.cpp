#include "tools/verbs/survey_card.hpp"

#include <CLI/CLI.hpp>

#include "tools/files.hpp"
#include "tools/setting_out/survey_card.hpp"

namespace dewgap::tools {

void SurveyCardVerb::set_up(CLI::App& verb) {
  verb.add_option("--output", output, "file for the page; as a rule - for stdout")->type_name("FILE");
  verb.footer(
      "One HTML page: print it on A4, fill it in at the window, type it into a job file (dewgap starter).");
}

void SurveyCardVerb::run(Streams streams) const {
  write_whole(output, survey_card(job_table()), streams);
}

}  // namespace dewgap::tools
