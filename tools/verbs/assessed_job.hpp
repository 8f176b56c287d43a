// What the verbs that answer a whole job are given (assess, report, setting-out, message), and the job
// assessed. A job is one window or several of one house: whoever prints it goes through `house.windows`.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "dewgap/assessment/assess.hpp"
#include "tools/answer/answered_house.hpp"
#include "tools/streams.hpp"
#include "tools/verbs/given_files.hpp"

namespace CLI {
class App;
}

namespace dewgap::tools {

/// As assess_in_weather of the library.
using Assess = std::function<Assessment(const Survey&, const AssessOptions&, const std::optional<HourlyYear>&,
                                        const Progress&)>;

/// Options as typed; empty: the library's own.
struct AssessInput {
  GivenPaths paths;
  std::string samples;
  std::string window_hours;
  std::string seed;
  std::string longest_repair;

  /// JOB, --money, --window, --weather, --longest-repair, --samples, --window-hours, --seed, --output.
  void set_up(CLI::App& verb);
  AssessOptions options(std::string_view verb) const;
};

/// One window, or those of a house. `house.windows` are in the file's order, at least one, each with its
/// assessment; `house.options` has options and weather of all. `house.answer` and `house.name` are those of a
/// file with [[windows]], else empty.
struct AssessedJob {
  AnsweredHouse house;
  bool has_windows = false;  ///< the file has [[windows]]
};

/// Files and options read, every window assessed, or the one of --window, with its progress shown. A Failure
/// of bad input says everything that is wrong.
AssessedJob read_and_assess(std::string_view verb, const AssessInput& input, const Assess& assess,
                            Streams streams);

/// The same for a verb that answers one window: of a file with several, --window must name it.
AnsweredJob read_and_assess_one(std::string_view verb, const AssessInput& input, const Assess& assess,
                                Streams streams);

/// What every such verb's help says of its files, units and exit codes.
extern const char* const assessed_job_footer;

}  // namespace dewgap::tools
