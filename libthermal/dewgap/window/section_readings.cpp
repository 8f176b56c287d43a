#include "dewgap/window/section_readings.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/errors.hpp"
#include "dewgap/window/section_answer_kernel.hpp"

namespace dewgap {
namespace {

using section_kernel::line_at;

std::size_t place_of(const std::vector<std::string>& names, std::string_view name, std::string_view kind) {
  const auto found = std::find(names.begin(), names.end(), name);
  if (found == names.end()) {
    throw InvalidInput(kind, "'" + std::string(name) + "' is not in the section");
  }
  return static_cast<std::size_t>(found - names.begin());
}

/// Crossings along a face, in walking order.
std::vector<std::size_t> crossings_along(const TemperatureField& field, const SectionFace& face) {
  const bool along_x = face.from.y_m == face.to.y_m;
  const auto& lines_m = along_x ? field.x_m : field.y_m;
  const std::size_t line = along_x ? line_at(field.y_m, face.from.y_m) : line_at(field.x_m, face.from.x_m);
  const std::size_t one = line_at(lines_m, along_x ? face.from.x_m : face.from.y_m);
  const std::size_t other = line_at(lines_m, along_x ? face.to.x_m : face.to.y_m);
  std::vector<std::size_t> crossings;
  for (std::size_t i = std::min(one, other); i <= std::max(one, other); ++i) {
    crossings.push_back(along_x ? line * field.x_m.size() + i : i * field.x_m.size() + line);
  }
  if (one > other) {
    std::reverse(crossings.begin(), crossings.end());
  }
  return crossings;
}

SectionPoint point_of(const TemperatureField& field, std::size_t crossing) {
  return {field.x_m[crossing % field.x_m.size()], field.y_m[crossing / field.x_m.size()]};
}

constexpr PermittedRange coupling_range_W_mK{0.0, 1e3};
constexpr PermittedRange u_value_range_W_m2K{0.0, 20.0};
constexpr PermittedRange beside_range_m{0.0, 10.0};
constexpr PermittedRange frame_range_m{1e-3, 10.0};

}  // namespace

std::optional<double> temperature_C_at(const SectionResult& result, SectionPoint point) {
  const TemperatureField& field = result.field;
  return section_kernel::bilinear_at(field.x_m, field.y_m, field.item, field.temperature_C, point);
}

std::vector<ProfilePoint> profile_along(const SectionResult& result, std::string_view boundary) {
  const std::size_t place = place_of(result.boundaries, boundary, "boundary");
  std::vector<ProfilePoint> profile;
  double walked_m = 0.0;
  for (const auto& face : result.faces) {
    if (face.boundary != place) {
      continue;
    }
    for (const std::size_t crossing : crossings_along(result.field, face)) {
      const SectionPoint at = point_of(result.field, crossing);
      const double along_m = std::abs(at.x_m - face.from.x_m) + std::abs(at.y_m - face.from.y_m);
      profile.push_back({walked_m + along_m, at, result.field.temperature_C[crossing]});
    }
    walked_m += std::abs(face.to.x_m - face.from.x_m) + std::abs(face.to.y_m - face.from.y_m);
  }
  return profile;
}

FaceTemperature lowest_along_boundary(const SectionResult& result, std::string_view boundary) {
  const auto profile = profile_along(result, boundary);
  if (profile.empty()) {
    throw InvalidInput(boundary, "has no face of the section");
  }
  const auto lowest = std::min_element(profile.begin(), profile.end(), [](const auto& a, const auto& b) {
    return a.temperature_C < b.temperature_C;
  });
  return {lowest->at, lowest->temperature_C};
}

FaceTemperature lowest_on_item(const SectionResult& result, std::string_view item) {
  const std::size_t place = place_of(result.items, item, "item");
  const TemperatureField& field = result.field;
  const std::size_t columns = field.x_m.size() - 1;
  const std::size_t rows = field.y_m.size() - 1;
  const auto inside = [&](std::size_t column, std::size_t row) {
    return field.item_of_cell(column, row) == place;
  };
  std::optional<FaceTemperature> lowest;
  const auto visit = [&](std::size_t column, std::size_t row) {
    const double temperature_C = field.at_crossing_C(column, row);
    if (!lowest || temperature_C < lowest->temperature_C) {
      lowest = FaceTemperature{{field.x_m[column], field.y_m[row]}, temperature_C};
    }
  };
  // the temperature of steady conduction is lowest on the item's rim: its inside need not be left out
  for (std::size_t row = 0; row < rows; ++row) {
    for (std::size_t column = 0; column < columns; ++column) {
      if (inside(column, row)) {
        visit(column, row);
        visit(column + 1, row);
        visit(column, row + 1);
        visit(column + 1, row + 1);
      }
    }
  }
  if (!lowest) {
    throw InvalidInput(item, "is open: nothing of it was solved");
  }
  return *lowest;
}

double temperature_factor(const SectionResult& result, std::string_view boundary) {
  if (!result.room_temperature_C || !result.outdoor_temperature_C ||
      *result.room_temperature_C == *result.outdoor_temperature_C) {
    throw InvalidInput("temperature factor", "needs one temperature of all rooms and another outdoors");
  }
  const double outdoors_C = *result.outdoor_temperature_C;
  return (lowest_along_boundary(result, boundary).temperature_C - outdoors_C) /
         (*result.room_temperature_C - outdoors_C);
}

double frame_transmittance_W_m2K(double coupling_W_mK, double frame_length_m, const PanelBeside& panel) {
  require_in_range(coupling_W_mK, coupling_range_W_mK, "coupling_W_mK", "W/(m K)");
  require_in_range(frame_length_m, frame_range_m, "frame_length_m", "m");
  require_in_range(panel.u_value_W_m2K, u_value_range_W_m2K, "panel.u_value_W_m2K", "W/(m2 K)");
  require_in_range(panel.length_m, beside_range_m, "panel.length_m", "m");
  return (coupling_W_mK - panel.u_value_W_m2K * panel.length_m) / frame_length_m;  // ISO 10077-2 eq. C.1
}

double linear_transmittance_W_mK(double coupling_W_mK, const PanelBeside& frame, const PanelBeside& glass) {
  require_in_range(coupling_W_mK, coupling_range_W_mK, "coupling_W_mK", "W/(m K)");
  for (const auto& part : {frame, glass}) {
    require_in_range(part.u_value_W_m2K, u_value_range_W_m2K, "u_value_W_m2K", "W/(m2 K)");
    require_in_range(part.length_m, beside_range_m, "length_m", "m");
  }
  return coupling_W_mK - frame.u_value_W_m2K * frame.length_m -
         glass.u_value_W_m2K * glass.length_m;  // ISO 10077-2 eq. C.2
}

}  // namespace dewgap
