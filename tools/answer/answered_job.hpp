// An answer with what its printers need from the job.
#pragma once

#include <string>
#include <vector>

#include "dewgap/assessment/assess.hpp"
#include "tools/job/given_value.hpp"

namespace dewgap::tools {

struct AnsweredJob {
  Survey survey;
  std::string currency;  ///< name for print; empty without a money file
  AssessOptions options;
  Assessment assessment;
  std::vector<GivenValue> survey_given;  ///< what the job file says, for the record
  std::vector<GivenValue> money_given;
};

}  // namespace dewgap::tools
