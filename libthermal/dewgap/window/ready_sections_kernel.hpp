// A member as drawn, and what the sheet needs to know of it.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "dewgap/window/ready_sections.hpp"

namespace dewgap::ready_kernel {

/// Names of items and boundaries, as a person reads them.
namespace named {
inline constexpr std::string_view old_glass = "old glass";
inline constexpr std::string_view panel = "panel";
inline constexpr std::string_view gap = "gap";
inline constexpr std::string_view gap_at_member = "gap below the sight line";
inline constexpr std::string_view sheet = "sheet";
inline constexpr std::string_view tape = "tape";
inline constexpr std::string_view joint = "joint";
inline constexpr std::string_view tape_break = "break in the tape";
inline constexpr std::string_view batten = "batten";
inline constexpr std::string_view masonry = "masonry";
inline constexpr std::string_view plaster = "plaster";
inline constexpr std::string_view room = "room";
inline constexpr std::string_view outdoors = "outdoors";
}  // namespace named

/// Offsets of a size's permitted 0 begin again here.
inline constexpr double least_step_m = 0.001;
/// Least width of the putty before the glass.
inline constexpr double least_putty_m = 0.003;
/// Slits of air, ISO 10077-2 6.4 (from memory): up to the one still, up to the other slightly ventilated.
inline constexpr double still_slit_m = 0.002;
inline constexpr double slight_slit_m = 0.010;

/// An upright face towards the room that a tape can sit on.
struct Seat {
  double x_m = 0.0;
  double low_m = 0.0;
  double high_m = 0.0;
};

/// The glass's place is not among the items; the putty is, with the bed under the glass.
struct DrawnMember {
  std::vector<SectionItem> items;
  double foot_out_m = 0.0;    ///< x of the foot on y = 0, outdoors
  double foot_in_m = 0.0;     ///< and on the room side
  double sight_m = 0.0;       ///< y
  double glass_out_m = 0.0;   ///< x
  double glass_foot_m = 0.0;  ///< y
  Seat sash;
  std::optional<Seat> frame;
  /// Faces to the room from (foot_in, 0) up to the room side's edge of the sight line; y never falls, x never
  /// grows.
  std::vector<SectionPoint> room_profile;
};

DrawnMember drawn(const TimberSash& sash, const OldGlass& glass);
DrawnMember drawn(const SashInFrame& window, const OldGlass& glass);
DrawnMember drawn(const SteelCasement& steel, const OldGlass& glass);
DrawnMember drawn(const ReadyMember& member, const OldGlass& glass);

/// Sash with the room side's corner of its foot there, onto the items; glass and seat set.
void add_sash(DrawnMember& member, const TimberSash& sash, const OldGlass& glass, SectionPoint foot);

/// Putty before and under the glass: three steps of equal width, from the bed's floor to the sight line.
std::vector<SectionPoint> putty_polygon(double left_m, double glass_out_m, double glass_in_m, double floor_m,
                                        double glass_foot_m, double sight_m);

/// Wall under the member: ends, and how far down it is drawn.
struct DrawnWall {
  std::vector<SectionItem> items;
  double out_m = 0.0;
  double in_m = 0.0;  ///< the plaster's face
  double low_m = 0.0;
};
DrawnWall drawn_wall(const MasonryReveal& reveal, const DrawnMember& member);

/// Of the wall away from the window, with the films of the climate. Needs a reveal.
double wall_u_value_W_m2K(const ReadySection& ready);

struct DrawnSheet {
  std::vector<SectionItem> items;
  double room_face_m = 0.0;  ///< x
};
DrawnSheet drawn_sheet(const ReadySheet& sheet, const DrawnMember& member, const OldGlass& glass,
                       const std::optional<DrawnWall>& wall);

/// A rectangle's corners, anticlockwise.
std::vector<SectionPoint> rectangle(double left_m, double right_m, double low_m, double high_m);
/// Without points repeated or in the middle of an edge.
std::vector<SectionPoint> tidy(const std::vector<SectionPoint>& polygon);

/// Throws InvalidInput for a size between 0 and least_step_m.
void require_zero_or_step(double value_m, PermittedRange permitted, std::string_view field);

}  // namespace dewgap::ready_kernel
