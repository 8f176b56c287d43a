// The outline of what is solved: its straight edges in walking order, and which boundary each part belongs
// to.
#pragma once

#include <vector>

#include "dewgap/window/section_plan_kernel.hpp"

namespace dewgap::section_kernel {

/// A straight edge from corner to corner, walked with the section on the left.
struct OutlineEdge {
  SectionPoint from;
  SectionPoint to;
  std::size_t previous = 0;  ///< in walking order
  std::size_t next = 0;

  double length_m() const;
  /// Point so far along the edge.
  SectionPoint at(double along_m) const;
  bool along_x() const { return from.y_m == to.y_m; }
};

/// All loops of the outline; walls of an OpenFill are part of it. Loops that touch at a point stay apart.
std::vector<OutlineEdge> outline_of(const Plan& plan);

/// A part of an edge that a boundary claims.
struct EdgePart {
  double from_m = 0.0;
  double to_m = 0.0;
  std::size_t boundary = 0;
};

/// Parts of each edge in order, each of one boundary. Throws InvalidInput for an edge that none or two name,
/// and for a choice of edges that finds none.
std::vector<std::vector<EdgePart>> boundaries_along(const Section& section, const Plan& plan,
                                                    const std::vector<OutlineEdge>& outline);

}  // namespace dewgap::section_kernel
