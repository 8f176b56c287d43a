// Steel sections as drawn: ready_sections_kernel.hpp.
#include "dewgap/window/ready_sections_kernel.hpp"

namespace dewgap::ready_kernel {
namespace {

void check(const SteelCasement& steel, const OldGlass& glass) {
  require_in_range(steel.depth_m, ready_range::steel_depth_m, "steel.depth_m", "m");
  require_in_range(steel.upper_leg_m, ready_range::steel_leg_m, "steel.upper_leg_m", "m");
  require_in_range(steel.lower_leg_m, ready_range::steel_leg_m, "steel.lower_leg_m", "m");
  require_in_range(steel.thickness_m, ready_range::steel_thickness_m, "steel.thickness_m", "m");
  require_in_range(steel.bedding_m, ready_range::bedding_m, "steel.bedding_m", "m");
  if (steel.bedding_m > steel.upper_leg_m - least_step_m) {
    throw InvalidInput("steel.bedding_m",
                       "lifts the glass over the sight line; it has to be at least 1 mm "
                       "less than the upper leg");
  }
  if (steel.depth_m - steel.thickness_m - glass.thickness_m < least_putty_m) {
    throw InvalidInput("steel.depth_m",
                       "leaves less than 3 mm for the putty: it has to hold putty, glass and the upper leg");
  }
}

void check(const TimberSubFrame& timber, const SteelCasement& steel) {
  require_in_range(timber.depth_m, ready_range::timber_depth_m, "sub_frame.depth_m", "m");
  require_in_range(timber.face_m, ready_range::timber_face_m, "sub_frame.face_m", "m");
  require_zero_or_step(timber.set_back_m, ready_range::set_back_m, "sub_frame.set_back_m");
  const double left_m = timber.depth_m - timber.set_back_m - steel.depth_m;
  if (left_m < 0.0 || (left_m > 0.0 && left_m < least_step_m)) {
    throw InvalidInput("sub_frame.depth_m",
                       "has to hold the steel's depth and its set-back, with nothing or "
                       "at least 1 mm left over outdoors");
  }
  if (timber.face_m < steel.lower_leg_m + least_step_m) {
    throw InvalidInput("sub_frame.face_m", "is not higher than the steel's lower leg, which is let into it");
  }
}

/// Z, its outdoor face at `left_m`, the web's underside at `web_m`.
std::vector<SectionPoint> steel_polygon(const SteelCasement& steel, double left_m, double web_m) {
  const double right_m = left_m + steel.depth_m;
  const double web_top_m = web_m + steel.thickness_m;
  return {
      {left_m, web_m - steel.lower_leg_m},      {left_m + steel.thickness_m, web_m - steel.lower_leg_m},
      {left_m + steel.thickness_m, web_m},      {right_m, web_m},
      {right_m, web_top_m + steel.upper_leg_m}, {right_m - steel.thickness_m, web_top_m + steel.upper_leg_m},
      {right_m - steel.thickness_m, web_top_m}, {left_m, web_top_m}};
}

/// What the steel stands on; its room face and how far the steel stands behind it.
void add_foot(DrawnMember& member, const SteelCasement& steel) {
  if (steel.sub_frame) {
    const TimberSubFrame& timber = *steel.sub_frame;
    member.foot_in_m = timber.depth_m;
    member.frame = Seat{timber.depth_m, 0.0, timber.face_m};
    member.items.push_back(
        {"sub-frame", SolidFill{timber.timber_W_mK}, rectangle(0.0, timber.depth_m, 0.0, timber.face_m), {}});
    return;
  }
  member.foot_in_m = steel.depth_m;
  member.items.push_back(
      {"mortar", SolidFill{steel.mortar_W_mK}, rectangle(0.0, steel.depth_m, 0.0, steel.lower_leg_m), {}});
}

}  // namespace

DrawnMember drawn(const SteelCasement& steel, const OldGlass& glass) {
  check(steel, glass);
  if (steel.sub_frame) {
    check(*steel.sub_frame, steel);
  }
  DrawnMember member;
  add_foot(member, steel);
  const double right_m = member.foot_in_m - (steel.sub_frame ? steel.sub_frame->set_back_m : 0.0);
  const double left_m = std::max(0.0, right_m - steel.depth_m);
  const double web_m = steel.sub_frame ? steel.sub_frame->face_m : steel.lower_leg_m;
  const double floor_m = web_m + steel.thickness_m;
  const double glass_in_m = right_m - steel.thickness_m;
  member.sight_m = floor_m + steel.upper_leg_m;
  member.glass_out_m = glass_in_m - glass.thickness_m;
  member.glass_foot_m = floor_m + steel.bedding_m;
  member.sash = {right_m, web_m, member.sight_m};
  const std::string foot = member.items.back().name;
  member.items.push_back({"steel", SolidFill{steel.steel_W_mK}, steel_polygon(steel, left_m, web_m), {foot}});
  member.items.push_back(
      {"putty",
       SolidFill{steel.putty_W_mK},
       putty_polygon(left_m, member.glass_out_m, glass_in_m, floor_m, member.glass_foot_m, member.sight_m),
       {}});
  member.room_profile = {
      {member.foot_in_m, 0.0}, {member.foot_in_m, web_m}, {right_m, web_m}, {right_m, member.sight_m}};
  return member;
}

}  // namespace dewgap::ready_kernel
