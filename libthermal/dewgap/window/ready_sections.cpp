#include "dewgap/window/ready_sections.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/window/ready_sections_kernel.hpp"

namespace dewgap {
namespace ready_kernel {
namespace {

constexpr double same_m = 1e-9;

bool straight(const SectionPoint& a, const SectionPoint& b, const SectionPoint& c) {
  const auto same = [](double p, double q, double r) {
    return std::abs(p - q) < same_m && std::abs(q - r) < same_m;
  };
  return same(a.x_m, b.x_m, c.x_m) || same(a.y_m, b.y_m, c.y_m);
}

}  // namespace

std::vector<SectionPoint> rectangle(double left_m, double right_m, double low_m, double high_m) {
  return {{left_m, low_m}, {right_m, low_m}, {right_m, high_m}, {left_m, high_m}};
}

std::vector<SectionPoint> tidy(const std::vector<SectionPoint>& polygon) {
  std::vector<SectionPoint> kept;
  for (const auto& point : polygon) {
    const bool repeated = !kept.empty() && std::abs(kept.back().x_m - point.x_m) < same_m &&
                          std::abs(kept.back().y_m - point.y_m) < same_m;
    if (!repeated) {
      kept.push_back(point);
    }
  }
  std::vector<SectionPoint> corners;
  for (std::size_t i = 0; i < kept.size(); ++i) {
    const auto& before = kept[(i + kept.size() - 1) % kept.size()];
    if (!straight(before, kept[i], kept[(i + 1) % kept.size()])) {
      corners.push_back(kept[i]);
    }
  }
  return corners;
}

void require_zero_or_step(double value_m, PermittedRange permitted, std::string_view field) {
  require_in_range(value_m, permitted, field, "m");
  if (value_m > 0.0 && value_m < least_step_m) {
    throw InvalidInput(field, value_m, {least_step_m, permitted.max}, "m (or 0)");
  }
}

DrawnMember drawn(const ReadyMember& member, const OldGlass& glass) {
  require_in_range(glass.thickness_m, ready_range::glass_thickness_m, "glass.thickness_m", "m");
  require_in_range(glass.visible_m, ready_range::visible_glass_m, "glass.visible_m", "m");
  return std::visit([&](const auto& kind) { return drawn(kind, glass); }, member);
}

}  // namespace ready_kernel

namespace {

using namespace ready_kernel;

/// Where the outline turns from one boundary to the next.
struct Outline {
  SectionPoint foot_out;
  SectionPoint foot_in;
  SectionPoint top_in;
  SectionPoint top_out;
};

std::vector<SectionBoundary> boundaries(const ReadyClimate& climate, const Outline& outline) {
  return {{std::string(named::room),
           AirSide{AirRole::room, climate.room_C, climate.rsi_m2K_W, climate.corners},
           {EdgesAlong{outline.foot_in, outline.top_in}}},
          {std::string(named::outdoors),
           AirSide{AirRole::outdoors, climate.outdoors_C, climate.rse_m2K_W, {}},
           {EdgesAlong{outline.top_out, outline.foot_out}}},
          {"cut-offs", CutOff{}, {EdgesOnY{outline.foot_out.y_m}, EdgesOnY{outline.top_in.y_m}}}};
}

SectionItem pane(const DrawnMember& member, const OldGlass& glass, ReadyFilling filling) {
  const bool as_panel = filling == ReadyFilling::panel;
  return {std::string(as_panel ? named::panel : named::old_glass),
          SolidFill{as_panel ? best_W_mK(BuildingKind::insulating_panel) : glass.conductivity_W_mK},
          rectangle(member.glass_out_m, member.glass_out_m + glass.thickness_m, member.glass_foot_m,
                    member.sight_m + glass.visible_m),
          {}};
}

void append(std::vector<SectionItem>& items, const std::vector<SectionItem>& more) {
  items.insert(items.end(), more.begin(), more.end());
}

}  // namespace

Section section_of(const ReadySection& ready, ReadyFilling filling) {
  const DrawnMember member = drawn(ready.member, ready.glass);
  Section section;
  Outline outline;
  std::optional<DrawnWall> wall;
  if (ready.reveal && filling != ReadyFilling::panel) {
    wall = drawn_wall(*ready.reveal, member);
    section.items = wall->items;
  }
  append(section.items, member.items);
  section.items.push_back(pane(member, ready.glass, filling));
  double room_face_m = member.glass_out_m + ready.glass.thickness_m;
  if (filling == ReadyFilling::glass_and_sheet) {
    if (!ready.sheet) {
      throw InvalidInput("sheet", "is asked for, and the section has none");
    }
    const DrawnSheet sheet = drawn_sheet(*ready.sheet, member, ready.glass, wall);
    append(section.items, sheet.items);
    room_face_m = sheet.room_face_m;
  }
  const double top_m = member.sight_m + ready.glass.visible_m;
  const double low_m = wall ? wall->low_m : 0.0;
  outline = {{wall ? wall->out_m : member.foot_out_m, low_m},
             {wall ? wall->in_m : member.foot_in_m, low_m},
             {room_face_m, top_m},
             {member.glass_out_m, top_m}};
  section.boundaries = boundaries(ready.climate, outline);
  return section;
}

double frame_length_m(const ReadySection& ready) {
  return drawn(ready.member, ready.glass).sight_m;
}

}  // namespace dewgap
