// dewgap report: what one would leave with the householder.
#pragma once

#include <string>

#include "tools/streams.hpp"
#include "tools/verbs/assessed_job.hpp"

namespace CLI {
class App;
}

namespace dewgap::tools {

/// dewgap report JOB [as assess] [--json] [--pdf FILE]
struct ReportVerb {
  AssessInput input;
  std::string pdf;
  bool json = false;
  /// The library's; a test of failure puts another in its place.
  Assess compute = assess_in_weather;

  void set_up(CLI::App& verb);
  void run(Streams streams) const;
};

}  // namespace dewgap::tools
