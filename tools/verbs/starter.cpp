#include "tools/job/starter.hpp"

#include <CLI/CLI.hpp>

#include "tools/files.hpp"
#include "tools/readings/readings_file.hpp"
#include "tools/verbs/verbs.hpp"

namespace dewgap::tools {

void StarterVerb::set_up(CLI::App& verb) {
  auto* of_money = verb.add_flag("--money", money, "the money file instead");
  auto* as_table = verb.add_flag("--table", table, "a table of every key instead of a file to fill in");
  verb.add_flag("--house", house, "the job file of a house of several windows")
      ->excludes(of_money)
      ->excludes(as_table);
  verb.add_flag("--readings", readings, "a form for the first frosty mornings, for vent and frost-check")
      ->excludes(of_money)
      ->excludes(as_table);
}

void StarterVerb::run(Streams streams) const {
  if (readings) {
    write_whole("-", readings_form(), streams);
    return;
  }
  if (house) {
    write_whole("-", starter_house(), streams);
    return;
  }
  const FieldTable& fields = money ? money_table() : job_table();
  write_whole("-", table ? field_list(fields) : starter_file(fields), streams);
}

}  // namespace dewgap::tools
