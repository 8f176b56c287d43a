// The published schemas of all that is JSON.
#pragma once

#include <string>

namespace dewgap::tools {

/// Of every document. Raised when a key is renamed, dropped or changes its meaning; new keys may come
/// without.
inline constexpr int json_schema_version = 1;

enum class JsonDocument { assess, vent, year, house, report, setting_out, section };

/// schema/NAME.schema.json with the definitions that all share (schema/shared.definitions.json) put in. What
/// holds another document whole, as a report its answer, has that one's schema among its definitions.
std::string json_schema(JsonDocument document);

}  // namespace dewgap::tools
