#include "tools/answer/json_schema.hpp"

#include <nlohmann/json.hpp>

#include "embedded/dewgap_cli.hpp"

namespace dewgap::tools {
namespace {

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
  }
  return embedded::assess_schema;
}

}  // namespace

std::string json_schema(JsonDocument document) {
  auto schema = nlohmann::ordered_json::parse(schema_text(document));
  schema["definitions"] = nlohmann::ordered_json::parse(embedded::shared_definitions);
  return schema.dump(2) + "\n";
}

}  // namespace dewgap::tools
