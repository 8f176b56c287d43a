#include <fmt/format.h>

#include <array>

#include "tools/section/sides_kernel.hpp"

namespace dewgap::tools::section_file {
namespace {

constexpr std::array air_keys{"temperature_C", "resistance_m2K_W", "corner_resistance_m2K_W",
                              "corner_reach_mm"};
constexpr double least_resistance_m2K_W = 1e-4;  // of those that are not 0

/// A resistance of 0, or one that the library can use.
double resistance(TableKeys& keys, std::string_view key, double otherwise) {
  const double value = keys.number(key).value_or(otherwise);
  if (value > 0.0 && value < least_resistance_m2K_W)
    keys.refuse(key, fmt::format("{} is neither 0 nor at least {}", value, least_resistance_m2K_W));
  return value;
}

AirSide air_of(TableKeys& keys, AirRole role) {
  for (const auto* key : {"temperature_C", "resistance_m2K_W"})
    if (!keys.has(key)) keys.report(keys.mark(), fmt::format("{}: missing; a side with air has one", key));
  AirSide air{.role = role,
              .temperature_C = keys.number("temperature_C").value_or(0.0),
              .surface_resistance_m2K_W = resistance(keys, "resistance_m2K_W", 0.13),
              .corners = {}};
  if (keys.has("corner_resistance_m2K_W") || keys.has("corner_reach_mm")) {
    CornerFilm corners;
    corners.surface_resistance_m2K_W =
        resistance(keys, "corner_resistance_m2K_W", corners.surface_resistance_m2K_W);
    if (const auto reach = keys.number("corner_reach_mm")) corners.reach_m = 1e-3 * *reach;
    air.corners = corners;
  }
  return air;
}

/// A list of points, two for each edge.
template <class Edges>
std::vector<EdgeChoice> pairs(TableKeys& keys, std::string_view key) {
  const auto points = keys.points(key);
  if (points.size() % 2 == 1)
    keys.refuse(key, fmt::format("holds {} points; two make an edge", points.size()));
  std::vector<EdgeChoice> edges;
  for (std::size_t i = 0; i + 1 < points.size(); i += 2) edges.push_back(Edges{points[i], points[i + 1]});
  return edges;
}

std::vector<EdgeChoice> edges_of(TableKeys& keys) {
  std::vector<EdgeChoice> edges;
  for (const double at : keys.numbers("on_x_mm")) edges.push_back(EdgesOnX{1e-3 * at});
  for (const double at : keys.numbers("on_y_mm")) edges.push_back(EdgesOnY{1e-3 * at});
  for (auto& edge : pairs<EdgesBetween>(keys, "between_mm")) edges.push_back(std::move(edge));
  for (auto& edge : pairs<EdgesAlong>(keys, "along_mm")) edges.push_back(std::move(edge));
  return edges;
}

}  // namespace

SectionBoundary side_of(TableKeys& keys) {
  SectionBoundary side{keys.text("name"), CutOff{}, edges_of(keys)};
  const auto kind = keys.word("kind");
  if (kind == 2U) {
    for (const auto* key : air_keys)
      if (keys.has(key)) keys.report(keys.mark_of(key), fmt::format("{}: no heat passes a cut-off", key));
    return side;
  }
  if (kind) side.condition = air_of(keys, *kind == 0 ? AirRole::room : AirRole::outdoors);
  return side;
}

}  // namespace dewgap::tools::section_file
