// What a ready section says of a window's edge, as it is and with the sheet: Uf, Psi, the coupling of frame
// and edge, the coldest spots on the room side and inside the gap.
//
// Coupling of frame and edge: K = L2D - Ug bg (less U_wall times the wall's drawn height, where there is a
// wall), W/(m K): all the heat that passes at the edge beyond what the bare centre of the glass would lose,
// per metre of member. Heat through a window = Ug Ag + sum of K times the length of sight line, Ag inside the
// sight lines; corners are left out. Without a wall K = Uf bf + Psi. With the sheet Ug is that of glass, gap
// and sheet in series, and K needs no Uf, which would mean nothing behind a sheet. Compare K before and after
// of the same section only; with a wall it holds the reveal's own bridge on top.
#pragma once

#include <optional>
#include <string>

#include "dewgap/window/ready_sections.hpp"
#include "dewgap/window/section_result.hpp"

namespace dewgap {

/// Couplings: the error is a proved bound (section.hpp). Temperatures: the estimate of SettledTemperature.
struct FigureWithError {
  double value = 0.0;
  double error = 0.0;
};

/// A coldest spot, by conduction alone (ready_sections.hpp says what is left out of the gap): at a place, on
/// an item; temperature_factor = (T - outdoors) / (room - outdoors).
struct ColdSpot {
  std::string item;
  SectionPoint at;
  FigureWithError temperature_C;
  FigureWithError temperature_factor;
  /// edge_temperature_factor of GapCase and GapDesign: (T - outdoors) / (T_centre - outdoors), T_centre the
  /// gap's face of the old glass far from the edge. Above 1 where the spot is warmer. None outside the gap.
  std::optional<FigureWithError> edge_factor;
};

/// Faces of the gap.
struct GapSpots {
  FigureWithError glass_centre_C;  ///< gap's face of the old glass at the upper cut-off
  ColdSpot glass_edge;             ///< old glass at the sight line, gap's face
  ColdSpot old_glass;              ///< coldest on it, the centre included
  std::optional<ColdSpot> frame;   ///< coldest on rail, frame, steel, putty; none where the gap touches none
  /// Coldest of all, with wall, batten, tape and sheet; its edge_factor is at most 1.
  ColdSpot any;
};

/// One cut solved. A sheet taped on bare steel leaves the rest of the steel colder than it was: what is
/// covered takes no more heat from the room.
struct EdgeState {
  SectionStatus status = SectionStatus::pass_limit;
  double heat_imbalance = 0.0;
  double glass_u_value_W_m2K = 0.0;  ///< Ug of the layers as drawn
  FigureWithError coupling_W_mK;     ///< K
  /// Where a vent break is cut, the room's air reaches its faces: they count.
  ColdSpot room_side;
  std::optional<GapSpots> gap;
};

struct EdgeFigures {
  /// converged, or the first solve that was not: figures are then the best reached, with their errors.
  SectionStatus status = SectionStatus::converged;
  double frame_length_m = 0.0;  ///< bf
  /// Uf, ISO 10077-2 eq. C.1, of the member alone with the panel in the glass's place.
  FigureWithError frame_u_value_W_m2K;
  FigureWithError psi_W_mK;  ///< of the old glass in it, eq. C.2, the member alone
  EdgeState without_sheet;
  std::optional<EdgeState> with_sheet;  ///< where the section has one
};

/// The coldest spot is often in a re-entrant corner, where a bound of 0.02 K takes ten times as long: 0.05 K
/// (our convention) is 0.0025 of a temperature factor over 20 K.
inline constexpr double edge_temperature_bound_K = 0.05;

/// Solves three cuts, four with a reveal: of 200 random ones half took under 0.04 s, the slowest 1.3 s.
/// Throws as section_of and solve_section do.
EdgeFigures edge_figures(const ReadySection& ready,
                         const SectionOptions& options = {
                             .temperature_error_bound_K = edge_temperature_bound_K});

}  // namespace dewgap
