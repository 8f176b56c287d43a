#include <CLI/CLI.hpp>

#include "tools/answer/json_answer.hpp"
#include "tools/files.hpp"
#include "tools/verbs/verbs.hpp"

namespace dewgap::tools {

void SchemaVerb::set_up(CLI::App&) {}

void SchemaVerb::run(Streams streams) const {
  write_whole("-", json_schema(), streams);
}

}  // namespace dewgap::tools
