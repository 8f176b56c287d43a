// What the library refused, at the lines of the file that are concerned.
#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <regex>

#include "tools/answer/plain_text.hpp"
#include "tools/section/section_file.hpp"

namespace dewgap::tools {
namespace {

/// A place that a refusal names, m.
struct Place {
  SectionPoint low;
  SectionPoint high;
};

double number_m(const std::string& text_mm) {
  double value = 0.0;
  std::from_chars(text_mm.data(), text_mm.data() + text_mm.size(), value);
  return 1e-3 * value;
}

/// "x 0 to 10, y 5 to 7 mm", or points "(12.5, 30) mm"; nothing where the refusal names no place.
std::optional<Place> place_in(const std::string& what) {
  static const std::regex extent(R"(x (-?[0-9.]+) to (-?[0-9.]+), y (-?[0-9.]+) to (-?[0-9.]+) mm)");
  static const std::regex point(R"(\((-?[0-9.]+), (-?[0-9.]+)\))");
  std::smatch found;
  if (std::regex_search(what, found, extent))
    return Place{{number_m(found[1]), number_m(found[3])}, {number_m(found[2]), number_m(found[4])}};
  std::optional<Place> place;
  for (std::sregex_iterator at(what.begin(), what.end(), point), end; at != end; ++at) {
    const SectionPoint here{number_m((*at)[1]), number_m((*at)[2])};
    if (!place) place = Place{here, here};
    place->low = {std::min(place->low.x_m, here.x_m), std::min(place->low.y_m, here.y_m)};
    place->high = {std::max(place->high.x_m, here.x_m), std::max(place->high.y_m, here.y_m)};
  }
  return place;
}

/// Does an edge of the polygon touch the place?
bool touches(const std::vector<SectionPoint>& polygon, const Place& place) {
  constexpr double near_m = 2e-7;  // places are printed to a tenth of a micrometre
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const auto& from = polygon[i];
    const auto& to = polygon[(i + 1) % polygon.size()];
    const bool beside = std::max(from.x_m, to.x_m) < place.low.x_m - near_m ||
                        std::min(from.x_m, to.x_m) > place.high.x_m + near_m ||
                        std::max(from.y_m, to.y_m) < place.low.y_m - near_m ||
                        std::min(from.y_m, to.y_m) > place.high.y_m + near_m;
    if (!beside) return true;
  }
  return false;
}

bool names(const std::string& what, const std::string& name) {
  return !name.empty() && what.find(fmt::format("'{}'", name)) != std::string::npos;
}

/// The refusal at the part's line.
FileProblem at_part(const FilePart& part, const std::string& what) {
  auto rest = what;
  if (rest.starts_with(part.name)) rest = rest.substr(part.name.size());
  while (rest.starts_with(':') || rest.starts_with(' ')) rest = rest.substr(1);
  return {part.mark, fmt::format("{}: {}", part.path, harmless(rest))};
}

/// The file's word for boundaries is sides.
std::string in_words_of_file(const std::string& what) {
  const std::string_view boundaries = "boundaries";
  return what.starts_with(boundaries) ? "sides" + harmless(what.substr(boundaries.size())) : harmless(what);
}

/// The points asked for that lie there, outside all that is solved.
std::vector<FileProblem> points_outside(const SectionFile& file, const Place& place) {
  constexpr double near_m = 2e-7;
  std::vector<FileProblem> problems;
  for (const auto& point : file.points)
    if (std::abs(point.at.x_m - place.low.x_m) < near_m && std::abs(point.at.y_m - place.low.y_m) < near_m)
      problems.push_back({point.mark, fmt::format("points \"{}\": at_mm: outside all that is solved",
                                                  one_line(point.name, 40))});
  return problems;
}

bool is_of(const std::string& field, const FilePart& part) {
  return !part.name.empty() && (field == part.name || field.starts_with(part.name + ": "));
}

}  // namespace

std::vector<FileProblem> drawing_problems(const SectionFile& file, const InvalidInput& refused) {
  const std::string what = refused.what();
  std::vector<FileProblem> problems;
  std::vector<const FilePart*> told;
  const auto tell = [&](const FilePart& part, const FileProblem& problem) {
    if (std::find(told.begin(), told.end(), &part) != told.end()) return;
    told.push_back(&part);
    problems.push_back(problem);
  };
  for (const auto* parts : {&file.items, &file.sides})
    for (const auto& part : *parts)
      if (is_of(refused.field(), part)) tell(part, at_part(part, what));
  const auto place = told.empty() ? place_in(what) : std::nullopt;
  if (refused.field() == "watched" && place) return points_outside(file, *place);
  if (told.empty()) problems.push_back({{}, in_words_of_file(what)});
  for (const auto* parts : {&file.items, &file.sides})
    for (const auto& part : *parts)
      if (names(what, part.name)) tell(part, {part.mark, part.path + ": concerned"});
  for (std::size_t i = 0; place && i < file.items.size(); ++i)
    if (touches(file.section.items[i].polygon, *place))
      tell(file.items[i], {file.items[i].mark, file.items[i].path + ": touches that place"});
  return problems;
}

}  // namespace dewgap::tools
