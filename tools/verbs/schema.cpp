#include <CLI/CLI.hpp>

#include "tools/answer/json_schema.hpp"
#include "tools/files.hpp"
#include "tools/verbs/verbs.hpp"

namespace dewgap::tools {
namespace {

JsonDocument document_of(const SchemaVerb& verb) {
  if (verb.vent) return JsonDocument::vent;
  if (verb.year) return JsonDocument::year;
  if (verb.house) return JsonDocument::house;
  if (verb.report) return JsonDocument::report;
  if (verb.section) return JsonDocument::section;
  return verb.setting_out ? JsonDocument::setting_out : JsonDocument::assess;
}

}  // namespace

void SchemaVerb::set_up(CLI::App& verb) {
  auto* of_vent = verb.add_flag("--vent", vent, "of vent and frost-check, instead of assess");
  auto* of_year = verb.add_flag("--year", year, "of year")->excludes(of_vent);
  auto* of_house = verb.add_flag("--house", house, "of a house of several windows, as a report holds it")
                       ->excludes(of_vent)
                       ->excludes(of_year);
  auto* of_report = verb.add_flag("--report", report, "of report")
                        ->excludes(of_vent)
                        ->excludes(of_year)
                        ->excludes(of_house);
  auto* of_setting_out = verb.add_flag("--setting-out", setting_out, "of setting-out")
                             ->excludes(of_vent)
                             ->excludes(of_year)
                             ->excludes(of_house)
                             ->excludes(of_report);
  auto* of_section = verb.add_flag("--section", section, "of section");
  for (auto* other : {of_vent, of_year, of_house, of_report, of_setting_out}) of_section->excludes(other);
}

void SchemaVerb::run(Streams streams) const {
  write_whole("-", json_schema(document_of(*this)), streams);
}

}  // namespace dewgap::tools
