// The tape piece by piece, and where it is broken for a vent.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dewgap/fitting/holes.hpp"

namespace dewgap {

/// Breaks of one length wished for along the bottom or the top edge.
struct BreaksWanted {
  Member member = Member::bottom;  ///< bottom or top
  int count = 2;                   ///< 1 to 20
  double length_m = 0.020;         ///< 0.002 to 1
};

/// A stretch without tape, from the sheet's left end, mm.
struct TapeBreak {
  Member member = Member::bottom;
  double from_mm = 0.0;
  double to_mm = 0.0;
};

/// A piece to cut: where it lies (from the left or bottom end of the sheet) and how long it is, mm.
struct TapePiece {
  Member member = Member::bottom;
  double from_mm = 0.0;
  double length_mm = 0.0;
};

struct TapePlan {
  std::vector<TapeBreak> breaks;
  std::vector<TapePiece>
      pieces;             ///< left, top, right, bottom; top and bottom run through, sides between them
  double length_m = 0.0;  ///< of all pieces
  std::vector<std::string> refused;  ///< breaks that found no place, one sentence an edge
};

struct TapePlanInput {
  int width_mm = 0;  ///< of the sheet, 20 to 10,000
  int height_mm = 0;
  double tape_width_mm = 12.0;      ///< as laid, 0 to half the shorter side
  std::vector<int> width_marks_mm;  ///< of fixings along top and bottom; empty: none
  std::vector<BreaksWanted> breaks;
};

/// Breaks: the first as near the left end as the fixings leave, the second the right, further ones spread
/// between; each between two fixings, at least 15 mm from a fixing and 10 mm from the corner's joint and from
/// the next break (our convention, no source). Without fixings the outer ones begin a corner distance (50 mm)
/// from the ends. A single break goes left. All of one request are placed or none. Throws InvalidInput for a
/// number outside its range.
TapePlan plan_tape(const TapePlanInput& input);

}  // namespace dewgap
