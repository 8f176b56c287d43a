// Pieces laid on stock sheets in shelves. Private to the room.
#pragma once

#include <vector>

#include "dewgap/fitting/cut_list.hpp"

namespace dewgap::fitting {

struct Packed {
  std::vector<StockLayout> layouts;
  std::vector<CutPiece> do_not_fit;
};

/// First fit decreasing height; see cut_list.
Packed pack_shelves(const std::vector<CutPiece>& pieces, const StockSize& stock,
                    const CutListOptions& options);

}  // namespace dewgap::fitting
