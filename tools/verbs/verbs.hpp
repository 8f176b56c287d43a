// The verbs of dewgap. Each sets up its options on the command line and runs with them.
#pragma once

#include <functional>
#include <string>

#include "dewgap/assessment/assess.hpp"
#include "tools/streams.hpp"

namespace CLI {
class App;
}

namespace dewgap::tools {

/// dewgap assess JOB [--money MONEY] [--json] [--samples N] [--seed N] [--output FILE]
struct AssessVerb {
  std::string job_path;
  std::string money_path;
  std::string output_path = "-";
  std::string samples;  ///< as typed; empty: the library's own
  std::string seed;
  bool json = false;
  /// The library's; a test of failure puts another in its place.
  std::function<Assessment(const Survey&, const AssessOptions&)> compute = assess;

  void set_up(CLI::App& verb);
  void run(Streams streams) const;
};

/// dewgap starter [--money] [--table]
struct StarterVerb {
  bool money = false;
  bool table = false;

  void set_up(CLI::App& verb);
  void run(Streams streams) const;
};

/// dewgap places
struct PlacesVerb {
  void set_up(CLI::App& verb);
  void run(Streams streams) const;
};

/// dewgap schema
struct SchemaVerb {
  void set_up(CLI::App& verb);
  void run(Streams streams) const;
};

}  // namespace dewgap::tools
