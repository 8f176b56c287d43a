#include <algorithm>
#include <cmath>
#include <set>

#include "dewgap/errors.hpp"
#include "dewgap/window/section_checks_kernel.hpp"
#include "dewgap/window/section_words_kernel.hpp"

namespace dewgap {

void SectionOptions::validate() const {
  require_in_range(coupling_error_bound, {1e-9, 0.1}, "coupling_error_bound", "-");
  require_in_range(temperature_error_bound_K, {1e-6, 10.0}, "temperature_error_bound_K", "K");
  require_in_range(static_cast<double>(max_cells), {100.0, 4e6}, "max_cells", "-");
  require_in_range(max_passes, {2.0, 100.0}, "max_passes", "-");
  if (aim == SectionAim::temperatures_only && watched.empty()) {
    throw InvalidInput("watched", "names no point; where only temperatures are asked for, at least one is");
  }
}

namespace section_kernel {
namespace {

constexpr PermittedRange coordinate_range_m{-100.0, 100.0};
constexpr PermittedRange conductivity_range_W_mK{1e-4, 1e4};
constexpr PermittedRange emissivity_range{0.01, 1.0};
constexpr PermittedRange conductance_range_W_m2K{0.01, 1e3};
constexpr PermittedRange temperature_range_C{-100.0, 200.0};
constexpr PermittedRange resistance_range_m2K_W{1e-4, 100.0};
constexpr PermittedRange reach_range_m{section_least_width_m, 1.0};

void check_fill(const SectionItem& item) {
  const std::string of = item.name + ": ";
  if (const auto* solid = std::get_if<SolidFill>(&item.fill)) {
    require_in_range(solid->conductivity_W_mK, conductivity_range_W_mK, of + "conductivity_W_mK", "W/(m K)");
  } else if (const auto* cavity = std::get_if<CavityFill>(&item.fill)) {
    require_in_range(cavity->emissivity_1, emissivity_range, of + "emissivity_1", "-");
    require_in_range(cavity->emissivity_2, emissivity_range, of + "emissivity_2", "-");
  } else if (const auto* gap = std::get_if<GapFill>(&item.fill)) {
    require_in_range(gap->conductance_W_m2K, conductance_range_W_m2K, of + "conductance_W_m2K", "W/(m2 K)");
  }
}

void check_names(const Section& section) {
  std::set<std::string_view> earlier;
  for (const auto& item : section.items) {
    if (item.name.empty()) {
      throw InvalidInput("name", "an item of the section has none");
    }
    for (const auto& replaced : item.replaces) {
      if (!earlier.contains(replaced)) {
        throw InvalidInput(item.name, "replaces '" + replaced + "', which is no earlier item");
      }
    }
    if (!earlier.insert(item.name).second) {
      throw InvalidInput(item.name, "is the name of two items");
    }
  }
  std::set<std::string_view> sides;
  for (const auto& boundary : section.boundaries) {
    if (boundary.name.empty()) {
      throw InvalidInput("name", "a boundary of the section has none");
    }
    if (!sides.insert(boundary.name).second) {
      throw InvalidInput(boundary.name, "is the name of two boundaries");
    }
  }
}

void check_resistance(double resistance_m2K_W, const std::string& field) {
  if (resistance_m2K_W != 0.0) {  // 0: the face has the air's temperature
    require_in_range(resistance_m2K_W, resistance_range_m2K_W, field, "m2 K/W");
  }
}

void check_side(const SectionBoundary& boundary) {
  const auto* air = std::get_if<AirSide>(&boundary.condition);
  if (air == nullptr) {
    return;
  }
  const std::string of = boundary.name + ": ";
  require_in_range(air->temperature_C, temperature_range_C, of + "temperature_C", "C");
  check_resistance(air->surface_resistance_m2K_W, of + "surface_resistance_m2K_W");
  if (air->corners) {
    check_resistance(air->corners->surface_resistance_m2K_W, of + "corners.surface_resistance_m2K_W");
    require_in_range(air->corners->reach_m, reach_range_m, of + "corners.reach_m", "m");
  }
}

/// Edge between two points of a polygon: along x or y, of some length.
void check_edge(const SectionItem& item, const SectionPoint& from, const SectionPoint& to) {
  const double along_x_m = std::abs(to.x_m - from.x_m);
  const double along_y_m = std::abs(to.y_m - from.y_m);
  if (along_x_m > 0.0 && along_y_m > 0.0) {
    throw InvalidInput(item.name, "has an edge from " + place(from) + " to " + place(to) +
                                      " that lies neither along x nor along y");
  }
  if (along_x_m + along_y_m < section_least_width_m) {
    throw InvalidInput(item.name, "has an edge shorter than " + millimetres(section_least_width_m) +
                                      " mm at " + place(from));
  }
}

/// Do two edges along x or y share a point?
bool meet(const SectionPoint& a, const SectionPoint& b, const SectionPoint& c, const SectionPoint& d) {
  const auto apart = [](double p, double q, double r, double s) {
    return std::max(p, q) < std::min(r, s) || std::max(r, s) < std::min(p, q);
  };
  return !apart(a.x_m, b.x_m, c.x_m, d.x_m) && !apart(a.y_m, b.y_m, c.y_m, d.y_m);
}

/// Do two edges that follow each other run back over one another?
bool turns_back(const SectionPoint& a, const SectionPoint& b, const SectionPoint& c) {
  return (b.x_m - a.x_m) * (c.x_m - b.x_m) + (b.y_m - a.y_m) * (c.y_m - b.y_m) < 0.0;
}

}  // namespace

void check_polygon(const SectionItem& item) {
  const auto& points = item.polygon;
  const std::size_t count = points.size();
  if (count < 4) {
    throw InvalidInput(item.name, "has a polygon of fewer than four points");
  }
  for (const auto& point : points) {
    require_in_range(point.x_m, coordinate_range_m, item.name + ": x_m", "m");
    require_in_range(point.y_m, coordinate_range_m, item.name + ": y_m", "m");
  }
  for (std::size_t i = 0; i < count; ++i) {
    check_edge(item, points[i], points[(i + 1) % count]);
  }
  for (std::size_t i = 0; i < count; ++i) {
    const auto& from = points[i];
    const auto& to = points[(i + 1) % count];
    if (turns_back(from, to, points[(i + 2) % count])) {
      throw InvalidInput(item.name, "has a polygon that runs back over itself at " + place(to));
    }
    for (std::size_t k = i + 2; k < count; ++k) {
      const bool neighbours = i == 0 && k + 1 == count;
      if (!neighbours && meet(from, to, points[k], points[(k + 1) % count])) {
        throw InvalidInput(item.name, "has a polygon that crosses or touches itself: the edge from " +
                                          place(from) + " to " + place(to) + " meets that from " +
                                          place(points[k]) + " to " + place(points[(k + 1) % count]));
      }
    }
  }
}

std::size_t boundary_named(const Section& section, std::string_view name, std::string_view asked_by) {
  for (std::size_t k = 0; k < section.boundaries.size(); ++k) {
    if (section.boundaries[k].name == name) {
      return k;
    }
  }
  throw InvalidInput(asked_by, "names the boundary '" + std::string(name) + "', which the section has not");
}

void check_values(const Section& section) {
  if (section.items.empty()) {
    throw InvalidInput("items", "the section has none");
  }
  check_names(section);
  for (const auto& item : section.items) {
    check_fill(item);
    check_polygon(item);
    if (const auto* open = std::get_if<OpenFill>(&item.fill)) {
      const std::size_t boundary = boundary_named(section, open->boundary, item.name);
      if (!std::holds_alternative<AirSide>(section.boundaries[boundary].condition)) {
        throw InvalidInput(item.name, "is open to '" + open->boundary + "', which is a cut-off");
      }
    }
  }
  for (const auto& boundary : section.boundaries) {
    check_side(boundary);
  }
}

}  // namespace section_kernel
}  // namespace dewgap
