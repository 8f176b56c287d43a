// Files to fill in and the list of fields, all made from the field tables.
#pragma once

#include <string>

#include "tools/job/field.hpp"

namespace dewgap::tools {

/// A commented file with the fields of the short job. The questions to settle first stand there without an
/// answer.
std::string starter_file(const FieldTable& table);

/// A job file of two windows to fill in and to copy, commented; the questions to settle first stand under
/// each window without an answer.
std::string starter_house();

/// Every field as a Markdown table: key, what it means, permitted, needed or not.
std::string field_list(const FieldTable& table);

}  // namespace dewgap::tools
