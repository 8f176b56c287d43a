#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "dewgap/climate/places.hpp"
#include "tools/answer/plain_text.hpp"
#include "tools/job/survey_check_kernel.hpp"

namespace dewgap::tools {
namespace {

/// "window.opening_widths" of "window.opening_widths_mm[1]".
std::string stem_of(std::string_view path) {
  constexpr std::array<std::string_view, 12> suffixes{
      "_m3_h_m", "_W_m2K", "_W_mK", "_compass_deg", "_pct", "_kWh", "_mm", "_km", "_Pa", "_C", "_K", "_m"};
  path = path.substr(0, path.find('['));
  for (const auto suffix : suffixes)
    if (path.ends_with(suffix)) return std::string(path.substr(0, path.size() - suffix.size()));
  return std::string(path);
}

/// The key itself, or where it is not given the first of its section.
GivenKey given_or_near(const std::string& key, const GivenKeys& given) {
  if (const auto at = given.find(key); at != given.end()) return at->second;
  const auto section = key.substr(0, key.rfind('.') + 1);
  for (const auto& [path, near] : given)
    if (path.starts_with(section)) return {near.mark, "not given"};
  return {{}, "not given"};
}

bool is_told(const FileProblem& problem, const std::vector<FileProblem>& found) {
  return std::any_of(found.begin(), found.end(),
                     [&](const FileProblem& told) { return told.what == problem.what; });
}

}  // namespace

std::string job_key_of(std::string_view library_path) {
  for (const auto& field : job_table().fields)
    if (stem_of(field.path()) == stem_of(library_path)) return field.path();
  return {};
}

std::vector<FileProblem> survey_problems(const Survey& survey, const GivenKeys& given,
                                         const std::set<std::string>& spoilt_sections) {
  Survey checked = survey;
  if (find_place(checked.place.nearest) == nullptr)
    checked.place.nearest = places().front().key;  // told already
  std::vector<FileProblem> found;
  for (const auto& problem : problems(checked)) {
    if (spoilt_sections.contains(problem.field.substr(0, problem.field.find('.')))) continue;
    const auto known_key = job_key_of(problem.field);
    const auto key = known_key.empty() ? problem.field : known_key;
    const auto near = given_or_near(key, given);
    const FileProblem told{near.mark,
                           fmt::format("{}: {}: {}", key, near.value, one_line(problem.message, 300))};
    if (!is_told(told, found)) found.push_back(told);
  }
  return found;
}

}  // namespace dewgap::tools
