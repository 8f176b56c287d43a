// The answer for programs. Its form: schema/assess.schema.json.
#pragma once

#include <string>
#include <string_view>

#include "tools/answer/answered_job.hpp"

namespace dewgap::tools {

/// Raised when a key is renamed, dropped or changes its meaning; new keys may come without.
inline constexpr int json_schema_version = 1;

/// On HOLD there is no key for savings, sizes to cut or drilling. Throws std::domain_error rather than write
/// a number that is not finite.
std::string json_answer(const AnsweredJob& job);

/// The published schema.
std::string_view json_schema();

}  // namespace dewgap::tools
