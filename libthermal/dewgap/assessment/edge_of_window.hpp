// The window's edge by conduction, where the job asks for it: the bottom of the window drawn from what the
// survey measured (ready_sections.hpp), solved (edge_figures.hpp), and what the answer takes from it.
//
// Solved at middle values, and at the low and the high end of the frame's conductivity together with that of
// the gap's conductance; an EdgeRange is what the three give. The gap's conductance is that of the coldest
// month's means at the middle of every unknown; its ends are those of the three convection formulas at the
// 10th and 90th percentile of their scatter. Sizes that nobody measured are usual ones and are not varied.
// Temperatures: bound 0.1 K over 20 K, 0.005 of a factor (our convention).
//
// What the answer takes:
//   - frame U: Uf, with the prior frame_u_factor narrowed to conduction's range, 5 % for what is drawn simply
//     and, unless the sizes are measured, half the prior's spread (our convention);
//   - edge: Psi of the old glass along the sight line of every pane (ISO 10077-1 eq. 1). Behind the sheet
//     frame and edge lose less by cut_share = (K without - K with) / (Uf bf + Psi), in the reveal over
//     K without, which holds the wall's bridge; taken at the bottom for every side (our reading; K in
//     edge_figures.hpp). What a sheet in the reveal spares the wall itself is left out of the saving;
//   - coldest place of the gap: the prior edge_factor, which stands for cold air that falls and turns at the
//     gap's foot, times gap_edge_factor of conduction, at most 1 (our convention: the two are independent).
//     In the usual sections it is 0.98 to 1, with steel too: where the sheet covers it, the middle of the
//     glass stays the coldest;
//   - coldest place towards the room, with its humidity: room_factor, films of ISO 10077-2 (Rsi 0.13). It
//     replaces the prior at the room's face in the year's peak month, without the sheet and with it, and
//     where it is wet in the coldest month the verdict asks for a drier room. Faces of a cut in the tape are
//     told apart (break_factor) and decide nothing.
// Left out: side and top members, corners, mouldings (colder or warmer by a little), air that leaks past.
#pragma once

#include <optional>
#include <string>

#include "dewgap/quantity.hpp"
#include "dewgap/window/ready_sections.hpp"

namespace dewgap {

/// Least, middle and greatest of three solutions; the middle one is that of the middle values.
struct EdgeRange {
  double low = 0.0;
  double middle = 0.0;
  double high = 0.0;
};

namespace edge_range {
/// Of timber from ready_range::timber_face_m, of steel its upper leg and thickness.
inline constexpr PermittedRange rail_face_m{0.011, 0.300};
}  // namespace edge_range

/// What every plausible case takes, at middle values but for Uf.
struct EdgeOfWindow {
  ReadySection section;         ///< as drawn, middle values
  double frame_length_m = 0.0;  ///< bf, foot of the member to sight line
  EdgeRange gap_conductance_W_m2K;
  EdgeRange frame_u_W_m2K;       ///< Uf
  double psi_W_mK = 0.0;         ///< of the old glass
  double cut_share = 0.0;        ///< what the sheet takes off frame and edge
  double gap_edge_factor = 1.0;  ///< (T - outdoors) / (T_centre - outdoors) of the gap's coldest, at most 1
  double room_factor_before = 0.0;  ///< fRsi of the coldest place towards the room
  double room_factor = 0.0;         ///< the same with the sheet
};

/// The edge in an answer. Humidities 0..1, of the coldest month over the plausible cases.
struct EdgeAnswer {
  double frame_length_m = 0.0;
  EdgeRange gap_conductance_W_m2K;
  EdgeRange frame_u_W_m2K;
  EdgeRange psi_W_mK;
  EdgeRange coupling_before_W_mK;  ///< K without the sheet
  EdgeRange coupling_after_W_mK;
  EdgeRange cut_share;
  std::string gap_spot;  ///< part with the coldest place inside the gap
  EdgeRange gap_edge_factor;
  std::string room_spot_before;
  EdgeRange room_factor_before;
  std::string room_spot;  ///< the same with the sheet
  EdgeRange room_factor;
  std::optional<double> break_factor;  ///< fRsi where the tape is cut, where the verdict puts breaks
  Spread face_humidity;        ///< of the room's air at the coldest place, verdict's tape; may be over 1
  Spread mould_from_humidity;  ///< of the room, at which that is 0.8
  Spread wet_from_humidity;    ///< of the room, at which it is 1
};

}  // namespace dewgap
