// dewgap setting-out
#pragma once

#include "tools/streams.hpp"
#include "tools/verbs/assessed_job.hpp"

namespace dewgap::tools {

/// dewgap setting-out JOB [as assess] [--svg | --csv | --json | --pdf FILE] [--output FILE]
struct SettingOutVerb {
  AssessInput input;
  bool svg = false;
  bool csv = false;
  bool json = false;
  std::string pdf;  ///< path
  Assess compute = assess_in_weather;

  void set_up(CLI::App& verb);
  void run(Streams streams) const;
};

}  // namespace dewgap::tools
