// What to buy for a job. Private to the room.
#pragma once

#include <vector>

#include "dewgap/fitting/cut_list.hpp"

namespace dewgap::fitting {

std::vector<ShoppingItem> shopping_for(const std::vector<CutListWindow>& windows, const CutList& list,
                                       const CutListOptions& options);

}  // namespace dewgap::fitting
