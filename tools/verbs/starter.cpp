#include "tools/job/starter.hpp"

#include <CLI/CLI.hpp>

#include "tools/files.hpp"
#include "tools/verbs/verbs.hpp"

namespace dewgap::tools {

void StarterVerb::set_up(CLI::App& verb) {
  verb.add_flag("--money", money, "the money file instead");
  verb.add_flag("--table", table, "a table of every key instead of a file to fill in");
}

void StarterVerb::run(Streams streams) const {
  const FieldTable& fields = money ? money_table() : job_table();
  write_whole("-", table ? field_list(fields) : starter_file(fields), streams);
}

}  // namespace dewgap::tools
