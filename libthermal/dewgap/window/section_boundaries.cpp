// Which boundary each part of the outline belongs to: section_outline_kernel.hpp.
#include <algorithm>
#include <cmath>

#include "dewgap/errors.hpp"
#include "dewgap/window/section_checks_kernel.hpp"
#include "dewgap/window/section_outline_kernel.hpp"
#include "dewgap/window/section_words_kernel.hpp"

namespace dewgap::section_kernel {
namespace {

using Claims = std::vector<std::vector<EdgePart>>;

bool same(double a_m, double b_m) {
  return std::abs(a_m - b_m) <= same_line_m;
}

/// How far along the edge a point lies; nothing when it is not on it.
std::optional<double> along(const OutlineEdge& edge, const SectionPoint& point) {
  const bool on_line = edge.along_x() ? same(point.y_m, edge.from.y_m) : same(point.x_m, edge.from.x_m);
  const double forward = edge.along_x() ? (point.x_m - edge.from.x_m) / (edge.to.x_m - edge.from.x_m)
                                        : (point.y_m - edge.from.y_m) / (edge.to.y_m - edge.from.y_m);
  const double along_m = forward * edge.length_m();
  if (!on_line || along_m < -same_line_m || along_m > edge.length_m() + same_line_m) {
    return std::nullopt;
  }
  return std::clamp(along_m, 0.0, edge.length_m());
}

/// Claims edges for one boundary; says whether a choice found any.
class Claimant {
 public:
  Claimant(const std::vector<OutlineEdge>& outline, std::size_t boundary, const std::string& name,
           Claims& claims)
      : outline_(outline), boundary_(boundary), name_(name), claims_(claims) {}

  void operator()(const EdgesOnX& line) {
    on_line(
        line.at_m,
        [](const OutlineEdge& edge) { return edge.along_x() ? std::nullopt : std::optional(edge.from.x_m); },
        "x " + millimetres(line.at_m) + " mm");
  }
  void operator()(const EdgesOnY& line) {
    on_line(
        line.at_m,
        [](const OutlineEdge& edge) { return edge.along_x() ? std::optional(edge.from.y_m) : std::nullopt; },
        "y " + millimetres(line.at_m) + " mm");
  }

  void operator()(const EdgesBetween& straight) {
    const std::string where = "from " + place(straight.from) + " to " + place(straight.to);
    const bool along_x = same(straight.from.y_m, straight.to.y_m);
    if (along_x == same(straight.from.x_m, straight.to.x_m)) {
      throw InvalidInput(name_,
                         "chooses edges on a line " + where + " that lies neither along x nor along y");
    }
    bool found = false;
    for (std::size_t k = 0; k < outline_.size(); ++k) {
      const OutlineEdge& edge = outline_[k];
      const bool on_line =
          along_x ? same(edge.from.y_m, straight.from.y_m) : same(edge.from.x_m, straight.from.x_m);
      if (edge.along_x() == along_x && on_line) {
        const double origin_m = along_x ? edge.from.x_m : edge.from.y_m;
        const double way = (along_x ? edge.to.x_m : edge.to.y_m) > origin_m ? 1.0 : -1.0;
        const double a_m = way * ((along_x ? straight.from.x_m : straight.from.y_m) - origin_m);
        const double b_m = way * ((along_x ? straight.to.x_m : straight.to.y_m) - origin_m);
        found = claim(k, std::max(0.0, std::min(a_m, b_m)), std::min(edge.length_m(), std::max(a_m, b_m))) ||
                found;
      }
    }
    require_found(found, where);
  }

  void operator()(const EdgesAlong& walk) {
    const Start start = start_of(walk.from);
    std::size_t edge = start.edge;
    double begin_m = start.along_m;
    for (std::size_t steps = 0; steps <= outline_.size(); ++steps) {
      const std::optional<double> end_m = along(outline_[edge], walk.to);
      if (end_m && *end_m > begin_m + same_line_m) {
        claim(edge, begin_m, *end_m);
        return;
      }
      claim(edge, begin_m, outline_[edge].length_m());
      edge = outline_[edge].next;
      begin_m = 0.0;
    }
    throw InvalidInput(
        name_, "walks the outline from " + place(walk.from) + " and does not come to " + place(walk.to));
  }

 private:
  /// The edge that leaves a point, or holds it, and the distance along it.
  struct Start {
    std::size_t edge;
    double along_m;
  };
  Start start_of(const SectionPoint& point) const {
    for (std::size_t edge = 0; edge < outline_.size(); ++edge) {
      const std::optional<double> begin_m = along(outline_[edge], point);
      if (begin_m && *begin_m < outline_[edge].length_m() - same_line_m) {
        return {edge, *begin_m};
      }
    }
    throw InvalidInput(name_, "walks from " + place(point) + ", which is not on the outline");
  }

  template <class Line>
  void on_line(double at_m, Line&& line_of, const std::string& where) {
    bool found = false;
    for (std::size_t k = 0; k < outline_.size(); ++k) {
      const std::optional<double> line_m = line_of(outline_[k]);
      found = (line_m && same(*line_m, at_m) && claim(k, 0.0, outline_[k].length_m())) || found;
    }
    require_found(found, "on " + where);
  }

  void require_found(bool found, const std::string& where) const {
    if (!found) {
      throw InvalidInput(name_, "chooses outer edges " + where + ", where there are none");
    }
  }

  bool claim(std::size_t edge, double from_m, double to_m) {
    if (!(to_m - from_m > same_line_m)) {
      return false;
    }
    claims_[edge].push_back({from_m, to_m, boundary_});
    return true;
  }

  const std::vector<OutlineEdge>& outline_;
  std::size_t boundary_;
  const std::string& name_;
  Claims& claims_;
};

/// Walls of an OpenFill belong to the boundary that it names.
void claim_open_walls(const Section& section, const Plan& plan, const std::vector<OutlineEdge>& outline,
                      Claims& claims) {
  for (std::size_t k = 0; k < outline.size(); ++k) {
    const OutlineEdge& edge = outline[k];
    const auto& lines_m = edge.along_x() ? plan.x_m : plan.y_m;
    const bool forward = edge.along_x() ? edge.to.x_m > edge.from.x_m : edge.to.y_m > edge.from.y_m;
    const double origin_m = edge.along_x() ? edge.from.x_m : edge.from.y_m;
    const std::size_t line =
        line_at(edge.along_x() ? plan.y_m : plan.x_m, edge.along_x() ? edge.from.y_m : edge.from.x_m);
    // on the right hand: below a step east, right of a step north
    const bool beyond = edge.along_x() ? !forward : forward;
    if (!beyond && line == 0) {
      continue;
    }
    const std::size_t across = beyond ? line : line - 1;
    if (across >= (edge.along_x() ? plan.rows() : plan.columns())) {
      continue;
    }
    const std::size_t one = line_at(lines_m, origin_m);
    const std::size_t other = line_at(lines_m, edge.along_x() ? edge.to.x_m : edge.to.y_m);
    for (std::size_t part = std::min(one, other); part < std::max(one, other); ++part) {
      const ItemPlace item = edge.along_x() ? plan.item_of(part, across) : plan.item_of(across, part);
      if (item && plan.open[*item]) {
        const auto& fill = std::get<OpenFill>(section.items[*item].fill);
        const double a_m = std::abs(lines_m[part] - origin_m);
        const double b_m = std::abs(lines_m[part + 1] - origin_m);
        claims[k].push_back({std::min(a_m, b_m), std::max(a_m, b_m),
                             boundary_named(section, fill.boundary, section.items[*item].name)});
      }
    }
  }
}

/// The one boundary that claims the middle of a part.
std::size_t claimant_of(const Section& section, const OutlineEdge& edge, const std::vector<EdgePart>& claims,
                        double from_m, double to_m) {
  const std::string where = "from " + place(edge.at(from_m)) + " to " + place(edge.at(to_m));
  std::optional<std::size_t> claimant;
  const double middle_m = 0.5 * (from_m + to_m);
  for (const auto& part : claims) {
    if (part.from_m < middle_m && middle_m < part.to_m) {
      if (claimant && *claimant != part.boundary) {
        throw InvalidInput(
            section.boundaries[part.boundary].name,
            "and '" + section.boundaries[*claimant].name + "' both take the outer edge " + where);
      }
      claimant = part.boundary;
    }
  }
  if (!claimant) {
    throw InvalidInput("boundaries", "none takes the outer edge " + where);
  }
  return *claimant;
}

}  // namespace

std::vector<std::vector<EdgePart>> boundaries_along(const Section& section, const Plan& plan,
                                                    const std::vector<OutlineEdge>& outline) {
  Claims claims(outline.size());
  claim_open_walls(section, plan, outline, claims);
  for (std::size_t k = 0; k < section.boundaries.size(); ++k) {
    Claimant claimant(outline, k, section.boundaries[k].name, claims);
    for (const auto& choice : section.boundaries[k].edges) {
      std::visit(claimant, choice);
    }
  }
  Claims parts(outline.size());
  for (std::size_t k = 0; k < outline.size(); ++k) {
    std::vector<double> cuts_m{0.0, outline[k].length_m()};
    for (const auto& claim : claims[k]) {
      cuts_m.insert(cuts_m.end(), {claim.from_m, claim.to_m});
    }
    std::sort(cuts_m.begin(), cuts_m.end());
    double from_m = 0.0;
    for (const double to_m : cuts_m) {
      if (to_m - from_m > same_line_m) {
        const std::size_t boundary = claimant_of(section, outline[k], claims[k], from_m, to_m);
        if (!parts[k].empty() && parts[k].back().boundary == boundary) {
          parts[k].back().to_m = to_m;
        } else {
          parts[k].push_back({from_m, to_m, boundary});
        }
        from_m = to_m;
      }
    }
  }
  return parts;
}

}  // namespace dewgap::section_kernel
