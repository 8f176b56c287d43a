// dewgap section: a drawn section solved.
#pragma once

#include <functional>
#include <string>

#include "dewgap/window/section.hpp"
#include "tools/streams.hpp"

namespace CLI {
class App;
}

namespace dewgap::tools {

/// dewgap section FILE [--json | --svg | --csv] [--bound SHARE] [--most-cells N] [--points-only]
/// [--output FILE]
struct SectionVerb {
  std::string path;
  std::string output = "-";
  std::string bound;  ///< as typed, as the next
  std::string most_cells;
  bool json = false;
  bool svg = false;
  bool csv = false;
  bool points_only = false;
  /// The library's; a test of failure puts another in its place.
  std::function<SectionResult(const dewgap::Section&, const SectionOptions&)> compute = solve_section;

  void set_up(CLI::App& verb);
  void run(Streams streams) const;
};

}  // namespace dewgap::tools
