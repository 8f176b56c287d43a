// Holds a document against a published schema.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

namespace dewgap::test {

/// Complaints of the schema that these arguments print about a document, a line each; empty when it fits.
std::string complaints(const nlohmann::json& document,
                       const std::vector<std::string>& schema_arguments = {"schema"});

}  // namespace dewgap::test
