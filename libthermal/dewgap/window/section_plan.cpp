// The outline's faces, with the resistances of corners, on the drawing: section_plan_kernel.hpp.
#include "dewgap/window/section_plan_kernel.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/errors.hpp"
#include "dewgap/window/section_checks_kernel.hpp"
#include "dewgap/window/section_flood_kernel.hpp"
#include "dewgap/window/section_outline_kernel.hpp"
#include "dewgap/window/section_words_kernel.hpp"

namespace dewgap::section_kernel {
namespace {

using EdgeParts = std::vector<std::vector<EdgePart>>;

const AirSide* air_of(const Section& section, std::size_t boundary) {
  return std::get_if<AirSide>(&section.boundaries[boundary].condition);
}

/// How far the corner's film reaches from the end of an edge along it and the next; 0 where none does.
/// ISO 10077-2 Annex B (from memory): the depth of the step, at most 30 mm.
double reach_after_m(const Section& section, const std::vector<OutlineEdge>& outline, const EdgeParts& parts,
                     std::size_t k) {
  const OutlineEdge& edge = outline[k];
  const OutlineEdge& next = outline[edge.next];
  const double turn = (edge.to.x_m - edge.from.x_m) * (next.to.y_m - next.from.y_m) -
                      (edge.to.y_m - edge.from.y_m) * (next.to.x_m - next.from.x_m);
  const std::size_t boundary = parts[k].back().boundary;
  const AirSide* air = air_of(section, boundary);
  const bool one_side = parts[edge.next].front().boundary == boundary;
  if (turn >= 0.0 || !one_side || air == nullptr || !air->corners) {  // a left turn is no re-entrant corner
    return 0.0;
  }
  return std::min({edge.length_m(), next.length_m(), air->corners->reach_m});
}

/// A distance along the edge, moved to a line of the drawing closer than the least width.
double snapped_m(const Plan& plan, const OutlineEdge& edge, double along_m) {
  const auto& lines_m = edge.along_x() ? plan.x_m : plan.y_m;
  const SectionPoint point = edge.at(along_m);
  const double at_m = edge.along_x() ? point.x_m : point.y_m;
  for (const double line_m : lines_m) {
    if (std::abs(line_m - at_m) < section_least_width_m) {
      return std::abs(line_m - (edge.along_x() ? edge.from.x_m : edge.from.y_m));
    }
  }
  return along_m;
}

/// Faces of one edge: its parts, cut where the films of the corners at both ends end.
std::vector<SectionFace> faces_of(const Section& section, const Plan& plan, const OutlineEdge& edge,
                                  const std::vector<EdgePart>& parts, double reach_before_m,
                                  double reach_behind_m) {
  std::vector<SectionFace> faces;
  const double before_m = snapped_m(plan, edge, reach_before_m);
  const double behind_m = snapped_m(plan, edge, edge.length_m() - reach_behind_m);
  for (const auto& part : parts) {
    std::vector<double> cuts_m{part.to_m};
    for (const double cut_m : {before_m, behind_m}) {
      if (cut_m > part.from_m + same_line_m && cut_m < part.to_m - same_line_m) {
        cuts_m.push_back(cut_m);
      }
    }
    std::sort(cuts_m.begin(), cuts_m.end());
    double from_m = part.from_m;
    const AirSide* air = air_of(section, part.boundary);
    for (const double to_m : cuts_m) {
      const double middle_m = 0.5 * (from_m + to_m);
      const bool in_corner = (reach_before_m > 0.0 && middle_m < before_m && &part == &parts.front()) ||
                             (reach_behind_m > 0.0 && middle_m > behind_m && &part == &parts.back());
      const double resistance_m2K_W = air == nullptr ? 0.0
                                      : in_corner    ? air->corners->surface_resistance_m2K_W
                                                     : air->surface_resistance_m2K_W;
      if (to_m - from_m > same_line_m) {
        faces.push_back({part.boundary, edge.at(from_m), edge.at(to_m), resistance_m2K_W});
      }
      from_m = to_m;
    }
  }
  return faces;
}

/// Lines through the ends of the boundaries' parts; too near to others is an error.
Plan with_part_ends(const Section& section, Plan plan, const std::vector<OutlineEdge>& outline,
                    const EdgeParts& parts) {
  for (std::size_t k = 0; k < outline.size(); ++k) {
    for (const auto& part : parts[k]) {
      const SectionPoint end = outline[k].at(part.to_m);
      const double at_m = outline[k].along_x() ? end.x_m : end.y_m;
      for (const double line_m : outline[k].along_x() ? plan.x_m : plan.y_m) {
        const double apart_m = std::abs(line_m - at_m);
        if (apart_m > same_line_m && apart_m < section_least_width_m) {
          throw InvalidInput(section.boundaries[part.boundary].name,
                             "ends at " + place(end) + ", " + millimetres(apart_m) +
                                 " mm from a line of the drawing; permitted is 0 or at least " +
                                 millimetres(section_least_width_m) + " mm");
        }
      }
      plan = with_lines(plan, {end.x_m}, {end.y_m});
    }
  }
  return plan;
}

/// Blocks on the left of a face.
std::vector<std::size_t> blocks_behind(const Plan& plan, const SectionFace& face) {
  const bool along_x = face.from.y_m == face.to.y_m;
  std::vector<std::size_t> blocks;
  const auto& lines_m = along_x ? plan.x_m : plan.y_m;
  const std::size_t one = line_at(lines_m, along_x ? face.from.x_m : face.from.y_m);
  const std::size_t other = line_at(lines_m, along_x ? face.to.x_m : face.to.y_m);
  const std::size_t line = line_at(along_x ? plan.y_m : plan.x_m, along_x ? face.from.y_m : face.from.x_m);
  const std::size_t across = (along_x == (one < other)) ? line : line - 1;
  for (std::size_t part = std::min(one, other); part < std::max(one, other); ++part) {
    blocks.push_back(along_x ? across * plan.columns() + part : part * plan.columns() + across);
  }
  return blocks;
}

/// Every part of the section hangs together with a face of an air side.
void check_warmed(const Section& section, const Plan& plan) {
  const auto solid = [&](std::size_t block) {
    return plan.solid(block % plan.columns(), block / plan.columns());
  };
  std::vector<std::size_t> behind_air;
  for (const auto& face : plan.faces) {
    if (air_of(section, face.boundary) != nullptr) {
      const auto blocks = blocks_behind(plan, face);
      behind_air.insert(behind_air.end(), blocks.begin(), blocks.end());
    }
  }
  const std::vector<bool> warmed = reached_from(plan, behind_air, solid);
  for (std::size_t block = 0; block < plan.item.size(); ++block) {
    if (!warmed[block] && solid(block)) {
      throw InvalidInput(section.items[*plan.item[block]].name,
                         "belongs to a part of the section that no air warms or cools");
    }
  }
}

}  // namespace

Plan plan_of(const Section& section) {
  check_values(section);
  Plan plan = draw_items(section);
  const std::vector<OutlineEdge> outline = outline_of(plan);
  if (outline.empty()) {
    throw InvalidInput("items", "leave nothing to solve");
  }
  const EdgeParts parts = boundaries_along(section, plan, outline);
  plan = with_part_ends(section, std::move(plan), outline, parts);
  std::vector<double> reach_m(outline.size());
  for (std::size_t k = 0; k < outline.size(); ++k) {
    reach_m[k] = reach_after_m(section, outline, parts, k);
  }
  for (std::size_t k = 0; k < outline.size(); ++k) {
    for (const auto& face :
         faces_of(section, plan, outline[k], parts[k], reach_m[outline[k].previous], reach_m[k])) {
      plan.faces.push_back(face);
      plan = with_lines(plan, {face.to.x_m}, {face.to.y_m});
    }
  }
  check_warmed(section, plan);
  return plan;
}

}  // namespace dewgap::section_kernel
