// Coldest spots between the parts of a solved section.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "dewgap/window/section.hpp"

namespace dewgap::edge_kernel {

using ItemChoice = std::function<bool(std::string_view)>;

struct Spot {
  SectionPoint at;
  double temperature_C = 0.0;
  std::string item;  ///< of the second choice
};

/// Coldest crossing on the faces between items of one choice and items of another; none where none meet.
std::optional<Spot> coldest_between(const SectionResult& result, const ItemChoice& air,
                                    const ItemChoice& solid);

/// The item of the choice that holds, or touches, the point; of several the one drawn first. Empty where
/// none.
std::string item_at(const SectionResult& result, SectionPoint point, const ItemChoice& choice);

}  // namespace dewgap::edge_kernel
