// The library's own findings about a survey, brought back to the lines of the file.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "dewgap/assessment/survey.hpp"
#include "tools/job/reader.hpp"

namespace dewgap::tools {

/// Where a key stands in the file, and its value as typed.
struct GivenKey {
  TextMark mark;
  std::string value;
};

/// The keys that a file gives, by path: "window.opening_widths_mm".
using GivenKeys = std::map<std::string, GivenKey>;

/// dewgap::problems() of the survey, each once. What concerns a section that was not read whole is left out,
/// since the survey lacks values there.
std::vector<FileProblem> survey_problems(const Survey& survey, const GivenKeys& given,
                                         const std::set<std::string>& spoilt_sections);

/// The key of the job file for a field path of the library: "window.opening_widths" or
/// "window.opening_widths_m" gives "window.opening_widths_mm". Empty when there is none.
std::string job_key_of(std::string_view library_path);

}  // namespace dewgap::tools
