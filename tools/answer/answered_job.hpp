// An answer with what its printers need from the job.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dewgap/assessment/assess.hpp"
#include "dewgap/assessment/rivals.hpp"
#include "tools/job/given_value.hpp"
#include "tools/weather/weather_figures.hpp"

namespace dewgap::tools {

/// A weather file as it was used.
struct UsedWeather {
  std::size_t repaired_hours = 0;
  std::size_t longest_repaired_gap_h = 0;
  std::vector<std::string> notes;
  std::vector<std::string> warnings = {};  ///< what is to be doubted, a sentence each
  std::vector<std::string> ignored_columns = {};
  WeatherFigures figures = {};
  WeatherIdentity identity = {};
};

struct AnsweredJob {
  Survey survey;
  std::string currency;  ///< name for print; empty without a money file
  RivalCosts rival_costs;
  AssessOptions options;
  std::optional<UsedWeather> weather;  ///< nothing: modelled from the place's monthly means
  Assessment assessment;
  std::vector<GivenValue> survey_given;  ///< what the job file says, for the record
  std::vector<GivenValue> money_given;   ///< the same of the money file, of other windows' costs nothing
};

}  // namespace dewgap::tools
