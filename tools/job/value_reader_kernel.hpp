// Gives one value of a file to its field.
#pragma once

#include <optional>
#include <string>

#include "tools/job/field.hpp"
#include "tools/job/toml_tree.hpp"

namespace dewgap::tools {

/// Why a value cannot be taken, in words that end a sentence beginning with key and value.
using Complaint = std::optional<std::string>;

/// Hands the value to the field's setter, or says why not. "not known" leaves an optional field as it is.
Complaint take_value(const Field& field, const TomlNode& node, FileAnswers& answers);

}  // namespace dewgap::tools
