// The files that a verb is given: their paths checked, read, and refused when anything is wrong with them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "dewgap/assessment/vent_advice.hpp"
#include "dewgap/errors.hpp"
#include "tools/answer/answered_job.hpp"
#include "tools/job/field.hpp"
#include "tools/streams.hpp"
#include "tools/weather/weather_file.hpp"

namespace dewgap::tools {

/// As typed; an empty path was not given, and "-" is stdin or stdout.
struct GivenPaths {
  std::string job;
  std::string money;
  std::string weather;
  std::string readings;
  std::string window;  ///< name or number of the one that is meant, in a file of several
  std::string output = "-";
};

/// Bad usage without a job, when two files would be stdin, and when the output would overwrite one that is
/// read.
void check_paths(std::string_view verb, const GivenPaths& paths);

/// A job file's windows, in its order, at least one; nothing is assessed yet.
struct HouseFiles {
  HouseFacts house;
  bool has_windows = false;  ///< the file has [[windows]]
  std::vector<AnsweredJob> windows;
};

/// Job and money file, with all windows. A Failure of bad input says everything that is wrong with them.
HouseFiles read_house_files(const GivenPaths& paths, Streams streams);

/// The window that `wanted` names, by name or by number from 1, or the only one when it is empty. A Failure
/// of bad input lists the windows.
AnsweredJob one_window(HouseFiles files, const std::string& wanted, const std::string& job_path);

/// Both: job and money file, and the one window of it that is meant.
AnsweredJob read_job_files(const GivenPaths& paths, Streams streams);

/// Nothing when none was given. `longest_repair` as typed, 0 to 24 hours; bad usage without a weather file.
/// What is to be doubted, also at the job's place, is told on stderr; the other hemisphere is a Failure.
std::optional<WeatherFile> read_weather_file(std::string_view verb, const GivenPaths& paths,
                                             const std::string& longest_repair, const PlaceSurvey& place,
                                             Streams streams);
UsedWeather used(const WeatherFile& file);

/// The answer to a job whose safety questions are open; nothing when all are settled.
std::optional<Assessment> held(const Survey& survey, const std::string& job_path);

/// What the verb's options of weather say in its help.
inline constexpr const char* weather_help =
    "a year of hourly weather, CSV, or -; as a rule modelled from the place's monthly means";
inline constexpr const char* repair_help =
    "hours on end that may lack values and are filled in, 0 to 24; as a rule 3";

inline constexpr const char* window_help =
    "which window of a file with several: its name, or its number from 1";

std::vector<WinterReading> read_readings_file(const GivenPaths& paths, Streams streams);

[[noreturn]] void refuse(const std::string& path, const InvalidInput& error);

/// Does the work and returns what it gives; input that the library refuses is a Failure of bad input that
/// names the file.
template <class Work>
auto with_input_of(const std::string& path, const Work& work) {
  try {
    return work();
  } catch (const InvalidInput& error) {
    refuse(path, error);
  }
}

}  // namespace dewgap::tools
