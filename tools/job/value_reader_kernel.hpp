// Gives one value of a file to its field.
#pragma once

#include <optional>
#include <string>

#include "tools/job/field.hpp"
#include "tools/job/given_value.hpp"
#include "tools/job/toml_tree.hpp"

namespace dewgap::tools {

/// Why a value cannot be taken, in words that end a sentence beginning with key and value.
using Complaint = std::optional<std::string>;

/// Hands the value to the field's setter, or says why not. "not known" leaves an optional field as it is.
Complaint take_value(const Field& field, const TomlNode& node, FileAnswers& answers);

/// True for the word that stands for 'nobody has looked'.
bool is_not_known(const TomlNode& node);

/// The value that was taken, for the record: a number that somebody measured or counted is measured, a tick
/// or word described. Words are spelled as the field table does.
GivenValue given_value(const Field& field, const TomlNode& node);

}  // namespace dewgap::tools
