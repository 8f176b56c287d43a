// dewgap message
#pragma once

#include "tools/streams.hpp"
#include "tools/verbs/assessed_job.hpp"

namespace dewgap::tools {

/// dewgap message JOB [as assess]
struct MessageVerb {
  AssessInput input;
  Assess compute = assess_in_weather;

  void set_up(CLI::App& verb);
  void run(Streams streams) const;
};

}  // namespace dewgap::tools
