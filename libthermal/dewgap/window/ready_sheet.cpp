// Sheet, tape, batten and gap as drawn: ready_sections_kernel.hpp.
#include <cmath>

#include "dewgap/window/ready_sections_kernel.hpp"

namespace dewgap::ready_kernel {
namespace {

constexpr double same_m = 1e-7;

void check(const ReadySheet& sheet) {
  require_in_range(sheet.thickness_m, ready_range::sheet_thickness_m, "sheet.thickness_m", "m");
  require_in_range(sheet.tape_thickness_m, ready_range::tape_thickness_m, "sheet.tape_thickness_m", "m");
  require_in_range(sheet.tape_width_m, ready_range::tape_width_m, "sheet.tape_width_m", "m");
  require_in_range(sheet.overlap_m, ready_range::overlap_m, "sheet.overlap_m", "m");
  require_in_range(sheet.gap_conductance_W_m2K, {0.01, 1000.0}, "sheet.gap_conductance_W_m2K", "W/(m2 K)");
  if (sheet.tape_width_m > sheet.overlap_m) {
    throw InvalidInput("sheet.tape_width_m", sheet.tape_width_m, {0.0, sheet.overlap_m}, "m (the overlap)");
  }
}

/// The batten's faces on the reveal.
struct DrawnBatten {
  double left_m = 0.0;
  Seat seat;
};

DrawnBatten batten_faces(const OnBatten& batten, const DrawnMember& member, const OldGlass& glass,
                         const DrawnWall& wall) {
  require_in_range(batten.width_m, ready_range::batten_m, "batten.width_m", "m");
  require_in_range(batten.depth_m, ready_range::batten_m, "batten.depth_m", "m");
  require_in_range(batten.glass_to_fixing_face_m, ready_range::glass_to_fixing_face_m,
                   "batten.glass_to_fixing_face_m", "m");
  const double right_m = member.glass_out_m + glass.thickness_m + batten.glass_to_fixing_face_m;
  const double free_m = right_m - batten.depth_m - member.foot_in_m;
  if (free_m < -same_m) {
    throw InvalidInput("batten.glass_to_fixing_face_m",
                       "puts the batten into the member; it has to hold the distance from the glass to the "
                       "member's room face and the batten's depth");
  }
  if (free_m > same_m && free_m < least_step_m) {
    throw InvalidInput("batten.glass_to_fixing_face_m",
                       "leaves less than 1 mm between member and batten; none, or more, can be drawn");
  }
  if (right_m > wall.in_m + same_m) {
    throw InvalidInput("batten.glass_to_fixing_face_m", "puts the batten beyond the reveal's end");
  }
  if (batten.width_m > member.sight_m - least_step_m) {
    throw InvalidInput("batten.width_m", "stands over the sight line; it has to end at least 1 mm below");
  }
  return {free_m > same_m ? right_m - batten.depth_m : member.foot_in_m, {right_m, 0.0, batten.width_m}};
}

Seat seat_on(const SheetPlace& place, const DrawnMember& member, const OldGlass& glass,
             const std::optional<DrawnWall>& wall) {
  if (std::holds_alternative<OnSash>(place)) {
    return member.sash;
  }
  if (std::holds_alternative<OnFrame>(place)) {
    if (!member.frame) {
      throw InvalidInput("sheet.place", "is on the frame, and the member has none");
    }
    return *member.frame;
  }
  if (!wall) {
    throw InvalidInput("sheet.place", "is on a batten in the reveal, and no reveal is given");
  }
  return batten_faces(std::get<OnBatten>(place), member, glass, *wall).seat;
}

/// The gap between the member's faces and the sheet, up to the sight line.
std::vector<SectionPoint> gap_below(const std::vector<SectionPoint>& faces, const Seat& seat,
                                    double tape_top_m, double sheet_m, double sight_m) {
  std::vector<SectionPoint> polygon{{sheet_m, tape_top_m}, {seat.x_m, tape_top_m}};
  for (const auto& point : faces) {
    if (point.y_m > tape_top_m - same_m || point.x_m < seat.x_m - same_m) {
      polygon.push_back(point);
    }
  }
  polygon.push_back({sheet_m, sight_m});
  return tidy(polygon);
}

/// Faces from the batten's top over the reveal and up the member.
std::vector<SectionPoint> faces_behind(const DrawnBatten& batten, const DrawnMember& member) {
  std::vector<SectionPoint> faces{{batten.seat.x_m, batten.seat.high_m}, {batten.left_m, batten.seat.high_m}};
  if (batten.left_m > member.foot_in_m + same_m) {
    faces.insert(faces.end(), {{batten.left_m, 0.0}, member.room_profile.front()});
  }
  faces.insert(faces.end(), member.room_profile.begin() + 1, member.room_profile.end());
  return faces;
}

SectionFill break_fill(double slit_m) {
  if (slit_m > slight_slit_m) {
    return OpenFill{std::string(named::room)};
  }
  return CavityFill{.ventilation = slit_m > still_slit_m ? CavityVentilation::slightly_ventilated
                                                         : CavityVentilation::unventilated};
}

SectionItem tape_item(const ReadySheet& sheet, const Seat& seat, double foot_m) {
  const auto place =
      rectangle(seat.x_m, seat.x_m + sheet.tape_thickness_m, foot_m, foot_m + sheet.tape_width_m);
  if (sheet.cut == TapeCut::vent_break) {
    return {std::string(named::tape_break), break_fill(sheet.tape_thickness_m), place, {}};
  }
  return {std::string(named::tape), SolidFill{sheet.tape_W_mK}, place, {}};
}

}  // namespace

DrawnSheet drawn_sheet(const ReadySheet& sheet, const DrawnMember& member, const OldGlass& glass,
                       const std::optional<DrawnWall>& wall) {
  check(sheet);
  const Seat seat = seat_on(sheet.place, member, glass, wall);
  if (sheet.overlap_m > seat.high_m - seat.low_m + same_m) {
    throw InvalidInput("sheet.overlap_m", sheet.overlap_m,
                       {ready_range::overlap_m.min, seat.high_m - seat.low_m}, "m (the face it is taped to)");
  }
  const double foot_m = std::max(seat.low_m, seat.high_m - sheet.overlap_m);
  const double tape_top_m = foot_m + sheet.tape_width_m;
  const double sheet_m = seat.x_m + sheet.tape_thickness_m;
  const double glass_in_m = member.glass_out_m + glass.thickness_m;
  const double top_m = member.sight_m + glass.visible_m;
  DrawnSheet drawn;
  drawn.room_face_m = sheet_m + sheet.thickness_m;
  std::vector<SectionPoint> faces = member.room_profile;
  if (const auto* on_batten = std::get_if<OnBatten>(&sheet.place)) {
    const DrawnBatten place = batten_faces(*on_batten, member, glass, *wall);
    drawn.items.push_back({std::string(named::batten),
                           SolidFill{on_batten->batten_W_mK},
                           rectangle(place.left_m, seat.x_m, 0.0, seat.high_m),
                           {}});
    faces = faces_behind(place, member);
  }
  drawn.items.push_back(tape_item(sheet, seat, foot_m));
  if (tape_top_m < member.sight_m - same_m) {
    drawn.items.push_back({std::string(named::gap_at_member),
                           CavityFill{},
                           gap_below(faces, seat, tape_top_m, sheet_m, member.sight_m),
                           {}});
  }
  drawn.items.push_back({std::string(named::gap),
                         GapFill{sheet.gap_conductance_W_m2K},
                         rectangle(glass_in_m, sheet_m, member.sight_m, top_m),
                         {}});
  drawn.items.push_back({std::string(named::sheet),
                         SolidFill{sheet.sheet_W_mK},
                         rectangle(sheet_m, drawn.room_face_m, foot_m, top_m),
                         {}});
  return drawn;
}

}  // namespace dewgap::ready_kernel
