// The vent decision for programs. Its form: json_schema.hpp.
#pragma once

#include <string>

#include "tools/answer/advised_job.hpp"

namespace dewgap::tools {

/// On HOLD there is no key but those of the questions, the cautions and the run. Throws std::domain_error
/// rather than write a number that is not finite.
std::string json_vent(const AdvisedJob& job);

/// A line for each option, after a header that names the unit of each column; on HOLD and where no option was
/// judged the header alone, with the reason as a comment before it.
std::string csv_vent(const AdvisedJob& job);

}  // namespace dewgap::tools
