// What `vent` and `frost-check` are given, and the decision they ask for.
#pragma once

#include <functional>
#include <string>

#include "dewgap/assessment/vent_advice.hpp"
#include "tools/answer/advised_job.hpp"
#include "tools/streams.hpp"
#include "tools/verbs/given_files.hpp"

namespace CLI {
class App;
}

namespace dewgap::tools {

/// As vent_advice of the library.
using Advise =
    std::function<VentAdvice(const Survey&, const std::optional<HourlyYear>&,
                             const std::vector<WinterReading>&, VentAdviceOptions, const Progress&)>;

/// Options as typed.
struct AdviceInput {
  GivenPaths paths;
  std::string fitted;
  std::string samples;
  std::string window_hours;
  std::string seed;
  std::string longest_repair;

  void set_up(CLI::App& verb);
  VentAdviceOptions options(std::string_view verb) const;
};

/// Files and options read, everything but the decision.
struct AdviceQuestion {
  AdvisedJob job;
  std::optional<HourlyYear> weather;
  std::vector<WinterReading> readings;

  bool held() const { return !job.job.assessment.open_gates.empty(); }
};
AdviceQuestion read_question(std::string_view verb, const AdviceInput& input, Streams streams);

/// The decision, with its progress shown. Asked only when no gate is open.
VentAdvice decide(const Advise& advise, const AdviceQuestion& question,
                  const std::vector<WinterReading>& readings, Streams streams);

/// The middle case's year under the choice, when there is one.
std::optional<GapYearSummary> middle_of(const AdviceQuestion& question, const VentAdvice& advice,
                                        const std::vector<WinterReading>& readings);

}  // namespace dewgap::tools
