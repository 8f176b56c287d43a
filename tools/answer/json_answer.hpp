// The answer for programs. Its form: json_schema.hpp.
#pragma once

#include <string>

#include "tools/answer/answered_job.hpp"

namespace dewgap::tools {

/// On HOLD there is no key for savings, sizes to cut or drilling. Throws std::domain_error rather than write
/// a number that is not finite.
std::string json_answer(const AnsweredJob& job);

}  // namespace dewgap::tools
