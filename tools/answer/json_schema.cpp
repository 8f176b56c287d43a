#include "tools/answer/json_schema.hpp"

#include <nlohmann/json.hpp>

#include "embedded/dewgap_cli.hpp"

namespace dewgap::tools {
namespace {

using Json = nlohmann::ordered_json;

std::string_view schema_text(JsonDocument document) {
  switch (document) {
    case JsonDocument::assess:
      return embedded::assess_schema;
    case JsonDocument::vent:
      return embedded::vent_schema;
    case JsonDocument::year:
      return embedded::year_schema;
    case JsonDocument::house:
      return embedded::house_schema;
    case JsonDocument::report:
      return embedded::report_schema;
    case JsonDocument::setting_out:
      return embedded::setting_out_schema;
    case JsonDocument::section:
      return embedded::section_schema;
  }
  return embedded::assess_schema;
}

/// A document's schema as part of another one.
Json part_of(JsonDocument document) {
  auto schema = Json::parse(schema_text(document));
  schema.erase("$schema");
  return schema;
}

}  // namespace

std::string json_schema(JsonDocument document) {
  auto schema = Json::parse(schema_text(document));
  auto definitions = Json::parse(embedded::shared_definitions);
  if (schema.contains("definitions")) definitions.update(schema.at("definitions"));
  if (document == JsonDocument::setting_out) definitions["assess_answer"] = part_of(JsonDocument::assess);
  if (document == JsonDocument::report) {
    definitions["assess_answer"] = part_of(JsonDocument::assess);
    definitions["house_answer"] = part_of(JsonDocument::house);
  }
  schema["definitions"] = std::move(definitions);
  return schema.dump(2) + "\n";
}

}  // namespace dewgap::tools
