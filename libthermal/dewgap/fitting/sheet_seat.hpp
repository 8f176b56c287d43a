// What a sheet sits on.
#pragma once

namespace dewgap {

enum class SheetSeat {
  overlapping,    ///< over the opening, on the frame
  inside_reveal,  ///< stands in the opening
  on_sash,        ///< over the visible glass of one sash, on the sash
  on_panes,       ///< over the visible glass of one pane, on its glazing bars
};

}  // namespace dewgap
