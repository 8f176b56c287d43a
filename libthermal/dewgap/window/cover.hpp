// What a sheet covers, and the heat a window loses with and without it, part by part.
#pragma once

namespace dewgap {

/// The part of the window that lies behind the added sheet.
enum class Cover {
  glass,   ///< each pane or the glass only: sash and frame stay bare
  sash,    ///< fixed to the moving sash: glass and the sash inside the tape
  frame,   ///< fixed to the fixed frame: glass and sash behind the gap; one frame, as built
  reveal,  ///< stands in the reveal with its own batten: glass, sash and frame behind the gap
};

/// Areas and lengths of the old window as seen from the room.
struct WindowAreas {
  double glass_m2 = 0.0;
  double sash_m2 = 0.0;       ///< sash members (or the glazing bars and putty rim of a fixed light)
  double frame_m2 = 0.0;      ///< fixed frame visible in the opening
  double glass_edge_m = 0.0;  ///< perimeter of the panes
  double sheet_perimeter_m = 0.0;
  double sheet_m2 = 0.0;  ///< area of the sheet's face over the gap
};

/// Transmittances of the parts. The two glass values come from the stack (real) or EN 673 (declared).
struct WindowTransmittances {
  double glass_before_W_m2K = 0.0;
  double glass_after_W_m2K = 0.0;
  double sash_W_m2K = 0.0;
  double frame_W_m2K = 0.0;
  double edge_W_mK = 0.0;               ///< Psi of the old glass edge: 0 for single glazing in timber
  double added_resistance_m2K_W = 0.0;  ///< gap and sheet, on a part that is behind the sheet
  double tape_rim_W_mK = 0.0;           ///< extra loss along the sheet's edge, per metre of tape
};

/// One window's conductance by part, W/K.
struct WindowConductance {
  double glass_W_K = 0.0;
  double frame_W_K = 0.0;  ///< sash and frame
  double edge_W_K = 0.0;
  double total_W_K() const { return glass_W_K + frame_W_K + edge_W_K; }
};

/// Parts side by side (ISO 10077-1 eq. 1). Areas 0 to 100 m2, transmittances 0 to 20 W/(m2 K), added
/// resistance 0 to 10 m2 K/W, Psi -1 to 5 W/(m K), rim 0 to 5 W/(m K), lengths 0 to 400 m; InvalidInput
/// outside.
WindowConductance conductance_before(const WindowAreas& areas, const WindowTransmittances& u);
/// Behind the sheet a frame part's resistance grows by added_resistance. Half of the sash counts as covered
/// for Cover::sash (our convention: the tape stands in the middle of the member). The old glass edge keeps
/// its Psi (its loss behind a sheet is smaller, so the saving is a little understated); the tape's rim is
/// added for every cover. Side by side means no heat flows sideways behind the sheet: never more than the
/// double-window formula gives.
WindowConductance conductance_after(const WindowAreas& areas, const WindowTransmittances& u, Cover cover);

}  // namespace dewgap
