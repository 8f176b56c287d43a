#include "tools/section/solved_section.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <stdexcept>

#include "dewgap/air/saturation.hpp"
#include "dewgap/window/section_readings.hpp"
#include "tools/drawing/svg.hpp"

namespace dewgap::tools {
namespace {

bool has_faces(const SectionResult& result, const std::string& side) {
  return std::any_of(result.faces.begin(), result.faces.end(),
                     [&](const SectionFace& face) { return result.boundaries.at(face.boundary) == side; });
}

/// Places of the columns (or rows) whose cells touch a coordinate.
std::vector<std::size_t> beside(const std::vector<double>& lines_m, double at_m) {
  constexpr double near_m = 1e-8;
  std::vector<std::size_t> places;
  for (std::size_t i = 0; i + 1 < lines_m.size(); ++i)
    if (lines_m[i] <= at_m + near_m && lines_m[i + 1] >= at_m - near_m) places.push_back(i);
  return places;
}

}  // namespace

std::vector<std::string> room_sides(const SectionFile& file) {
  std::vector<std::string> names;
  for (const auto& boundary : file.section.boundaries)
    if (const auto* air = std::get_if<AirSide>(&boundary.condition); air && air->role == AirRole::room)
      names.push_back(boundary.name);
  return names;
}

std::optional<double> least_temperature_factor(const SolvedSection& solved) {
  const auto& result = solved.result;
  if (!result.room_temperature_C || !result.outdoor_temperature_C ||
      *result.room_temperature_C == *result.outdoor_temperature_C)
    return std::nullopt;
  std::optional<double> least;
  for (const auto& side : room_sides(solved.file)) {
    if (!has_faces(result, side)) continue;
    const double factor = temperature_factor(result, side);
    least = least ? std::min(*least, factor) : factor;
  }
  return least;
}

std::optional<double> misting_humidity(const SolvedSection& solved) {
  const auto& lowest = solved.result.lowest_room_face;
  const auto& room = solved.result.room_temperature_C;
  if (!lowest || !room || lowest->temperature_C >= *room || lowest->temperature_C < -40.0 || *room > 60.0)
    return std::nullopt;
  // Relative humidity refers to water, what settles below 0 C is frost.
  return saturation_pressure_Pa(lowest->temperature_C) /
         saturation_pressure_Pa(*room, SaturationFormula::murphy_koop, Phase::water);
}

std::string items_at(const SolvedSection& solved, SectionPoint point) {
  const auto& field = solved.result.field;
  std::set<std::uint32_t> items;
  for (const auto row : beside(field.y_m, point.y_m))
    for (const auto column : beside(field.x_m, point.x_m))
      if (const auto item = field.item_of_cell(column, row)) items.insert(*item);
  std::string text;
  for (const auto item : items) text += (text.empty() ? "" : ", ") + solved.result.items.at(item);
  return text;
}

const ItemLook& look_of(const SolvedSection& solved, const std::string& item) {
  const auto& items = solved.file.section.items;
  const auto at =
      std::find_if(items.begin(), items.end(), [&](const SectionItem& one) { return one.name == item; });
  if (at == items.end()) throw std::logic_error("no such item: " + item);
  return solved.file.looks.at(static_cast<std::size_t>(at - items.begin()));
}

std::string place_text(SectionPoint point) {
  return fmt::format("x {}, y {} mm", svg_number(std::round(1e4 * point.x_m) / 10.0),
                     svg_number(std::round(1e4 * point.y_m) / 10.0));
}

}  // namespace dewgap::tools
