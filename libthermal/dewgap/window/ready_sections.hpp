// Ready cuts through the bottom of a single-glazed window: member, glass, and a sheet that is taped on the
// sash, the frame or a batten in the reveal. Each is a Section for solve_section; what is read off it:
// edge_figures.hpp.
//
// A vertical cut, outdoors at the left (x grows towards the room), y upwards; the member stands on y = 0,
// which is a cut-off unless it stands on masonry. Sizes in m. Where a size has a default, it is common
// practice, no source, unless the line says otherwise. Ranges: ready_range. Conductivities default to those
// of materials.csv.
//
// Drawn simply: mouldings, bevels and horns are left out; the putty's slope is three steps of the same area,
// so its face is longer than the slope's (a little too much heat from it); the glass bears on the rebate's
// upstand without back putty; a steel section's roots and fillets are square. A side or top member is cut the
// same way. The gap's air is a layer of the conductance given, along the height too: that it is coldest at
// its foot, where air that fell along the old glass turns, is left out.
#pragma once

#include <optional>
#include <variant>

#include "dewgap/errors.hpp"
#include "dewgap/materials/building_materials.hpp"
#include "dewgap/materials/materials.hpp"
#include "dewgap/window/section.hpp"
#include "dewgap/window/whole_window.hpp"

namespace dewgap {

/// Permitted sizes, m.
namespace ready_range {
inline constexpr PermittedRange glass_thickness_m{0.001, 0.012};
inline constexpr PermittedRange visible_glass_m{0.190, 1.0};  ///< ISO 10077-2 Annex C: at least 190 mm
inline constexpr PermittedRange timber_depth_m{0.020, 0.200};
inline constexpr PermittedRange timber_face_m{0.015, 0.300};
inline constexpr PermittedRange rebate_m{0.004, 0.030};
inline constexpr PermittedRange bedding_m{0.001, 0.005};
inline constexpr PermittedRange glass_to_room_face_m{0.002, 0.100};
inline constexpr PermittedRange joint_m{0.0005, 0.010};  ///< wider ones are ventilated: another section
inline constexpr PermittedRange set_back_m{0.0, 0.060};  ///< 0, or at least 1 mm
inline constexpr PermittedRange stop_height_m{0.003, 0.030};
inline constexpr PermittedRange steel_depth_m{0.015, 0.060};
inline constexpr PermittedRange steel_leg_m{0.008, 0.040};
inline constexpr PermittedRange steel_thickness_m{0.0015, 0.006};
inline constexpr PermittedRange sheet_thickness_m{5e-5, 0.015};
inline constexpr PermittedRange tape_thickness_m{0.0005, 0.030};
inline constexpr PermittedRange tape_width_m{0.002, 0.060};
inline constexpr PermittedRange overlap_m{0.002, 0.080};
inline constexpr PermittedRange batten_m{0.008, 0.100};
inline constexpr PermittedRange glass_to_fixing_face_m{0.005, 0.300};
inline constexpr PermittedRange outer_reveal_m{0.0, 0.400};  ///< 0, or at least 1 mm
inline constexpr PermittedRange inner_reveal_m{0.010, 0.600};
inline constexpr PermittedRange plaster_m{0.001, 0.060};
}  // namespace ready_range

/// Conductivity of a material, W/(m K), best value.
inline double best_W_mK(FrameKind kind) {
  return frame_properties(kind).conductivity_W_mK.best;
}
inline double best_W_mK(BuildingKind kind) {
  return conductivity_W_mK(kind).best;
}

/// Timber sash (or fixed light), glazed from outdoors with putty.
struct TimberSash {
  double depth_m = 0.044;               ///< outdoor face to room face
  double face_m = 0.070;                ///< height of the rail, up to the sight line
  double rebate_m = 0.012;              ///< sight line above the rebate's floor
  double bedding_m = 0.002;             ///< putty under the glass
  double glass_to_room_face_m = 0.018;  ///< glass to the rail's room face
  double timber_W_mK = best_W_mK(FrameKind::softwood);
  double putty_W_mK = best_W_mK(BuildingKind::putty);
};

/// The same sash closed in a timber frame. The joint is open to outdoors and tight at the stop; without a
/// stop (set-back 0) it is open on both sides. Heat that air carries through it is left out.
struct SashInFrame {
  TimberSash sash;
  double frame_depth_m = 0.095;
  double frame_face_m = 0.055;   ///< height of the frame below the joint
  double joint_m = 0.003;        ///< between frame and sash
  double set_back_m = 0.012;     ///< sash's room face behind the frame's; the thickness of the stop
  double stop_height_m = 0.012;  ///< over the frame's top
  double frame_W_mK = best_W_mK(FrameKind::softwood);
};

/// Timber that a steel frame is screwed to.
struct TimberSubFrame {
  double depth_m = 0.075;
  double face_m = 0.050;
  double set_back_m = 0.020;  ///< steel's room face behind the sub-frame's
  double timber_W_mK = best_W_mK(FrameKind::softwood);
};

/// Hot-rolled steel section, Z-shaped: a web, a leg up on the room side that the glass bears on, a leg down
/// on the outdoor side. Glazed from outdoors with putty. Opening lights: two such sections act as one (left
/// out).
struct SteelCasement {
  double depth_m = 0.025;      ///< outdoor face to room face
  double upper_leg_m = 0.020;  ///< over the web, up to the sight line
  double lower_leg_m = 0.010;  ///< under the web
  double thickness_m = 0.003;  ///< of web and legs
  double bedding_m = 0.002;    ///< putty under the glass
  double steel_W_mK = best_W_mK(FrameKind::steel);
  double putty_W_mK = best_W_mK(BuildingKind::putty);
  double mortar_W_mK = best_W_mK(BuildingKind::mortar);  ///< under the web, where there is no sub-frame
  std::optional<TimberSubFrame> sub_frame;
};

using ReadyMember = std::variant<TimberSash, SashInFrame, SteelCasement>;

struct OldGlass {
  double thickness_m = 0.004;
  double visible_m = 0.190;  ///< height above the sight line that is drawn
  double conductivity_W_mK = glass_properties().conductivity_W_mK.best;
};

/// Solid masonry that the member stands on, plastered inside. It is drawn 1 m or three times its thickness
/// down (ISO 10211, from memory), whichever is more.
struct MasonryReveal {
  double outer_m = 0.100;    ///< wall's outdoor face to the member's
  double inner_m = 0.120;    ///< member's room face to the masonry's
  double plaster_m = 0.015;  ///< on the reveal and on the wall
  double masonry_W_mK = best_W_mK(BuildingKind::brick);
  double plaster_W_mK = best_W_mK(BuildingKind::gypsum_plaster);
};

/// Where the sheet's tape sits. On the sash: also for a sheet over one pane (Cover::glass), with the overlap
/// that it has there.
struct OnSash {};
struct OnFrame {};  ///< frame of a SashInFrame, sub-frame of a SteelCasement
/// On a batten that stands on the plastered reveal; needs a MasonryReveal.
struct OnBatten {
  double width_m = 0.025;  ///< up from the reveal, at most to 1 mm below the sight line
  double depth_m = 0.020;
  double glass_to_fixing_face_m = 0.080;  ///< glass to the batten's room face
  double batten_W_mK = best_W_mK(FrameKind::softwood);
};
using SheetPlace = std::variant<OnSash, OnFrame, OnBatten>;

/// unbroken: the cut goes through the tape. vent_break: through a break in it. There air stands in the tape's
/// place: up to 2 mm still, up to 10 mm a slightly ventilated slit, over that the room's own (ISO
/// 10077-2 6.4). Heat that air carries through the break is left out.
enum class TapeCut { unbroken, vent_break };

struct ReadySheet {
  SheetPlace place = OnSash{};
  double thickness_m = 0.004;
  double tape_thickness_m = 0.006;
  double tape_width_m = 0.012;  ///< at the sheet's edge, at most the overlap
  double overlap_m = 0.020;     ///< of the sheet over the face that it is taped to
  /// Between the two faces of the gap in front of the glass, W/(m2 K), 0.01 to 1000: of its stack, or
  /// 1 / coupled_window_air_space_m2K_W. It has no default.
  double gap_conductance_W_m2K = 0.0;
  double sheet_W_mK = sheet_properties(SheetKind::acrylic).conductivity_W_mK.best;
  double tape_W_mK = tape_properties(TapeKind::closed_cell_foam).conductivity_W_mK.best;
  TapeCut cut = TapeCut::unbroken;
};

/// The two airs and their films: ISO 10077-2 Annex B, from memory.
struct ReadyClimate {
  double room_C = 20.0;
  double outdoors_C = 0.0;
  double rsi_m2K_W = window_rsi_m2K_W;
  double rse_m2K_W = window_rse_m2K_W;
  CornerFilm corners;  ///< of the room side
};

struct ReadySection {
  ReadyMember member;
  OldGlass glass;
  std::optional<MasonryReveal> reveal;
  std::optional<ReadySheet> sheet;
  ReadyClimate climate;
};

/// What is drawn in the glass's place: panel is the insulating panel of ISO 10077-2 Annex C, as thick as the
/// glass (our reading), for Uf; with it neither sheet nor reveal is drawn.
enum class ReadyFilling { old_glass, glass_and_sheet, panel };

/// Throws InvalidInput: a size out of its range, sizes that contradict each other, a sheet asked for that is
/// not there, or a place for it that the member does not have.
Section section_of(const ReadySection& ready, ReadyFilling filling);

/// The member's height from its foot to the sight line: bf of ISO 10077-2.
double frame_length_m(const ReadySection& ready);

}  // namespace dewgap
