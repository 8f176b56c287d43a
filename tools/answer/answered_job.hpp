// An answer with what its printers need from the job.
#pragma once

#include <string>

#include "dewgap/assessment/assess.hpp"

namespace dewgap::tools {

struct AnsweredJob {
  Survey survey;
  std::string currency;  ///< name for print; empty without a money file
  AssessOptions options;
  Assessment assessment;
};

}  // namespace dewgap::tools
