// dewgap survey-card
#pragma once

#include <string>

#include "tools/streams.hpp"

namespace CLI {
class App;
}

namespace dewgap::tools {

/// dewgap survey-card [--output FILE]
struct SurveyCardVerb {
  std::string output = "-";

  void set_up(CLI::App& verb);
  void run(Streams streams) const;
};

}  // namespace dewgap::tools
