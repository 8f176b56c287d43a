// The verbs of dewgap. Each sets up its options on the command line and runs with them.
#pragma once

#include <functional>
#include <string>

#include "dewgap/assessment/assess.hpp"
#include "tools/streams.hpp"
#include "tools/verbs/advice_input.hpp"
#include "tools/verbs/assessed_job.hpp"

namespace CLI {
class App;
}

namespace dewgap::tools {

/// dewgap assess JOB [--money MONEY] [--weather FILE] [--longest-repair H] [--json] [--samples N]
/// [--window-hours N] [--seed N] [--output FILE]
struct AssessVerb {
  AssessInput input;
  bool json = false;
  /// The library's; a test of failure puts another in its place.
  Assess compute = assess_in_weather;

  void set_up(CLI::App& verb);
  void run(Streams streams) const;
};

/// dewgap vent JOB [--weather FILE] [--longest-repair H] [--readings FILE] [--fitted OPTION] [--samples N]
/// [--window-hours N] [--seed N] [--json] [--csv] [--output FILE]
struct VentVerb {
  AdviceInput input;
  bool json = false;
  bool csv = false;
  Advise compute = vent_advice;

  void set_up(CLI::App& verb);
  void run(Streams streams) const;
};

/// dewgap frost-check JOB --readings FILE [--fitted OPTION] [as vent, but --csv]
struct FrostCheckVerb {
  AdviceInput input;
  bool json = false;
  Advise compute = vent_advice;

  void set_up(CLI::App& verb);
  void run(Streams streams) const;
};

/// dewgap year JOB [--weather FILE] [--longest-repair H] [--option OPTION] [--case N] [--monthly] [--csv]
/// [--json] [--seed N] [--output FILE]
struct YearVerb {
  GivenPaths paths;
  std::string longest_repair;
  std::string option;  ///< as typed, as the next two
  std::string number;
  std::string seed;
  bool monthly = false;
  bool csv = false;
  bool json = false;

  void set_up(CLI::App& verb);
  void run(Streams streams) const;
};

/// dewgap starter [--money] [--house] [--table] [--readings]
struct StarterVerb {
  bool money = false;
  bool house = false;
  bool readings = false;
  bool table = false;

  void set_up(CLI::App& verb);
  void run(Streams streams) const;
};

/// dewgap places
struct PlacesVerb {
  void set_up(CLI::App& verb);
  void run(Streams streams) const;
};

/// dewgap schema [--vent | --year | --house | --report | --setting-out | --section]
struct SchemaVerb {
  bool vent = false;
  bool year = false;
  bool house = false;
  bool report = false;
  bool setting_out = false;
  bool section = false;

  void set_up(CLI::App& verb);
  void run(Streams streams) const;
};

}  // namespace dewgap::tools
