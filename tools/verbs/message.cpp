#include "tools/verbs/message.hpp"

#include <CLI/CLI.hpp>

#include "tools/files.hpp"
#include "tools/setting_out/message.hpp"

namespace dewgap::tools {

void MessageVerb::set_up(CLI::App& verb) {
  input.set_up(verb);
  verb.footer(
      std::string("The answer as plain text to send to a phone: at most 459 characters a window, three "
                  "short messages.\n  A blank line stands between windows.\n") +
      assessed_job_footer);
}

void MessageVerb::run(Streams streams) const {
  const auto assessed = read_and_assess("message", input, compute, streams);
  std::string text;
  for (const auto& job : assessed.house.windows) text += (text.empty() ? "" : "\n") + message(job);
  write_whole(input.paths.output, text, streams);
}

}  // namespace dewgap::tools
