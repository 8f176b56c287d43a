#include <CLI/CLI.hpp>

#include "tools/answer/json_schema.hpp"
#include "tools/files.hpp"
#include "tools/verbs/verbs.hpp"

namespace dewgap::tools {

void SchemaVerb::set_up(CLI::App& verb) {
  auto* of_vent = verb.add_flag("--vent", vent, "of vent and frost-check, instead of assess");
  auto* of_year = verb.add_flag("--year", year, "of year")->excludes(of_vent);
  verb.add_flag("--house", house, "of a house of several windows")->excludes(of_vent)->excludes(of_year);
}

void SchemaVerb::run(Streams streams) const {
  const auto document = vent    ? JsonDocument::vent
                        : year  ? JsonDocument::year
                        : house ? JsonDocument::house
                                : JsonDocument::assess;
  write_whole("-", json_schema(document), streams);
}

}  // namespace dewgap::tools
