// Common practice of the trade in setting out a sheet. No source unless a line says otherwise: defaults that
// can be changed, and check values. Where movement, timber or span says otherwise, plan_sheet follows the
// physics.
#pragma once

namespace dewgap::practice {

// Common practice, no source.
inline constexpr double sheet_thickness_m = 0.004;
inline constexpr double long_sheet_thickness_m = 0.005;  ///< when a side exceeds long_side_m
inline constexpr double long_side_m = 2.0;
inline constexpr double overlap_m = 0.020;          ///< of the sheet over the opening, a side
inline constexpr double corner_distance_m = 0.050;  ///< of the outermost fixings from the sheet's corner
inline constexpr double least_spacing_m = 0.300;    ///< wished for; a short side may need less
inline constexpr double largest_spacing_m = 0.400;  ///< never exceeded
inline constexpr double clip_offset_m = 0.006;      ///< of the clip's screw, outside the sheet's edge
inline constexpr double clip_face_m = 0.035;        ///< least width of frame for turn clips
inline constexpr double hole_diameter_m = 0.005;    ///< in the sheet
inline constexpr double hole_offset_m = 0.012;      ///< of the hole, inside the sheet's edge
inline constexpr double screw_shank_m = 0.0042;
inline constexpr double pilot_diameter_m = 0.003;
inline constexpr double pilot_depth_m = 0.040;  ///< where the timber is that deep
inline constexpr double vent_break_m = 0.020;   ///< length of a break in the tape, bottom left and right
inline constexpr double longer_vent_break_m = 0.100;  ///< the same where the short ones are not enough

// Our convention, no source.
inline constexpr double largest_round_hole_m =
    0.008;                                           ///< that a washer of 12 mm still covers; beyond it slots
inline constexpr double drill_step_m = 0.0005;       ///< holes are rounded up to half millimetres
inline constexpr double shallowest_screw_m = 0.015;  ///< of timber that holds a screw
inline constexpr double timber_left_m =
    0.003;  ///< beyond the end of a pilot, so that it never breaks through
inline constexpr double least_rim_m =
    0.005;  ///< of sheet between a hole or slot and the edge: a hole's width
inline constexpr double screw_inside_timber_m = 0.008;  ///< least distance of a screw from the timber's edge
inline constexpr double bar_overlap_m = 0.008;  ///< of a pane's sheet: two share a glazing bar of 18 mm

}  // namespace dewgap::practice
