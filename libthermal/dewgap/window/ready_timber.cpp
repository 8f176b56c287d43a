// Timber members as drawn: ready_sections_kernel.hpp.
#include "dewgap/window/ready_sections_kernel.hpp"

namespace dewgap::ready_kernel {
namespace {

void check(const TimberSash& sash, const OldGlass& glass) {
  require_in_range(sash.depth_m, ready_range::timber_depth_m, "sash.depth_m", "m");
  require_in_range(sash.face_m, ready_range::timber_face_m, "sash.face_m", "m");
  require_in_range(sash.rebate_m, ready_range::rebate_m, "sash.rebate_m", "m");
  require_in_range(sash.bedding_m, ready_range::bedding_m, "sash.bedding_m", "m");
  require_in_range(sash.glass_to_room_face_m, ready_range::glass_to_room_face_m, "sash.glass_to_room_face_m",
                   "m");
  if (sash.rebate_m > sash.face_m - least_step_m) {
    throw InvalidInput("sash.rebate_m", "is as high as the rail's face; it has to be at least 1 mm less");
  }
  if (sash.bedding_m > sash.rebate_m - least_step_m) {
    throw InvalidInput("sash.bedding_m",
                       "lifts the glass over the sight line; it has to be at least 1 mm "
                       "less than the rebate");
  }
  if (sash.depth_m - sash.glass_to_room_face_m - glass.thickness_m < least_putty_m) {
    throw InvalidInput("sash.depth_m",
                       "leaves less than 3 mm for the putty: it has to hold putty, glass and "
                       "the distance from the glass to the room face");
  }
}

void check(const SashInFrame& window) {
  require_in_range(window.frame_depth_m, ready_range::timber_depth_m, "frame_depth_m", "m");
  require_in_range(window.frame_face_m, ready_range::timber_face_m, "frame_face_m", "m");
  require_in_range(window.joint_m, ready_range::joint_m, "joint_m", "m");
  require_zero_or_step(window.set_back_m, ready_range::set_back_m, "set_back_m");
  require_in_range(window.stop_height_m, ready_range::stop_height_m, "stop_height_m", "m");
  if (window.set_back_m == 0.0) {
    return;  // no stop
  }
  if (window.set_back_m > window.frame_depth_m - 2.0 * least_step_m) {
    throw InvalidInput("set_back_m", "is as much as the frame's depth; it leaves nothing under the sash");
  }
  if (window.stop_height_m < window.joint_m + least_step_m) {
    throw InvalidInput("stop_height_m", "does not reach past the joint; it has to be at least 1 mm more");
  }
  if (window.stop_height_m > window.joint_m + window.sash.face_m - least_step_m) {
    throw InvalidInput("stop_height_m", "reaches over the sash; it has to end at least 1 mm below its top");
  }
}

CavityFill joint_air(double joint_m) {
  return {.ventilation = joint_m > still_slit_m ? CavityVentilation::slightly_ventilated
                                                : CavityVentilation::unventilated};
}

}  // namespace

std::vector<SectionPoint> putty_polygon(double left_m, double glass_out_m, double glass_in_m, double floor_m,
                                        double glass_foot_m, double sight_m) {
  constexpr int steps = 3;
  const double width_m = (glass_out_m - left_m) / steps;
  const double rise_m = (sight_m - glass_foot_m) / steps;
  std::vector<SectionPoint> polygon{
      {left_m, floor_m}, {glass_in_m, floor_m}, {glass_in_m, glass_foot_m}, {glass_out_m, glass_foot_m}};
  for (int step = steps; step > 0;
       --step) {  // towards outdoors, each half a rise below the slope's upper end
    const double top_m = glass_foot_m + (step - 0.5) * rise_m;
    polygon.push_back({polygon.back().x_m, top_m});
    polygon.push_back({step > 1 ? left_m + (step - 1) * width_m : left_m, top_m});
  }
  return polygon;
}

void add_sash(DrawnMember& member, const TimberSash& sash, const OldGlass& glass, SectionPoint foot) {
  const double right_m = foot.x_m;
  const double left_m = right_m - sash.depth_m;
  const double floor_m = foot.y_m + sash.face_m - sash.rebate_m;
  const double glass_in_m = right_m - sash.glass_to_room_face_m;
  member.sight_m = foot.y_m + sash.face_m;
  member.glass_out_m = glass_in_m - glass.thickness_m;
  member.glass_foot_m = floor_m + sash.bedding_m;
  member.sash = {right_m, foot.y_m, member.sight_m};
  member.items.push_back({"bottom rail",
                          SolidFill{sash.timber_W_mK},
                          {{left_m, foot.y_m},
                           {right_m, foot.y_m},
                           {right_m, member.sight_m},
                           {glass_in_m, member.sight_m},
                           {glass_in_m, floor_m},
                           {left_m, floor_m}},
                          {}});
  member.items.push_back(
      {"putty",
       SolidFill{sash.putty_W_mK},
       putty_polygon(left_m, member.glass_out_m, glass_in_m, floor_m, member.glass_foot_m, member.sight_m),
       {}});
}

DrawnMember drawn(const TimberSash& sash, const OldGlass& glass) {
  check(sash, glass);
  DrawnMember member;
  member.foot_in_m = sash.depth_m;
  add_sash(member, sash, glass, {sash.depth_m, 0.0});
  member.room_profile = {{sash.depth_m, 0.0}, {sash.depth_m, sash.face_m}};
  return member;
}

DrawnMember drawn(const SashInFrame& window, const OldGlass& glass) {
  check(window.sash, glass);
  check(window);
  const double right_m = window.frame_depth_m;
  const double top_m = window.frame_face_m;
  const double sash_in_m = right_m - window.set_back_m;
  const double sash_foot_m = top_m + window.joint_m;
  const double stop_top_m = window.set_back_m > 0.0 ? top_m + window.stop_height_m : top_m;
  DrawnMember member;
  member.foot_in_m = right_m;
  member.items.push_back({"frame",
                          SolidFill{window.frame_W_mK},
                          tidy({{0.0, 0.0},
                                {right_m, 0.0},
                                {right_m, stop_top_m},
                                {sash_in_m, stop_top_m},
                                {sash_in_m, top_m},
                                {0.0, top_m}}),
                          {}});
  add_sash(member, window.sash, glass, {sash_in_m, sash_foot_m});
  const double joint_out_m = std::max(0.0, sash_in_m - window.sash.depth_m);
  member.items.push_back({std::string(named::joint),
                          joint_air(window.joint_m),
                          rectangle(joint_out_m, sash_in_m, top_m, sash_foot_m),
                          {}});
  member.sash.low_m = std::max(sash_foot_m, stop_top_m);
  member.frame = Seat{right_m, 0.0, stop_top_m};
  member.room_profile = {
      {right_m, 0.0}, {right_m, stop_top_m}, {sash_in_m, stop_top_m}, {sash_in_m, member.sight_m}};
  return member;
}

}  // namespace dewgap::ready_kernel
